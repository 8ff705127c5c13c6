// Every page on a small phone, at twice the size, in the dark, and under the policy.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { everyPage, freshPage, fromFolder, launch } from "./harness.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

/** Elements that reach past the right edge, but for those inside something that scrolls by itself. @param {import("puppeteer-core").Page} page */
const tooWide = (page) => page.evaluate(() => {
  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= width) return [];
  return [...document.querySelectorAll("body *")]
    .filter((each) => each.getBoundingClientRect().right > width + 1 && !each.closest("svg, .table-scroll"))
    .slice(0, 3).map((each) => `${each.tagName}.${each.className}`);
});

for (const width of [320, 390, 640]) {
  test(`no page has to be scrolled sideways at ${width} px`, async () => {
    const { page, context } = await freshPage(browser, { width });
    for (const path of await everyPage()) {
      await page.goto(fromFolder(path));
      assert.deepEqual(await tooWide(page), [], path);
    }
    await context.close();
  });
}

test("every page keeps to its own policy and asks for nothing but its own files", async () => {
  const { page, context, wrong, asked } = await freshPage(browser);
  for (const path of await everyPage()) await page.goto(fromFolder(path));
  assert.deepEqual(wrong, []);
  assert.deepEqual(asked.filter((address) => !/^(file|data):/.test(address)), []);
  await context.close();
});

test("both type faces are those of the theme", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(fromFolder("powered-respirator/index.html"));
  const loaded = await page.evaluate(async () => {
    await document.fonts.ready;
    return [...document.fonts].filter((face) => face.status === "loaded").map((face) => face.family.replaceAll('"', ""));
  });
  assert.deepEqual([...new Set(loaded)].sort(), ["Journeybook Label", "Journeybook Read"]);
  assert.equal(loaded.length, 2, "the further letters are not fetched for a page that does not use them");
  await context.close();
});

test("what is pressed is 56 px high wherever it does not stand in running text", async () => {
  const { page, context } = await freshPage(browser, { width: 390 });
  for (const path of ["index.html", "20-parts.html", "20-parts/seat-and-latch.html", "kit.html", "search.html"]) {
    await page.goto(fromFolder(`powered-respirator/${path}`));
    const small = await page.$$eval(".tab, .next-step, .button, summary, .lesson-line, .turn a, .search-field", (all) => all
      .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 55.5)
      .map((each) => `${each.className} ${each.getBoundingClientRect().height}`));
    assert.deepEqual(small, [], path);
  }
  await context.close();
});

test("without scripts every lesson can be read, and leads on to the next", async () => {
  const { page, context } = await freshPage(browser, { script: false });
  await page.goto(fromFolder("powered-respirator/index.html"));
  let lessons = 0;
  let next = await page.$eval("a[data-next]", (link) => link.getAttribute("href"));
  while (next && !next.endsWith("check.html")) {
    await page.goto(new URL(next, page.url()).href);
    lessons += 1;
    assert.ok((await page.$eval("article.lesson-body", (text) => text.textContent ?? "")).length > 200);
    next = await page.$eval("a.turn-on", (link) => link.getAttribute("href"));
  }
  assert.ok(lessons >= 20, `${lessons} lessons`);
  await context.close();
});

test("printed, the route card shows no navigation and keeps its cautions", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(fromFolder("powered-respirator/index.html"));
  await page.emulateMediaType("print");
  const shown = (/** @type {string} */ selector) => page.$eval(selector, (each) => each.checkVisibility());
  assert.deepEqual(await Promise.all([".tabs", ".next-step", ".card-take"].map(shown)), [false, false, false]);
  assert.deepEqual(await Promise.all([".hazard", ".cautions", ".operations thead", ".mark-box"].map(shown)), [true, true, true, true]);
  await context.close();
});
