// Practicals, job cards and duties: sheets for the shop, which are read on screen, filled in by hand, and print on whole pages.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { COURSE, ONE_FILE } from "./course.mjs";
import { axe, everyPage, freshPage, fromFolder, launch, serve, SITE } from "./harness.mjs";

const pages = await everyPage();
const CARDS = pages.filter((path) => path.startsWith(`${COURSE}/job-card/`));
const PRACTICALS = pages.filter((path) => path.startsWith(`${COURSE}/practical/`));
const LIST = `${COURSE}/job-cards.html`;
const DUTIES = `${COURSE}/duties.html`;
const PAPERS = /** @type {const} */ (["A4", "letter"]);
/** How the page is looked at. @typedef {{width: number, scheme: "light" | "dark"}} Sight */
/** @type {Sight[]} */
const SIGHTS = [{ width: 390, scheme: "light" }, { width: 390, scheme: "dark" }, { width: 1100, scheme: "light" }, { width: 1100, scheme: "dark" }];

/** @type {import("puppeteer-core").Browser} */
let browser;
before(async () => { browser = await launch("chromium"); });
after(() => browser.close());

test("the course has practicals, job cards and duties", () => {
  assert.ok(PRACTICALS.length > 0);
  assert.ok(CARDS.length > 0);
  assert.ok(pages.includes(LIST) && pages.includes(DUTIES));
});

for (const path of CARDS) {
  test(`${path} is one page of A4 and of Letter, with its cautions, and nothing cut off`, async () => {
    const { page, context } = await freshPage(browser);
    await page.goto(fromFolder(path));
    const cautions = await texts(page, ".job-card-cautions li");
    assert.ok(cautions.length > 0);
    const last = (await texts(page, ".job-card-issue")).join("");
    for (const format of PAPERS) {
      const paper = await page.pdf({ format, preferCSSPageSize: false });
      assert.equal(count(paper), 1, `pages of ${format}`);
      const said = flat(text(paper));
      for (const caution of cautions) assert.ok(said.includes(flat(caution)), `${caution} on ${format}`);
      assert.ok(said.includes(flat(last)), `the last line on ${format}`);
      assert.match(said, /exampleunit:notvalidforwork/);
      assert.doesNotMatch(said, /workswithoutanetwork|routecard/);
    }
    await context.close();
  });
}

test("a job card that is opened in the one-file edition prints as one page as well", async () => {
  const { page, context } = await freshPage(browser);
  const slug = `job-card-${(CARDS[0].split("/").pop() ?? "").replace(".html", "")}`;
  await page.goto(`${fromFolder(ONE_FILE)}#${slug}`);
  await page.waitForSelector(`#${slug}.is-open`);
  for (const format of PAPERS) assert.equal(count(await page.pdf({ format, preferCSSPageSize: false })), 1, format);
  await context.close();
});

test("in the one-file edition with JavaScript off each job card has a page of the book", async () => {
  const { page, context } = await freshPage(browser, { script: false });
  await page.goto(fromFolder(ONE_FILE));
  const cards = await page.$$eval(".job-card", (all) => all.map((card) => [card.querySelector("h1"), card.querySelector(".job-card-issue")].map((each) => each?.textContent ?? "")));
  assert.equal(cards.length, CARDS.length);
  const sheets = text(await page.pdf({ format: "letter", timeout: 120_000 })).split("\f").map(flat);
  const whole = sheets.filter((sheet) => cards.some(([title, last]) => sheet.includes(flat(title)) && sheet.includes(flat(last))));
  assert.equal(whole.length, CARDS.length);
  await context.close();
});

for (const path of PRACTICALS) {
  test(`${path} prints with its head on every page of steps, its limits, and both words of the result`, async () => {
    const { page, context } = await freshPage(browser);
    await page.goto(fromFolder(path));
    const [title] = await texts(page, "h1");
    const steps = await texts(page, ".observed-text");
    const limits = await texts(page, ".practical-limits li");
    assert.ok(limits.length > 0);
    // Enlarged, so that the steps surely run over a page.
    for (const [format, scale] of PAPERS.flatMap((each) => /** @type {[typeof each, number][]} */ ([[each, 1], [each, 1.5]]))) {
      const paper = await page.pdf({ format, scale, preferCSSPageSize: false });
      const sheets = text(paper).split("\f").map(flat).filter(Boolean);
      const holding = sheets.filter((sheet) => steps.some((step) => sheet.includes(flat(step))));
      assert.ok(holding.length > (scale > 1 ? 1 : 0), `sheets with steps on ${format}`);
      for (const sheet of holding) {
        assert.ok(sheet.includes(flat(title)), `the title on ${format}`);
        assert.ok(sheet.includes("exampleunit:notvalidforwork"), `the example unit on ${format}`);
        assert.ok(sheet.includes("notseen") && sheet.includes("prompted"), `the columns on ${format}`);
      }
      const whole = sheets.join("");
      for (const words of [...steps, ...limits]) assert.ok(whole.includes(flat(words)), `${words} on ${format}`);
      assert.match(whole, /competentnotyetcompetent/);
      assert.match(whole, /beforeanythingelse/);
      assert.doesNotMatch(whole, /printitandfillitinbyhand|skiptothetext/);
    }
    await context.close();
  });

  test(`${path} that is only read writes nothing into the browser, and no script reaches its box on the route card`, async () => {
    const { page, context } = await freshPage(browser);
    const { address, stop } = await serve();
    await page.goto(address + path);
    const before = await page.evaluate(() => JSON.stringify({ ...localStorage }));
    await page.waitForSelector(".practical.live");
    await page.click(".marks-cell");
    await page.goto(`${address}${COURSE}/index.html`);
    assert.equal(await page.evaluate(() => JSON.stringify({ ...localStorage })), before);
    const boxes = await page.$$eval(".operation-practical .mark-box", (all) => all.map((each) => each.innerHTML));
    assert.deepEqual(boxes, boxes.map(() => ""));
    await context.close();
    await stop();
  });
}

test("a critical step is told by a word and by a line, not by colour alone", async () => {
  const { page, context } = await freshPage(browser, { width: 390 });
  await page.goto(fromFolder(PRACTICALS[0]));
  const steps = await page.$$eval(".observed tbody tr", (all) => all.map((row) => ({
    critical: row.classList.contains("is-critical"),
    word: row.querySelector(".critical-word")?.textContent ?? "",
    line: getComputedStyle(/** @type {Element} */ (row.querySelector(".observed-number"))).boxShadow !== "none",
  })));
  assert.ok(steps.some((step) => step.critical) && steps.some((step) => !step.critical));
  for (const { critical, word, line } of steps) assert.deepEqual([word, line], critical ? ["Critical", true] : ["", false]);
  await context.close();
});

for (const path of [...PRACTICALS, LIST, ...CARDS, DUTIES]) {
  test(`${path} is accessible and fits its screen, light and dark, narrow and wide`, async () => {
    for (const { width, scheme } of SIGHTS) {
      const { page, context, wrong } = await freshPage(browser, { width });
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      await page.goto(fromFolder(path));
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth), `${width} ${scheme}`);
      assert.deepEqual(wrong, []);
      assert.deepEqual(await axe(page), [], `${width} ${scheme}`);
      await context.close();
    }
  });
}

test("from the route card a keyboard reaches the practical, the job cards and the duties", async () => {
  const { page, context } = await freshPage(browser);
  for (const end of [PRACTICALS[0], LIST, DUTIES]) {
    await page.goto(fromFolder(`${COURSE}/index.html`));
    await pressTabTo(page, end);
    await page.keyboard.press("Enter");
    await page.waitForFunction((wanted) => location.pathname.endsWith(wanted), {}, end);
  }
  await context.close();
});

test("a duty leads to the very question and to the very step", async () => {
  const { page, context } = await freshPage(browser);
  for (const part of ["#lesson-", "#practical-"]) {
    await page.goto(fromFolder(DUTIES));
    const link = await page.waitForSelector(`.duty-covers a[href*="${part}"]`);
    await link?.click();
    await page.waitForFunction(() => document.querySelector(":target"));
    const where = await page.$eval(":target", (each) => each.className);
    assert.match(where, part === "#lesson-" ? /question/ : /^(?:is-critical)?$/);
  }
  await context.close();
});

test("with JavaScript off every sheet is there to read", async () => {
  const { page, context } = await freshPage(browser, { script: false });
  for (const [path, part] of [[PRACTICALS[0], ".observed tbody tr"], [CARDS[0], ".job-card-head h1"], [LIST, ".card-line"], [DUTIES, ".duty"]]) {
    await page.goto(fromFolder(path));
    assert.ok(await page.$eval(part, (each) => each.checkVisibility()), path);
  }
  await context.close();
});

test("the search finds a practical and a job card by what stands on them", async () => {
  const { page, context } = await freshPage(browser);
  for (const path of [PRACTICALS[0], CARDS[0]]) {
    const title = /<h1[^>]*>([^<]+)</.exec(readFileSync(join(SITE, path), "utf8"))?.[1] ?? "";
    await page.goto(fromFolder(`${COURSE}/search.html`));
    await page.waitForSelector(".search-form:not([hidden])");
    await page.type(".search-field", title);
    await page.waitForSelector(`.search-results a[href$="${path.slice(COURSE.length + 1)}"]`);
  }
  await context.close();
});

/** Presses Tab until a link that ends so, or holds that, has the focus. @param {import("puppeteer-core").Page} page @param {string} part */
async function pressTabTo(page, part) {
  for (let presses = 0; presses < 200; presses += 1) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((wanted) => document.activeElement instanceof HTMLAnchorElement && document.activeElement.href.includes(wanted), part)) return;
  }
  throw new Error(`Tab never came to ${part}`);
}

/** @param {import("puppeteer-core").Page} page @param {string} selector */
function texts(page, selector) {
  return page.$$eval(selector, (all) => all.map((each) => (each.textContent ?? "").trim()));
}

/** @param {Uint8Array} paper */
function text(paper) {
  return execFileSync("pdftotext", ["-raw", "-", "-"], { input: paper, encoding: "utf8", maxBuffer: 64 * 1024 * 1024 });
}

/** @param {Uint8Array} paper */
function count(paper) {
  return Number(/^Pages:\s+(\d+)/m.exec(execFileSync("pdfinfo", ["-"], { input: paper, encoding: "utf8" }))?.[1]);
}

/** Without spaces and letter case: a line break on paper is no difference. @param {string} words */
function flat(words) {
  return words.replace(/\s+/g, "").toLowerCase();
}
