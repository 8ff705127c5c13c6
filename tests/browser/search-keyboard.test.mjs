// The search page by keyboard, with strange input, and without scripts.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { COURSE } from "./course.mjs";
import { freshPage, fromFolder, launch, pause, WITHOUT_SCRIPT } from "./harness.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** @param {{script?: boolean}} [wish] */
async function openSearch(wish) {
  const opened = await freshPage(browser, wish);
  await opened.page.goto(fromFolder(`${COURSE}/search.html`));
  return opened;
}

/** @param {import("puppeteer-core").Page} page @param {string} words */
async function look(page, words) {
  await page.locator("[data-search] input").fill(words);
  await pause(500);
}

/** @param {import("puppeteer-core").Page} page */
const said = (page) => page.$eval("[data-search] [role=status]", (place) => place.textContent ?? "");

test("the arrows go through the results and back to the field", async () => {
  const { page, context } = await openSearch();
  await look(page, "filter");
  assert.match(await said(page), /^[0-9]+ places found$/);
  const focused = () => page.evaluate(() => document.activeElement instanceof HTMLInputElement
    ? "field"
    : [...document.querySelectorAll("[data-results] a")].indexOf(/** @type {Element} */ (document.activeElement)));
  /** @type {(string | number)[]} */
  const way = [];
  for (const key of ["ArrowDown", "ArrowDown", "ArrowUp", "ArrowUp", "ArrowDown", "ArrowDown", "Escape"]) {
    await page.keyboard.press(/** @type {import("puppeteer-core").KeyInput} */ (key));
    way.push(await focused());
  }
  assert.deepEqual(way, [0, 1, 0, "field", 0, 1, "field"]);
  await context.close();
});

test("a word of the glossary is opened at its place with two keys", async () => {
  const { page, context, wrong } = await openSearch();
  await look(page, "pre-fil");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => location.hash === "#words-pre-filter");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("nothing found is said, with a way on", async () => {
  const { page, context } = await openSearch();
  await look(page, "zzzz");
  assert.match(await said(page), /^Nothing found\. Try a shorter word/);
  await context.close();
});

test("what is typed is never taken as markup", async () => {
  const { page, context, wrong } = await openSearch();
  await look(page, "filter <img src=x onerror=alert(1)>");
  assert.equal(await page.$("[data-results] img"), null);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("without scripts the page says so and shows no dead field", { skip: WITHOUT_SCRIPT }, async () => {
  const { page, context } = await openSearch({ script: false });
  assert.equal(await page.$eval("[data-search] form", (form) => getComputedStyle(form).display), "none");
  assert.equal(await page.$eval("[data-without]", (place) => getComputedStyle(place).display), "block");
  await context.close();
});
