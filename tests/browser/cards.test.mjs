// Route cards on one device: two learners keep apart, a card goes away and comes back, and a browser that keeps nothing says so.
import assert from "node:assert/strict";
import { writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { COURSE, LESSONS, rightAnswer, site } from "./course.mjs";
import { freshPage, launch, saved, serve } from "./harness.mjs";
import { ASKED, asked, beginCard, beginCheck, fillCard, give, leaf, open, press, says, seen } from "./learner.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
const edition = site((path) => server.address + path);
const CARD = `${leaf("card")} [data-cards]`;
const [FIRST, SECOND] = [...LESSONS.keys()];

before(async () => {
  browser = await launch();
  server = await serve();
});
after(async () => {
  await browser.close();
  await server.stop();
});

test("two learners on one device keep apart", async () => {
  const { page, context, wrong } = await freshPage(browser);
  await beginCard(page, edition, "Ada Winch");
  await read(page, FIRST);
  await beginCheck(page, edition);
  const one = await asked(page);
  await give(page, ASKED, one.key, rightAnswer(one.key, one.variant));

  await open(page, edition, "card");
  await press(page, CARD, "Another card");
  await fillCard(page, "Bo Stern", "Slip 2");
  await says(page, CARD, /Bo Stern.*Slip 2/);
  assert.deepEqual(await readLessons(page), []);
  await says(page, `${leaf("card")} td[data-check]`, /^$/);
  await open(page, edition, "check");
  await says(page, leaf("check"), /Begin the check/);
  await read(page, SECOND);

  await open(page, edition, "card");
  await press(page, CARD, "Another card");
  await press(page, "dialog[open] .card-list", /^Ada Winch/);
  await says(page, CARD, /Ada Winch/);
  assert.deepEqual(await readLessons(page), [FIRST]);
  await says(page, `${leaf("card")} td[data-check]`, /^Begun$/);
  await beginCheck(page, edition);
  assert.equal((await asked(page)).id, one.id);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("while a check is open, the other learner's card takes it off the screen", async () => {
  const { page, context } = await freshPage(browser);
  await beginCard(page, edition, "Ada Winch");
  await beginCheck(page, edition);
  await press(page, ".strip", /Ada Winch/);
  await fillCard(page, "Bo Stern");
  await says(page, `${leaf("check")} [data-check-begin]`, /Begin the check/);
  assert.equal(await page.$(ASKED), null);
  await context.close();
});

test("a card is put away into a file, leaves the device, and comes out of the file whole", async () => {
  const { page, context, wrong } = await freshPage(browser);
  await beginCard(page, edition, "Ada Winch");
  await read(page, FIRST);
  await open(page, edition, "card");
  const before = await stored(page);
  await press(page, CARD, "Put the card away");
  assert.equal(await clearButton(page), null, "nothing is cleared before it is saved");
  const file = await saved(page, () => press(page, "dialog[open]", "Save the card to a file"));
  assert.match(file.name, /^card-ada-winch-\d{4}-\d\d-\d\d\.json$/);
  await press(page, "dialog[open]", /clear the card from this device/);
  await says(page, CARD, /Whose card\?/);
  assert.deepEqual((await stored(page)).cards, {});

  await press(page, CARD, "Whose card?");
  await takeOut(page, file.path);
  await says(page, CARD, /Ada Winch/);
  assert.deepEqual(await stored(page), before);
  assert.deepEqual(await readLessons(page), [FIRST]);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a file that holds no card is refused in plain words, and nothing changes", async () => {
  const { page, context, wrong } = await freshPage(browser);
  await beginCard(page, edition, "Ada Winch");
  const before = await stored(page);
  const file = await saved(page, async () => {
    await press(page, CARD, "Put the card away");
    await press(page, "dialog[open]", "Save the card to a file");
  });
  const other = join(dirname(file.path), "other.json");
  await writeFile(other, file.bytes.toString("utf8").replace(/"name": ".*?"/, '"name": 7'));
  await press(page, "dialog[open]", "Close");
  await press(page, CARD, "Another card");
  await press(page, "dialog[open]", "Take a card out of a file");
  await (await page.$("dialog[open] input[type=file]"))?.uploadFile(other);
  await says(page, "dialog[open]", /This file holds no card/);
  assert.deepEqual(await stored(page), before);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a card that is here and in the file is replaced only when asked", async () => {
  const { page, context } = await freshPage(browser);
  await beginCard(page, edition, "Ada Winch");
  const file = await saved(page, async () => {
    await press(page, CARD, "Put the card away");
    await press(page, "dialog[open]", "Save the card to a file");
  });
  await read(page, FIRST);
  await open(page, edition, "card");
  await press(page, CARD, "Another card");
  await takeOut(page, file.path);
  await press(page, "dialog[open]", "Keep the one here");
  assert.deepEqual(await readLessons(page), [FIRST]);
  await press(page, CARD, "Another card");
  await takeOut(page, file.path);
  await press(page, "dialog[open]", /^Replace it/);
  assert.deepEqual(await readLessons(page), []);
  await context.close();
});

test("text in the storage that is no card is left untouched, and that is said", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, edition, "card");
  await page.evaluate(() => localStorage.setItem("journeybook.cards", "somebody else's"));
  await page.reload();
  await says(page, ".card-notice", /cannot be read here; they are left untouched/);
  await press(page, CARD, "Whose card?");
  await fillCard(page, "Ada Winch");
  assert.equal(await page.evaluate(() => localStorage.getItem("journeybook.cards")), "somebody else's");
  await context.close();
});

const REFUSALS = {
  "storage is refused": {
    before: () => {
      Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });
    },
    words: /keeps nothing from page to page.*save the card to a file/i,
  },
  "storage is full": {
    before: () => {
      Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
    },
    words: /has no room left.*save the card to a file/i,
  },
};

for (const [when, { before: make, words }] of Object.entries(REFUSALS)) {
  test(`where ${when}, that is told in plain words, the work goes on, and the card can be saved`, async () => {
    const { page, context, wrong } = await freshPage(browser, { before: make });
    await open(page, edition, "check");
    await press(page, leaf("check"), "Whose card?");
    await fillCard(page, "Ada Winch");
    await says(page, ".card-notice", words);
    await press(page, `${leaf("check")} [data-check-begin]`, "Begin the check");
    const one = await asked(page);
    const raw = rightAnswer(one.key, one.variant);
    await give(page, ASKED, one.key, raw);
    await says(page, `${leaf("check")} .check-overview`, /1 of \d+ answered/);
    const file = await saved(page, () => press(page, ".card-notice", "Save the card to a file"));
    const { card } = JSON.parse(file.bytes.toString("utf8"));
    assert.equal(card.name, "Ada Winch");
    const kept = card.courses[COURSE].session.answers[one.id];
    // The unit of a number is kept only where it was chosen.
    assert.deepEqual(one.key.kind === "number" ? kept.value : kept, one.key.kind === "number" ? raw.value : raw);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

/** @param {import("puppeteer-core").Page} page @param {string} lesson */
async function read(page, lesson) {
  await open(page, edition, `lesson-${lesson}`);
  await press(page, leaf(`lesson-${lesson}`), "I have read this: enter it on the card");
  await says(page, "[data-read-end]", /entered on the card of/);
}

/** @param {import("puppeteer-core").Page} page @param {string} path */
async function takeOut(page, path) {
  await press(page, "dialog[open]", "Take a card out of a file");
  const input = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await seen(page, "dialog[open] input[type=file]"));
  await input.uploadFile(path);
}

/** @param {import("puppeteer-core").Page} page */
async function clearButton(page) {
  return page.evaluate(() => [...document.querySelectorAll("dialog[open] button")].find((each) => /clear the card/.test(each.textContent ?? "") && each.checkVisibility()) ?? null);
}

/** The device's cards as they are kept. @param {import("puppeteer-core").Page} page */
async function stored(page) {
  return JSON.parse(await page.evaluate(() => localStorage.getItem("journeybook.cards") ?? "null"));
}

/** The lessons that the current card counts as read. @param {import("puppeteer-core").Page} page */
async function readLessons(page) {
  const box = await stored(page);
  return Object.keys(box.cards[box.current].courses[COURSE]?.read ?? {});
}
