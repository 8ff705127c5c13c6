// With JavaScript off: everything can be read and reached, practice has its answers, and the check says what it needs.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { LESSONS, ONE_FILE, PRACTICE, site } from "./course.mjs";
import { everyPage, freshPage, fromFolder, launch } from "./harness.mjs";
import { leaf, press, seen } from "./learner.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {import("puppeteer-core").Page} */
let page;
const edition = site(fromFolder);

before(async () => {
  browser = await launch();
  ({ page } = await freshPage(browser, { script: false }));
});
after(() => browser.close());

test("every page shows its heading and its text", async () => {
  for (const path of await everyPage()) {
    await page.goto(fromFolder(path));
    const { heading, letters } = await page.evaluate(() => {
      const main = /** @type {HTMLElement} */ (document.querySelector("main"));
      return { heading: [...main.querySelectorAll("h1")].filter((each) => each.checkVisibility()).length, letters: main.innerText.length };
    });
    assert.ok(heading >= 1, `${path} has a heading`);
    assert.ok(letters > 120, `${path} shows ${letters} letters`);
  }
});

test("nothing is shown that can only be pressed with a script", async () => {
  for (const path of await everyPage()) {
    await page.goto(fromFolder(path));
    const dead = await page.$$eval("button", (all) => all.filter((each) => each.checkVisibility()).map((each) => each.textContent));
    assert.deepEqual(dead, [], path);
  }
});

for (const kind of ["choice", "choices", "order", "match", "number"]) {
  test(`a practice question of the kind ${kind} unfolds its answer and its reasons`, async () => {
    const { lesson, id } = PRACTICE.get(kind);
    const answer = `[data-question="${id}"] details.answer`;
    await page.goto(edition.address(`lesson-${lesson}`));
    const hidden = await page.$eval(answer, (details) => /** @type {HTMLElement} */ (details).innerText.length);
    await press(page, `[data-question="${id}"]`, "Answer and reasons");
    const shown = await page.$eval(answer, (details) => /** @type {HTMLElement} */ (details).innerText);
    assert.ok(shown.length > hidden + 60, shown);
    assert.match(shown, kind === "order" ? /One order that works/i : kind === "match" ? /Source/i : /Right/i);
  });
}

test("every practice question of every lesson has an answer to unfold", async () => {
  let count = 0;
  for (const lesson of LESSONS.keys()) {
    await page.goto(edition.address(`lesson-${lesson}`));
    const without = await page.$$eval(".practice .question", (all) => all.filter((each) => !each.querySelector("details.answer > summary")?.checkVisibility()).map((each) => each.id));
    assert.deepEqual(without, []);
    count += (await page.$$(".practice .question")).length;
  }
  assert.ok(count >= LESSONS.size, `${count} questions`);
});

test("the check page says that it needs JavaScript, and what to do instead", async () => {
  await page.goto(edition.address("check"));
  const said = await page.$eval("main", (main) => /** @type {HTMLElement} */ (main).innerText);
  assert.match(said, /needs JavaScript/);
  assert.match(said, /use another browser or ask for a paper version/);
});

test("links lead from the route card through a lesson to the next", async () => {
  await page.goto(edition.address("card"));
  await follow(/^Start here/);
  assert.equal(page.url(), edition.address(`lesson-${[...LESSONS.keys()][0]}`));
  await follow(/^Next lesson/);
  await seen(page, ".lesson-body");
  await press(page, ".tabs", "Words");
  await page.waitForFunction(() => /words\.html$/.test(location.pathname));
});

test("the one-file edition shows every lesson, one after the other, and its links lead down the page", async () => {
  await page.goto(fromFolder(ONE_FILE));
  const leaves = await page.$$eval("[data-leaf]", (all) => all.filter((each) => each.checkVisibility()).map((each) => each.getAttribute("data-leaf")));
  for (const lesson of LESSONS.keys()) assert.ok(leaves.includes(`lesson-${lesson}`), lesson);
  for (const slug of ["card", "check", "words", "kit", "sources"]) assert.ok(leaves.includes(slug), slug);
  await follow(/^Start here/);
  assert.equal(page.url(), `${fromFolder(ONE_FILE)}#lesson-${[...LESSONS.keys()][0]}`);
  const top = await page.$eval(leaf(new URL(page.url()).hash.slice(1)), (each) => each.getBoundingClientRect().top);
  assert.ok(Math.abs(top) < 100, `the lesson stands at ${top} px`);
});

/** Presses a link and waits for where it leads. @param {RegExp} name */
async function follow(name) {
  const from = page.url();
  await press(page, "main", name);
  for (let tries = 0; tries < 100 && page.url() === from; tries += 1) await new Promise((done) => setTimeout(done, 30));
  assert.notEqual(page.url(), from);
}
