// Every page of the site, on whatever screen: axe finds nothing, nothing scrolls sideways or is cut off, and a glove hits every target.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { ONE_FILE } from "./course.mjs";
import { axe, everyPage, freshPage, fromFolder, launch } from "./harness.mjs";
import { COLOURS, dark, small, sticksOut } from "./looks.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** @type {import("puppeteer-core").Browser} */
let browser;
/** The pages of the site; the one-file edition is looked at by itself, a leaf at a time. */
const PAGES = (await everyPage()).filter((path) => path !== ONE_FILE);
/**
 * Pages of every sort, and a third of the lessons: lessons are made of the same blocks. axe alone looks at all.
 * JOURNEYBOOK_EVERY_PAGE takes all for every look.
 */
const SAMPLE = process.env["JOURNEYBOOK_EVERY_PAGE"]
  ? PAGES
  : PAGES.filter((path) => !/\/\d+-[^/]+\//u.test(path)).concat(PAGES.filter((path) => /\/\d+-[^/]+\//u.test(path)).filter((_, index) => index % 3 === 0));

before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

test("axe finds nothing on any page", async () => {
  const { page, context } = await freshPage(browser);
  await everywhere(page, PAGES, () => axe(page));
  await context.close();
});

test("every colour has its contrast in the dark as well", async () => {
  const { page, context } = await freshPage(browser);
  await dark(page);
  await everywhere(page, SAMPLE, () => axe(page, COLOURS));
  await context.close();
});

test("on a phone of 390 pixels no page scrolls sideways", async () => {
  const { page, context } = await freshPage(browser, { width: 390, height: 844 });
  await everywhere(page, SAMPLE, () => sticksOut(page));
  await context.close();
});

test("at 200 % no page scrolls sideways and no text is cut off", async () => {
  const { page, context } = await freshPage(browser, { width: 640, height: 450, scale: 2 });
  await everywhere(page, SAMPLE, () => sticksOut(page));
  await context.close();
});

test("on every page, what can be pressed is 44 pixels wide and high at least, and a row of options 56, on a phone and on a desk", async () => {
  for (const width of [390, 1100]) {
    const { page, context } = await freshPage(browser, { width });
    await everywhere(page, SAMPLE, () => small(page));
    await context.close();
  }
});

/** Looks at pages with everything unfolded, and only then complains. @param {Page} page @param {readonly string[]} paths @param {() => Promise<string[]>} look */
async function everywhere(page, paths, look) {
  const found = [];
  for (const path of paths) {
    await page.goto(fromFolder(path));
    await unfold(page);
    found.push(...(await look()).map((line) => `${path}: ${line}`));
  }
  assert.deepEqual(found, []);
}

/** Opens everything that unfolds, so that it is looked at as well. @param {Page} page */
function unfold(page) {
  return page.$$eval("details", (all) => all.forEach((each) => { each.open = true; }));
}

