// The paper of a practical: without scripts, before anything is saved, and filled in from the saved record.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { after, before, test } from "node:test";
import { COURSE, ONE_FILE } from "./course.mjs";
import { everyPage, freshPage, fromFolder, launch, saved } from "./harness.mjs";
import { choose, confirmAll, fingerprint, mark, markAll, NAMES, open, PRACTICAL, press, pressButton, SLUG, stepsOf, words, writeNames } from "./sheet.mjs";

const PRACTICALS = (await everyPage()).filter((path) => path.startsWith(`${COURSE}/practical/`));
/** @type {import("puppeteer-core").Browser} */ let browser;
before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

for (const path of PRACTICALS) {
  test(`${path} without scripts is the sheet for the hand: nothing to press, and it keeps nothing`, async () => {
    const { page, context } = await freshPage(browser, { script: false, width: 390 });
    await page.goto(fromFolder(path));
    assert.equal(await page.$$eval("main :is(button, input, select, textarea, fieldset)", (all) => all.length), 0);
    assert.match(await words(page, ".practical-keeps"), /^This page keeps nothing\. Print it/);
    for (const part of [".blank-line", ".tick-box", ".observed .tick", ".result-words", ".practical-signed"]) {
      assert.ok(await page.$eval(part, (each) => each.checkVisibility()), part);
    }
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth));
    await context.close();
  });

  test(`${path} prints the same empty sheet with scripts and without, whatever is written on the screen`, async () => {
    const printed = [];
    for (const script of [false, true]) {
      const { page, context } = await freshPage(browser, { script });
      await page.goto(fromFolder(path));
      if (script) {
        await page.waitForSelector(".practical.live");
        await page.type('[id$="-line-name"]', NAMES.name);
        await confirmAll(page);
      }
      printed.push(text(await page.pdf({ format: "A4", preferCSSPageSize: false })));
      await context.close();
    }
    assert.ok(!printed[1].includes(flat(NAMES.name)));
    assert.equal(printed[1].replace(/cardof.*?whosecard\?|whosecard\?/g, ""), printed[0]);
  });
}

test("a saved sheet prints filled in on two pages, with its fingerprint above the lines for the signatures", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  await writeNames(page);
  await page.type(`#${SLUG}-line-second`, "T. Marrable");
  await confirmAll(page);
  await markAll(page);
  const steps = await stepsOf(page);
  const lesser = steps.find((step) => !step.critical) ?? steps[0];
  await mark(page, lesser.row, "no");
  await press(page, `#${lesser.row} .marks-more .mark-choice`);
  await press(page, `#${lesser.row} .marks-more .button`);
  await page.type(`#${lesser.row}-note`, "Left one part out.");
  await page.type(`#${SLUG}-note`, "Calm throughout.");
  await choose(page, "competent");
  await saved(page, () => pressButton(page, "Save the record"));
  const groups = await fingerprint(page);
  const texts = await page.$$eval(".observed-text, .observed-look p, .confirm p, .practical-limits li, .foot .cautions li", (all) => all.map((each) => each.textContent ?? ""));
  for (const format of /** @type {const} */ (["A4", "letter"])) {
    const paper = await page.pdf({ format, preferCSSPageSize: false });
    assert.ok(count(paper) <= 2, `${count(paper)} pages of ${format}`);
    const said = text(paper);
    for (const each of [...Object.values(NAMES), "T. Marrable", "Left one part out.", "Calm throughout.", groups.replaceAll("-", ""), ...texts]) {
      assert.ok(said.includes(flat(each)), `${each} on ${format}`);
    }
    assert.ok(said.indexOf(flat(groups.replaceAll("-", ""))) < said.indexOf(flat("Assessor: signature, date")));
    assert.match(said, /exampleunit:notvalidforwork/);
    assert.match(said, /draft,notreleased/);
    assert.doesNotMatch(said, /savetherecord|nextperson|enditatonceended/);
  }
  await page.emulateMediaType("print");
  const ticked = await page.$$eval(`#${lesser.row} .tick-box`, (all) => all.map((box) => box.classList.contains("is-ticked") && getComputedStyle(box, "::before").borderTopStyle === "solid"));
  assert.deepEqual(ticked, [false, true, false, true]);
  assert.deepEqual(await page.$$eval(".result-word .tick-box", (all) => all.map((box) => box.classList.contains("is-ticked"))), [true, false]);
  await page.emulateMediaType();
  await pressButton(page, "Put something right");
  assert.ok(!text(await page.pdf({ format: "A4" })).includes(flat(NAMES.name)), "what is being changed is not on the paper");
  await context.close();
});

for (const path of PRACTICALS) {
  test(`${path} with a note on every step is still two pages of A4, and every note is on them`, async () => {
    const { page, context } = await freshPage(browser);
    await open(page, fromFolder(path));
    const notes = await page.evaluate(() => {
      const each = (/** @type {string} */ selector) => /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll(selector)]);
      for (const box of [...each(".confirm-box input"), ...each('.marks [value="yes"]')]) box.click();
      for (const [index, box] of [...each(".marks textarea"), ...each('[id$="-line-name"], [id$="-line-assessor"]')].entries()) {
        box.value = box.tagName === "INPUT" ? "R. Tansley" : `Number ${index + 1}: asked what the sign means, then said it in own words.`;
        box.dispatchEvent(new Event("input"));
      }
      each('.result-choice [value="competent"]')[0].click();
      return each(".marks textarea").map((box) => box.value);
    });
    await saved(page, () => pressButton(page, "Save the record"));
    const paper = await page.pdf({ format: "A4", preferCSSPageSize: false });
    assert.ok(count(paper) <= 2, `${count(paper)} pages`);
    for (const note of notes) assert.ok(text(paper).includes(flat(note)), note);
    await context.close();
  });
}

test("a sheet that was ended says so on paper, in the one-file edition too", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, `${fromFolder(ONE_FILE)}#${SLUG}`);
  await writeNames(page);
  await pressButton(page, "End it at once");
  await saved(page, () => pressButton(page, "Save the record"));
  const paper = await page.pdf({ format: "A4", preferCSSPageSize: false });
  assert.ok(count(paper) <= 2, `${count(paper)} pages`);
  assert.match(text(paper), /endedat\d\d:\d\d/);
  await context.close();
});

/** Without spaces and letter case: a line break on paper is no difference. @param {string} words */
function flat(words) {
  return words.replace(/\s+/g, "").toLowerCase();
}

/** @param {Uint8Array} paper */
function text(paper) {
  return flat(execFileSync("pdftotext", ["-raw", "-", "-"], { input: paper, encoding: "utf8", maxBuffer: 64 * 1024 * 1024 }));
}

/** @param {Uint8Array} paper */
function count(paper) {
  return Number(/^Pages:\s+(\d+)/m.exec(execFileSync("pdfinfo", ["-"], { input: paper, encoding: "utf8" }))?.[1]);
}
