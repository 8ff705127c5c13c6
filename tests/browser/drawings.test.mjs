// Drawings: large enough to read on a phone; and from a question in practice there is a way to its drawing and back, by keyboard.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { COURSE, LESSONS, folder, oneFile } from "./course.mjs";
import { fromFolder, freshPage, launch, SITE } from "./harness.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

const PHONE = 390;
const LEAST = 12;
/** A lesson with a question that leads to a drawing of the lesson. */
const [LESSON] = [...LESSONS].find(([, path]) => /<p class="figure-above">/.test(readFileSync(join(SITE, path), "utf8"))) ?? [];

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {Page} */
let page;

before(async () => { browser = await launch("chromium"); });
after(() => browser.close());
beforeEach(async () => { ({ page } = await freshPage(browser, { width: PHONE, height: 844 })); });
afterEach(() => page.browserContext().close());

for (const [way, edition] of Object.entries({ "a page": folder(), "the one-file edition": oneFile() })) {
  test(`a question on ${way} leads to its drawing, and the drawing back to the question`, async () => {
    await page.goto(edition.address(`lesson-${LESSON}`));
    const link = `[aria-labelledby="lesson-${LESSON}-practice"] .figure-above a`;
    await page.waitForSelector(link);
    const question = await page.$eval(link, (each) => each.closest(".question")?.id);
    await page.focus(link);
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.matches(".plate"));
    assert.ok(await page.evaluate(() => {
      const { top, bottom } = /** @type {Element} */ (document.activeElement).getBoundingClientRect();
      return top < innerHeight && bottom > 0;
    }), "the drawing is in sight");
    assert.equal(await page.$$eval(".figure-asked", (all) => all.filter((each) => each.checkVisibility()).length), 1);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.waitForFunction((id) => document.activeElement?.closest(".question")?.id === id, {}, question);
  });
}

test("no way back is shown to somebody who only reads", async () => {
  await page.goto(folder().address(`lesson-${LESSON}`));
  assert.deepEqual(await page.$$eval(".figure-asked", (all) => all.filter((each) => each.checkVisibility()).length), 0);
});

test("a drawing stands once on a lesson's page", async () => {
  for (const path of LESSONS.values()) {
    await page.goto(fromFolder(path));
    assert.deepEqual(await page.$$eval("svg.figure use", (all) => all.map((each) => each.getAttribute("href"))), [], path);
  }
});

test("the lettering of every drawing is at least 12 pixels high on a phone", async () => {
  let texts = 0;
  for (const path of [...LESSONS.values(), `${COURSE}/words.html`]) {
    await page.goto(fromFolder(path));
    const heights = await page.$$eval("svg.figure text", (all) => all.filter((each) => each.checkVisibility()).map((each) => {
      const scale = /** @type {SVGTextElement} */ (each).getScreenCTM()?.a ?? 0;
      return { words: each.textContent, height: parseFloat(getComputedStyle(each).fontSize) * scale };
    }));
    texts += heights.length;
    assert.deepEqual(heights.filter(({ height }) => height < LEAST), [], path);
  }
  assert.ok(texts > 100, `${texts} texts`);
});

test("no lettering of a drawing runs into other lettering or out of the drawing", async () => {
  for (const path of LESSONS.values()) {
    await page.goto(fromFolder(path));
    const wrong = await page.$$eval(".plate svg.figure", (drawings) => drawings.flatMap((drawing) => {
      const sheet = drawing.getBoundingClientRect();
      // What is inked of a line of lettering: its box without the room above capitals and below most letters.
      const texts = [...drawing.querySelectorAll("text")].map((text) => {
        const { left, right, top, bottom, height } = text.getBoundingClientRect();
        return { words: text.textContent, left: left + 1, right: right - 1, top: top + height / 4, bottom: bottom - height / 4 };
      });
      const outside = texts.filter(({ left, right, top, bottom }) =>
        left < sheet.left || right > sheet.right || top < sheet.top || bottom > sheet.bottom);
      const touching = texts.flatMap((one, index) => texts.slice(index + 1).filter((other) =>
        one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom)
        .map((other) => `${one.words} / ${other.words}`));
      return [...outside.map(({ words }) => words), ...touching];
    }));
    assert.deepEqual(wrong, [], path);
  }
});
