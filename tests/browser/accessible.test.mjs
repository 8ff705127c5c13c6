// Whoever reads it, on whatever screen: axe finds nothing, nothing scrolls sideways or is cut off, and a glove hits every target.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { CHECK, folder, ONE_FILE, oneFile, PRACTICE, rightAnswer, wrongAnswer } from "./course.mjs";
import { axe, everyPage, freshPage, fromFolder, launch } from "./harness.mjs";
import { AGAIN, answerAll, answerPractice, ASKED, asked, beginCard, beginCheck, fillCard, give, handIn, leaf, open, press, says, seen } from "./learner.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** @type {import("puppeteer-core").Browser} */
let browser;
/** The pages of the site; the one-file edition is looked at by itself, a leaf at a time. */
const PAGES = (await everyPage()).filter((path) => path !== ONE_FILE);
const COLOURS = ["color-contrast", "link-in-text-block"];

before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

test("axe finds nothing on any page", async () => {
  const { page, context } = await freshPage(browser);
  await everywhere(page, () => axe(page));
  await context.close();
});

test("every colour has its contrast in the dark as well", async () => {
  const { page, context } = await freshPage(browser);
  await dark(page);
  await everywhere(page, () => axe(page, COLOURS));
  await context.close();
});

test("axe finds nothing in the one-file edition, on the route card and on a lesson", async () => {
  const { page, context } = await freshPage(browser);
  for (const slug of ["card", `lesson-${PRACTICE.get("order").lesson}`]) {
    await open(page, oneFile(), slug);
    assert.deepEqual(await axe(page), [], slug);
  }
  await context.close();
});

for (const [kind, { lesson, id, key }] of PRACTICE) {
  test(`axe finds nothing in a practice question of the kind ${kind}, wrongly and rightly answered, in light and dark`, async () => {
    const { page, context } = await freshPage(browser);
    const question = `[data-question="${id}"]`;
    await open(page, folder(), `lesson-${lesson}`);
    for (const [raw, said] of /** @type {[any, RegExp][]} */ ([[wrongAnswer(key, 0), /^Not yet/], [rightAnswer(key, 0), /^Right/]])) {
      await answerPractice(page, question, key, raw);
      await says(page, `${question} .remark`, said);
      await inBoth(page, `${kind}: ${said}`);
      if (said.source === "^Not yet") await press(page, question, AGAIN);
    }
    await context.close();
  });
}

test("axe finds nothing from the card to the certificate, in light and dark, and nothing of it scrolls sideways", async () => {
  const { page, context } = await freshPage(browser);
  const at = async (/** @type {string} */ where) => {
    await inBoth(page, where);
    await fits(page, 390, where);
    await page.setViewport({ width: 1100, height: 900 });
  };
  await open(page, folder(), "card");
  await press(page, "[data-cards]", "Whose card?");
  await at("the sheet for a first card");
  await fillCard(page, "Ada Winch");
  await press(page, "[data-cards]", "Another card");
  for (const part of ["Begin a new card", "Take a card out of a file"]) await press(page, "dialog[open]", part);
  await at("the sheet with cards");
  await press(page, "dialog[open]", "Close");
  await press(page, "[data-cards]", "Put the card away");
  await at("putting the card away");
  await press(page, "dialog[open]", "Close");
  await beginCheck(page, folder());
  const looked = new Set();
  for (;;) {
    const one = await asked(page);
    // One of each kind as it is asked, answered; a number is also left unreadable once.
    if (one.key.kind === "number" && !looked.has("number")) {
      await give(page, ASKED, one.key, { value: "ten", unit: "" });
      await page.keyboard.press("Tab");
      await page.focus(`${leaf("check")} .check-overview button`);
      await says(page, ASKED, /cannot be read as a number/);
      await at("a number that cannot be read");
    }
    if (one.at !== 2) await give(page, ASKED, one.key, rightAnswer(one.key, one.variant));
    if (!looked.has(one.key.kind)) await at(`the check with a question of the kind ${one.key.kind}`);
    looked.add(one.key.kind);
    if (one.at === one.of) break;
    await press(page, ASKED, "Next");
    await says(page, `${leaf("check")} .check-run h2`, new RegExp(`Question ${one.at + 1} of`));
  }
  await press(page, ASKED, "To handing in");
  await at("before handing in");
  await handIn(page);
  await seen(page, ".check-result");
  await press(page, ".check-result", "The questions, your answers and the reasons");
  await at("the result, the certificate and the reasons");
  await press(page, ".check-result", "Back to the start of the check");
  await at("the start of the check, with an earlier one");
  assert.ok(Object.keys(CHECK.keys).length > 0);
  await context.close();
});

test("axe finds nothing in a result that is not yet passed, in light and dark", async () => {
  const { page, context } = await freshPage(browser);
  await beginCard(page, folder(), "Ada Winch");
  await beginCheck(page, folder());
  await answerAll(page, () => null);
  await handIn(page);
  await inBoth(page, "not yet passed");
  await fits(page, 390, "not yet passed");
  await context.close();
});

test("on a phone of 390 pixels no page scrolls sideways", async () => {
  const { page, context } = await freshPage(browser, { width: 390, height: 844 });
  await everywhere(page, () => sticksOut(page));
  await context.close();
});

test("at 200 % no page scrolls sideways and no text is cut off", async () => {
  const { page, context } = await freshPage(browser, { width: 640, height: 450, scale: 2 });
  await everywhere(page, () => sticksOut(page));
  await context.close();
});

test("what can be pressed is 44 pixels wide and high at least, and a row of options 56, on a phone and on a desk", async () => {
  for (const width of [390, 1100]) {
    const { page, context } = await freshPage(browser, { width });
    await everywhere(page, () => small(page));
    await beginCard(page, folder(), "Ada Winch");
    await press(page, "[data-cards]", "Another card");
    assert.deepEqual(await small(page), [], `the sheet of cards at ${width}`);
    await press(page, "dialog[open]", "Close");
    const first = await beginCheck(page, folder());
    assert.deepEqual(await small(page), [], `the check at ${width}`);
    await give(page, ASKED, first.key, rightAnswer(first.key, first.variant));
    await press(page, `${leaf("check")} .check-overview`, "Hand in");
    assert.deepEqual(await small(page), [], `handing in at ${width}`);
    await handIn(page);
    assert.deepEqual(await small(page), [], `the result at ${width}`);
    await context.close();
  }
});

/** Looks at every page with everything unfolded, and only then complains. @param {Page} page @param {() => Promise<string[]>} look */
async function everywhere(page, look) {
  const found = [];
  for (const path of PAGES) {
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

/** @param {Page} page */
const dark = (page) => page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "dark" }]);

/** @param {Page} page @param {string} where */
async function inBoth(page, where) {
  assert.deepEqual(await axe(page), [], where);
  await dark(page);
  assert.deepEqual(await axe(page, COLOURS), [], `${where}, in the dark`);
  await page.emulateMediaFeatures([]);
}

/** @param {Page} page @param {number} width @param {string} where */
async function fits(page, width, where) {
  await page.setViewport({ width, height: 844 });
  assert.deepEqual(await sticksOut(page), [], `${where} at ${width}`);
}

/** What reaches beyond the side of the screen or is cut off by its box. @param {Page} page @returns {Promise<string[]>} */
function sticksOut(page) {
  return page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > innerWidth ? [`the page is ${document.documentElement.scrollWidth} wide`] : [];
    const isUnseen = (/** @type {Element | null} */ each) => {
      for (let outer = each; outer; outer = outer.parentElement) if (getComputedStyle(outer).clipPath === "inset(50%)") return true;
      return false;
    };
    const cut = [];
    for (const each of document.querySelectorAll("body *")) {
      if (!(each instanceof HTMLElement) || !each.checkVisibility() || each.closest(".skip, svg")) continue;
      // What is said to a screen reader only is cut off on purpose.
      if (isUnseen(each)) continue;
      const holdsText = [...each.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? "").trim() !== "");
      if (!holdsText) continue;
      const box = each.getBoundingClientRect();
      let scrolls = false;
      for (let outer = each.parentElement; outer; outer = outer.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(outer);
        if (/auto|scroll/.test(overflowX) && outer !== document.body) scrolls = true;
        const edge = outer.getBoundingClientRect();
        const hides = /hidden|clip/.test(overflowX + overflowY);
        if (hides && !scrolls && (box.right > edge.right + 1 || box.left < edge.left - 1 || box.bottom > edge.bottom + 1)) cut.push(each.outerHTML.slice(0, 100));
      }
      const { overflowX } = getComputedStyle(each);
      if (/hidden|clip/.test(overflowX) && each.scrollWidth > each.clientWidth + 1) cut.push(each.outerHTML.slice(0, 100));
      if (!scrolls && (box.right > innerWidth + 1 || box.left < -1)) cut.push(each.outerHTML.slice(0, 100));
    }
    return [...wide, ...cut];
  });
}

/** The targets that are too small. @param {Page} page @returns {Promise<string[]>} */
function small(page) {
  return page.evaluate(() => {
    const found = [];
    for (const each of document.querySelectorAll("a[href], button, summary, input, select, textarea")) {
      if (!each.checkVisibility({ visibilityProperty: true }) || each.closest(".skip")) continue;
      // A link within a line of text is as high as the line (WCAG 2.2, 2.5.8, inline).
      if (each.matches("a") && getComputedStyle(each).display === "inline") continue;
      // A title may be laid over its whole row.
      const isLaidOver = getComputedStyle(each, "::after").position === "absolute";
      const target = isLaidOver && each instanceof HTMLElement ? each.offsetParent ?? each : each.closest("label") ?? each;
      const box = target.getBoundingClientRect();
      const least = each.closest(".option") ? 56 : 44;
      if (box.height < least - 0.5 || box.width < 43.5) found.push(`${Math.round(box.width)} x ${Math.round(box.height)}: ${target.outerHTML.slice(0, 120)}`);
    }
    return found;
  });
}
