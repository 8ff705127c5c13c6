// Pointing at a part of a drawing and sorting units: by mouse, keyboard and touch, on pages and in the one file, and in the check.
import assert from "node:assert/strict";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { asking } from "./asking.mjs";
import { LESSONS, PRACTICE, dataOf, folder, oneFile, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { axe, freshPage, launch, serve } from "./harness.mjs";
import { ASKED, asked, beginCard, beginCheck, give, open, press, says, shown, words } from "./learner.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

const PHONE = { width: 390, height: 844 };
/** Pixels that a finger needs. */
const LEAST = 24;
const SPOT = PRACTICE.get("spot");
const TRIAGE = PRACTICE.get("triage");
const POINT = `[data-question="${SPOT.id}"]`;
const SORT = `[data-question="${TRIAGE.id}"]`;
/** Every practice question that is pointed at: its lesson, id and key. */
const EVERY_SPOT = [...LESSONS].flatMap(([lesson, path]) => Object.entries(dataOf(path, `lesson-${lesson}`).practice ?? {})
  .filter(([, { key }]) => key.kind === "spot").map(([id, { key }]) => ({ lesson, id, key })));

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {Awaited<ReturnType<typeof serve>>} */
let server;
/** @type {Page} */
let page;
/** @type {string[]} */
let wrong;

before(async () => { browser = await launch("chromium"); server = await serve(); });
after(async () => { await browser.close(); await server.stop(); });
beforeEach(async () => { ({ page, wrong } = await freshPage(browser, PHONE)); });
afterEach(async () => {
  await page.browserContext().close();
  // axe looks into the style sheet, which the page forbids; nothing else may be complained of.
  assert.deepEqual(wrong.filter((each) => !/journeybook\.css.*connect-src/.test(each)), []);
});

/** Where a letter in the drawing stands on the screen. @param {string} question @param {string} spot */
async function letter(question, spot) {
  const at = await page.$eval(`${question} .spot-mark[data-spot="${spot}"]`, (mark) => {
    mark.scrollIntoView({ block: "center" });
    const { left, top, width, height } = mark.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  });
  return at;
}

/** The parts of the drawing that stand out, whatever the pointer happens to be over. @param {string} question */
function lit(question) {
  return page.$$eval(`${question} .spot-frame`, (frames) => frames.filter((frame) => getComputedStyle(frame).visibility === "visible" && !frame.matches(".spot-near:not(.spot-chosen, [data-verdict])"))
    .map((frame) => [frame.getAttribute("data-frame"), frame.getAttribute("data-verdict")]));
}

const WAYS = { "from a server": () => site((path) => server.address + path), "from the folder": folder, "in the one file": () => oneFile() };
for (const [way, edition] of Object.entries(WAYS)) {
  test(`a click on a part chooses it in the list too, and the list in the drawing, ${way}`, async () => {
    await open(page, edition(), `lesson-${SPOT.lesson}`);
    const other = wrongAnswer(SPOT.key, 0);
    const { x, y } = await letter(POINT, other);
    await page.mouse.click(x, y);
    assert.equal(await shown(page, POINT, "spot"), other);
    assert.deepEqual(await lit(POINT), [[other, null]]);
    await give(page, POINT, SPOT.key, SPOT.key.right);
    assert.deepEqual(await lit(POINT), [[SPOT.key.right, null]]);
  });

  test(`units are sorted, counted and judged, ${way}`, async () => {
    await open(page, edition(), `lesson-${TRIAGE.lesson}`);
    const total = TRIAGE.key.units.length;
    assert.match(await words(page, `${SORT} .triage-count`), new RegExp(`^0 of ${total} sorted$`));
    await give(page, SORT, TRIAGE.key, rightAnswer(TRIAGE.key, 0));
    assert.match(await words(page, `${SORT} .triage-count`), new RegExp(`^${total} of ${total} sorted$`));
    await press(page, SORT, "Check this answer");
    await says(page, `${SORT} .remark`, /^Right/);
  });
}

test("a tap of a finger on a part chooses it", async () => {
  await page.setViewport({ ...PHONE, hasTouch: true, isMobile: true });
  await open(page, folder(), `lesson-${SPOT.lesson}`);
  const { x, y } = await letter(POINT, SPOT.key.right);
  await page.touchscreen.tap(x, y);
  await page.waitForFunction((where) => document.querySelector(`${where} input:checked`), {}, POINT);
  assert.equal(await shown(page, POINT, "spot"), SPOT.key.right);
});

test("the keyboard chooses in the list, and the drawing takes no place in the order of the keys", async () => {
  await open(page, folder(), `lesson-${SPOT.lesson}`);
  await page.focus(`${POINT} legend`);
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement?.getAttribute("type")), "radio");
  await page.keyboard.press("Space");
  const first = await page.evaluate(() => /** @type {HTMLInputElement} */ (document.activeElement).value);
  assert.deepEqual(await lit(POINT), [[first, null]]);
  await page.keyboard.press("ArrowDown");
  const second = await page.evaluate(() => /** @type {HTMLInputElement} */ (document.activeElement).value);
  assert.notEqual(second, first);
  assert.deepEqual(await lit(POINT), [[second, null]]);
});

test("after a wrong answer the right part is framed and named, and the chosen one is framed otherwise", async () => {
  await open(page, folder(), `lesson-${SPOT.lesson}`);
  const other = wrongAnswer(SPOT.key, 0);
  await give(page, POINT, SPOT.key, other);
  await press(page, POINT, "Check this answer");
  await says(page, `${POINT} .remark`, /^Not yet/);
  assert.deepEqual(new Map(/** @type {[string, string][]} */ (await lit(POINT))), new Map([[other, "hold"], [SPOT.key.right, "right"]]));
  const name = await words(page, `${POINT} [data-option="${SPOT.key.right}"] .option-text`);
  assert.match(await words(page, `${POINT} .spot-named`), new RegExp(`^Right: [A-Z] · ${name}$`));
  await press(page, POINT, "Try again");
  assert.deepEqual(await lit(POINT), []);
});

test("each part bears the letter that stands before it in the list", async () => {
  for (const { lesson, id, key } of EVERY_SPOT) {
    await open(page, folder(), `lesson-${lesson}`);
    const where = `[data-question="${id}"]`;
    for (const spot of key.spots) {
      assert.equal(await words(page, `${where} .spot-mark[data-spot="${spot}"]`), await words(page, `${where} [data-option="${spot}"] .letter`));
    }
  }
});

for (const width of [320, 390, 1100]) {
  test(`at ${width} pixels each part is found under its letter, and an area of ${LEAST} pixels is there to touch`, async () => {
    await page.setViewport({ width, height: 900 });
    for (const { lesson, id, key } of EVERY_SPOT) {
      await open(page, folder(), `lesson-${lesson}`);
      const where = `[data-question="${id}"]`;
      for (const spot of key.spots) {
        const { x, y } = await letter(where, spot);
        assert.equal(await page.evaluate((left, top) => document.elementFromPoint(left, top)?.closest("[data-spot]")?.getAttribute("data-spot"), x, y), spot);
        const sizes = await page.$$eval(`${where} svg [data-spot="${spot}"]:not(.spot-mark)`, (all) => all.map((each) => {
          const { width: wide, height } = each.getBoundingClientRect();
          return Math.min(wide, height);
        }));
        assert.ok(Math.max(...sizes) >= LEAST - 0.6, `${id}: ${spot} is ${Math.max(...sizes)}`);
      }
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${lesson} scrolls sideways at ${width}`);
    }
  });
}

test("a place is 56 pixels high, 8 from the next, on a phone", async () => {
  await open(page, folder(), `lesson-${TRIAGE.lesson}`);
  const boxes = await page.$$eval(`${SORT} .triage-unit:first-of-type .place-box`, (all) => all.map((each) => each.getBoundingClientRect().toJSON()));
  assert.equal(boxes.length, TRIAGE.key.places.length);
  boxes.forEach((box, at) => {
    assert.ok(box.height >= 56);
    if (at > 0) assert.ok(Math.max(box.top - boxes[at - 1].bottom, box.left - boxes[at - 1].right) >= 8);
  });
});

test("arrow keys go through the places of a unit, and Tab leads to the next unit", async () => {
  await open(page, folder(), `lesson-${TRIAGE.lesson}`);
  const [first, second] = await page.$$eval(`${SORT} .triage-unit`, (all) => all.map((each) => each.getAttribute("data-unit")));
  await page.focus(`${SORT} [data-unit="${first}"] input`);
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowDown");
  const answer = /** @type {Record<string, string>} */ (await shown(page, SORT, "triage"));
  assert.deepEqual(answer, { [String(first)]: TRIAGE.key.places[1] });
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement?.closest("[data-unit]")?.getAttribute("data-unit")), second);
});

test("a unit that is left out is asked for before anything is said", async () => {
  await open(page, folder(), `lesson-${TRIAGE.lesson}`);
  const [unit] = TRIAGE.key.units;
  await give(page, SORT, TRIAGE.key, { [unit]: TRIAGE.key.right[unit] });
  await press(page, SORT, "Check this answer");
  await says(page, `${SORT} .remark`, new RegExp(`Still to sort: ${TRIAGE.key.units.length - 1}\\.`));
});

test("a dangerous unit that was missed is named first, and each unit says what became of it", async () => {
  await open(page, folder(), `lesson-${TRIAGE.lesson}`);
  const [mildest] = TRIAGE.key.places;
  const strictest = TRIAGE.key.places.at(-1);
  const raw = Object.fromEntries(TRIAGE.key.units.map((/** @type {string} */ unit) => [unit, TRIAGE.key.right[unit] === mildest ? strictest : mildest]));
  await give(page, SORT, TRIAGE.key, raw);
  await press(page, SORT, "Check this answer");
  await says(page, `${SORT} .remark`, /^Not yet/);
  const told = await page.$$eval(`${SORT} .tag .broken-rule .label`, (all) => all.map((each) => each.textContent));
  const count = TRIAGE.key.dangerous.length;
  assert.deepEqual(told.slice(0, count), Array(count).fill("Dangerous, and missed"));
  assert.ok(told.slice(count).every((each) => each === "Missed"));
  for (const unit of TRIAGE.key.units) {
    const said = await words(page, `${SORT} [data-unit="${unit}"] .verdict`);
    const wanted = TRIAGE.key.dangerous.includes(unit) ? /^Dangerous, and missed\./ : TRIAGE.key.right[unit] === mildest ? /^Condemned needlessly\./ : /^Missed\./;
    assert.match(said, wanted);
  }
});

test("axe finds nothing before and after the answer, in light and dark", async () => {
  for (const [{ lesson, key }, question] of /** @type {[any, string][]} */ ([[SPOT, POINT], [TRIAGE, SORT]])) {
    await open(page, folder(), `lesson-${lesson}`);
    for (const mode of ["light", "dark"]) {
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: mode }]);
      assert.deepEqual(await axe(page), [], `${question} open, ${mode}`);
    }
    await give(page, question, key, wrongAnswer(key, 0));
    await press(page, question, "Check this answer");
    await says(page, `${question} .remark`, /^Not yet/);
    for (const mode of ["light", "dark"]) {
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: mode }]);
      assert.deepEqual(await axe(page), [], `${question} judged, ${mode}`);
    }
  }
});

test("with scripts off the parts bear their letters, and the answer can be unfolded", async () => {
  const without = await freshPage(browser, { ...PHONE, script: false });
  await without.page.goto(folder().address(`lesson-${SPOT.lesson}`));
  const letters = await without.page.$$eval(`${POINT} .spot-mark`, (all) => all.map((each) => each.textContent));
  assert.deepEqual(letters, await without.page.$$eval(`${POINT} .options .letter`, (all) => all.map((each) => each.textContent)));
  assert.ok(await without.page.$eval(`${POINT} .answer`, (each) => each.checkVisibility()));
  await without.context.close();
});

for (const kind of ["spot", "triage"]) {
  test(`a ${kind} question of the check keeps its answer when it is left and opened again`, async () => {
    const always = await asking(kind);
    const edition = site((path) => always.address + path);
    await beginCard(page, edition, "R. Okafor");
    let one = await beginCheck(page, edition);
    while (one.key.kind !== kind && one.at < one.of) {
      await press(page, ".check-run", "Next");
      await says(page, ".check-run h2", new RegExp(`Question ${one.at + 1} of`));
      one = await asked(page);
    }
    const raw = rightAnswer(one.key, one.variant);
    await give(page, ASKED, one.key, raw);
    const away = one.at > 1 ? ["Back", one.at - 1, "Next"] : ["Next", one.at + 1, "Back"];
    await press(page, ".check-run", String(away[0]));
    await says(page, ".check-run h2", new RegExp(`Question ${away[1]} of`));
    await press(page, ".check-run", String(away[2]));
    await says(page, ".check-run h2", new RegExp(`Question ${one.at} of`));
    assert.deepEqual(await shown(page, ASKED, kind), raw);
    if (kind === "spot") assert.deepEqual(await lit(ASKED), [[raw, null]]);
    await always.stop();
  });
}
