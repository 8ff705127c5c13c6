// Whatever is done, on whatever screen: axe finds nothing, nothing scrolls sideways or is cut off, and a glove hits every target.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { CHECK, folder, oneFile, PRACTICE, rightAnswer, wrongAnswer } from "./course.mjs";
import { axe, freshPage, launch } from "./harness.mjs";
import { AGAIN, answerAll, answerPractice, ASKED, asked, beginCard, beginCheck, fillCard, give, handIn, leaf, open, press, says, seen } from "./learner.mjs";
import { COLOURS, dark, small, sticksOut } from "./looks.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** @type {import("puppeteer-core").Browser} */
let browser;

before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

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

test("from the card to the result, what can be pressed is 44 pixels wide and high at least, and a row of options 56", async () => {
  for (const width of [390, 1100]) {
    const { page, context } = await freshPage(browser, { width });
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

