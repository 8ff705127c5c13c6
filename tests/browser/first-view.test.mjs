// What is put off for a quick first view is there before anybody misses it: far parts, and questions that a hand reaches too early.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { LESSONS, oneFile, PRACTICE, site } from "./course.mjs";
import { freshPage, launch, pause, serve } from "./harness.mjs";
import { leaf, open, press, says, settled } from "./learner.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
before(async () => {
  browser = await launch();
  server = await serve();
});
after(async () => {
  await browser.close();
  await server.stop();
});
const CHOICE = PRACTICE.get("choice");
const QUESTION = `[data-question="${CHOICE.id}"]`;

for (const [way, edition] of Object.entries({ "over http": () => site((path) => server.address + path), "in the one-file edition": oneFile })) {
  test(`every part of a page is laid out soon after its first view, ${way}`, async () => {
    const { page, context, wrong } = await freshPage(browser);
    for (const slug of ["card", "check", "words", `lesson-${[...LESSONS.keys()][0]}`]) {
      await open(page, edition(), slug);
      await page.waitForFunction((where) => [...document.querySelectorAll(`${where} *, .foot`)].every((each) => getComputedStyle(each).contentVisibility === "visible"), {}, leaf(slug));
    }
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

/** Opens the lesson, and holds back the slices in which its questions would be set up in their turn. */
async function beforeItsTurn() {
  const opened = await freshPage(browser, {
    before: () => {
      const post = MessagePort.prototype.postMessage;
      /** @type {(() => void)[]} */
      const held = [];
      // By this clock every step fills a slice of its own.
      let now = 0;
      performance.now = () => now += 100;
      MessagePort.prototype.postMessage = function (/** @type {any[]} */ ...message) {
        const send = () => post.apply(this, /** @type {any} */ (message));
        // The end of the lesson is furnished before any question has its turn.
        if (document.querySelector("[data-read-end] button")) held.push(send);
        else send();
      };
      Object.assign(window, { goOn: () => {
        MessagePort.prototype.postMessage = post;
        for (const send of held) send();
      } });
    },
  });
  await opened.page.goto(site((path) => server.address + path).address(`lesson-${CHOICE.lesson}`));
  await opened.page.waitForSelector("[data-read-end] button");
  return opened;
}

/** @param {import("puppeteer-core").Page} page */
const goOn = (page) => page.evaluate(() => /** @type {any} */ (window).goOn());

test("an option that is chosen before its question is set up stays chosen, and the question can be checked at once", async () => {
  const { page, context, wrong } = await beforeItsTurn();
  const isLive = () => page.$eval(QUESTION, (each) => each.classList.contains("live"));
  assert.equal(await isLive(), false, "the question waits for its turn");
  // Nobody taps what has not come to rest under the eye.
  await page.$eval(QUESTION, (each) => each.scrollIntoView({ block: "center" }));
  await pause(300);
  await page.click(`${QUESTION} input[value="${CHOICE.key.right}"]`);
  assert.equal(await isLive(), true);
  await press(page, QUESTION, "Check this answer");
  await says(page, `${QUESTION} .remark`, /^Right/);
  await goOn(page);
  await settled(page);
  await says(page, `${QUESTION} .remark`, /^Right/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the keyboard's focus sets a waiting question up and stays where it is, and nothing is said", async () => {
  const { page, context, wrong } = await beforeItsTurn();
  await page.focus(`${QUESTION} input[value="${CHOICE.key.right}"]`);
  assert.equal(await page.$eval(QUESTION, (each) => each.classList.contains("live")), true);
  assert.equal(await page.evaluate(() => /** @type {HTMLInputElement} */ (document.activeElement).value), CHOICE.key.right);
  await goOn(page);
  await settled(page);
  assert.equal(await page.evaluate(() => /** @type {HTMLInputElement} */ (document.activeElement).value), CHOICE.key.right);
  const said = await page.$$eval(".practice [role=status]", (all) => all.map((each) => each.textContent).filter(Boolean));
  assert.deepEqual(said, []);
  assert.deepEqual(wrong, []);
  await context.close();
});
