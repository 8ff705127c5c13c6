// On paper: a certificate is one page, a lesson has nothing to press, and the one-file edition is a book.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { after, before, test } from "node:test";
import { folder, LESSONS, ONE_FILE } from "./course.mjs";
import { freshPage, fromFolder, launch } from "./harness.mjs";
import { answerAll, beginCard, beginCheck, handIn, leaf, seen } from "./learner.mjs";

/** The longest name that a card takes is cut at 120 letters; this one fills two lines. */
const NAME = "Maximiliana Wilhelmina Theodora Featherstonehaugh-Abercrombie of Quillon Basin";

/** @type {import("puppeteer-core").Browser} */
let browser;
before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

test("the certificate is exactly one page of A4 and of Letter, with the name and its limits", async () => {
  const { page, context } = await freshPage(browser);
  await beginCard(page, folder(), NAME);
  await beginCheck(page, folder());
  await answerAll(page);
  await handIn(page);
  await seen(page, `${leaf("check")} .certificate`);
  const limits = await page.$$eval(".certificate-limits li", (all) => all.map((each) => (each.textContent ?? "").replace(/\s+/g, " ").trim()));
  assert.ok(limits.length > 3);
  for (const format of /** @type {const} */ (["A4", "letter"])) {
    const paper = await page.pdf({ format, preferCSSPageSize: false });
    assert.equal(pages(paper), 1, `pages of ${format}`);
    const said = flat(text(paper));
    // A reader of PDF takes a hyphen at the end of a line for one that only divides a word.
    assert.ok(said.replaceAll("-", "").includes(flat(NAME).replaceAll("-", "")), `the name on ${format}`);
    assert.match(said, /notobserved/i);
    assert.match(said, /self-recorded/i);
    assert.match(said, /exampleunit:notvalidforwork/i);
    for (const limit of limits) assert.ok(said.includes(flat(limit)), `${limit} on ${format}`);
    assert.doesNotMatch(said, /Printthecertificate|Takethecheckagain|Revisit/i);
  }
  await context.close();
});

test("a printed lesson has its text and its practice, and no navigation", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(folder().address(`lesson-${[...LESSONS.keys()][1]}`));
  const title = await page.$eval("h1", (each) => each.textContent ?? "");
  const tabs = await page.$$eval(".tabs a", (all) => all.map((each) => each.textContent ?? ""));
  assert.ok(tabs.length > 3);
  const said = text(await page.pdf({ format: "A4" }));
  assert.ok(flat(said).includes(flat(title)));
  assert.match(said, /Practice/i);
  for (const words of ["Skip to the text", "Next lesson", "I have read this", "Check this answer", tabs.join(" ")]) {
    assert.ok(!flat(said).includes(flat(words)), `"${words}" is printed`);
  }
  await page.emulateMediaType("print");
  // The steps of an order are buttons that hold the question's own text, so they stay.
  const pressed = await page.$$eval("nav, button:not(.step), .skip", (all) => all.filter((each) => each.checkVisibility()).map((each) => each.outerHTML.slice(0, 80)));
  assert.deepEqual(pressed, []);
  await context.close();
});

test("the one-file edition, with JavaScript off, prints as a book with every lesson", async () => {
  const { page, context } = await freshPage(browser, { script: false });
  await page.goto(fromFolder(ONE_FILE));
  const titles = await page.$$eval(".leaf-lesson h1", (all) => all.map((each) => each.textContent ?? ""));
  assert.equal(titles.length, LESSONS.size);
  const book = await page.pdf({ format: "A4", timeout: 60_000 });
  assert.ok(pages(book) > LESSONS.size);
  const said = flat(text(book));
  for (const title of titles) assert.ok(said.includes(flat(title)), title);
  await context.close();
});

/** @param {Uint8Array} paper */
function text(paper) {
  return execFileSync("pdftotext", ["-", "-"], { input: paper, encoding: "utf8", maxBuffer: 64 * 1024 * 1024 });
}

/** @param {Uint8Array} paper */
function pages(paper) {
  return Number(/^Pages:\s+(\d+)/m.exec(execFileSync("pdfinfo", ["-"], { input: paper, encoding: "utf8" }))?.[1]);
}

/** Without spaces and letter case: a line break on paper is no difference. @param {string} words */
function flat(words) {
  return words.replace(/\s+/g, "").toLowerCase();
}
