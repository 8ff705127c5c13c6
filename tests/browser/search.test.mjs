// Searching the course without a server, with the keyboard, in both editions.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { freshPage, fromFolder, launch, pause } from "./harness.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

const EDITIONS = {
  "the site opened from its folder": "powered-respirator/search.html",
  "the one-file edition": "powered-respirator.html#search",
};

/** @param {import("puppeteer-core").Page} page @param {string} words */
async function look(page, words) {
  await page.locator("[data-search] input").fill(words);
  await pause(500);
}

/** @param {import("puppeteer-core").Page} page */
const titles = (page) => page.$$eval("[data-results] .search-title", (found) => found.map((each) => each.textContent));

for (const [edition, path] of Object.entries(EDITIONS)) {
  test(`a word is found, its place opened with the keyboard alone, in ${edition}`, async () => {
    const { page, context, wrong } = await freshPage(browser);
    await page.goto(fromFolder("") + "/" + path);
    await look(page, "pre-fil");
    assert.equal((await titles(page))[0], "pre-filter");
    assert.match(await page.$eval("[data-search] [role=status]", (said) => said.textContent ?? ""), /^[0-9]+ places found$/);
    await page.focus("[data-search] input");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => location.hash === "#words-pre-filter");
    assert.ok(await page.$eval("#words-pre-filter", (place) => place.checkVisibility()));
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("the arrows go through the results and back to the field", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(fromFolder("powered-respirator/search.html"));
  await look(page, "filter");
  const focused = () => page.evaluate(() => {
    const all = [...document.querySelectorAll("[data-results] a")];
    return document.activeElement instanceof HTMLInputElement ? "field" : all.indexOf(/** @type {Element} */ (document.activeElement));
  });
  /** @type {(string | number)[]} */
  const way = [];
  for (const key of ["ArrowDown", "ArrowDown", "ArrowUp", "ArrowUp", "ArrowDown", "ArrowDown", "Escape"]) {
    await page.keyboard.press(/** @type {import("puppeteer-core").KeyInput} */ (key));
    way.push(await focused());
  }
  assert.deepEqual(way, [0, 1, 0, "field", 0, 1, "field"]);
  await context.close();
});

test("nothing found is said, with a way on", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(fromFolder("powered-respirator/search.html"));
  await look(page, "zzzz");
  assert.match(await page.$eval("[data-search] [role=status]", (said) => said.textContent ?? ""), /^Nothing found\. Try a shorter word/);
  await context.close();
});

test("what is typed is never taken as markup", async () => {
  const { page, context, wrong } = await freshPage(browser);
  await page.goto(fromFolder("powered-respirator/search.html"));
  await look(page, "filter <img src=x onerror=alert(1)>");
  assert.equal(await page.$("[data-results] img"), null);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("without scripts the page says so and shows no dead field", async () => {
  const { page, context } = await freshPage(browser, { script: false });
  await page.goto(fromFolder("powered-respirator/search.html"));
  assert.equal(await page.$eval("[data-search] form", (form) => getComputedStyle(form).display), "none");
  assert.equal(await page.$eval("[data-without]", (said) => getComputedStyle(said).display), "block");
  await context.close();
});
