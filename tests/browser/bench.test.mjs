// A bench of kind `fan`: moved by mouse, keyboard and touch, on pages and in the one file; in practice, and with scripts off.
import assert from "node:assert/strict";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { asking } from "./asking.mjs";
import { PRACTICE, folder, oneFile, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { axe, freshPage, launch, serve } from "./harness.mjs";
import { answerAll, ASKED, answerPractice, asked, beginCard, beginCheck, give, handIn, leaf, open, press, says, seen, setControl, shown, words } from "./learner.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

const PHONE = { width: 390, height: 844 };
const LESSON = "why-check-the-flow";
const BENCH = `${leaf(`lesson-${LESSON}`)} .bench-fan`;
const SETTING = PRACTICE.get("setting");
const SET = `[data-question="${SETTING.id}"]`;
const TRIAL = "[data-question=bench-why-low-in-the-bay]";

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

/** @param {string} control @param {string} [bench] */
const control = (control, bench = BENCH) => `${bench} [data-control="${control}"]`;
/** @param {string} reading @param {string} [bench] */
const reading = (reading, bench = BENCH) => `${bench} [data-reading="${reading}"] .fan-number`;
const ALARM = `${BENCH} [data-alarm="low-flow"]`;

const WAYS = { "from a server": () => site((path) => server.address + path), "from the folder": folder, "in the one file": () => oneFile() };
for (const [way, edition] of Object.entries(WAYS)) {
  test(`full filters slow the air, race the fan and sound the alarm in words, ${way}`, async () => {
    await open(page, edition(), `lesson-${LESSON}`);
    await says(page, reading("flow"), /^175$/);
    await says(page, ALARM, /silent/);
    await setControl(page, control("load"), 10);
    await says(page, reading("flow"), /^167$/);
    await says(page, reading("speed"), /^100$/);
    await says(page, ALARM, /Low-flow alarm sounds/);
    await says(page, `${BENCH} [role=status]`, /True flow 167 L\/min\..*Low-flow alarm sounds\./);
    await press(page, BENCH, "Back to the start");
    await says(page, reading("flow"), /^175$/);
    await says(page, ALARM, /silent/);
  });

  test(`a setting is right, or not, and says when nothing was set, ${way}`, async () => {
    await open(page, edition(), `lesson-${SETTING.lesson}`);
    await press(page, SET, "Check this answer");
    await says(page, `${SET} .remark`, /Set the bench first/);
    await answerPractice(page, SET, SETTING.key, wrongAnswer(SETTING.key, 0));
    await says(page, `${SET} .remark`, /^Not yet/);
    await answerPractice(page, SET, SETTING.key, rightAnswer(SETTING.key, 0));
    await says(page, `${SET} .remark`, /^Right/);
    assert.deepEqual(await shown(page, SET, "setting"), rightAnswer(SETTING.key, 0));
  });
}

test("a slider says its place in words, moves by arrow keys and stops at its ends", async () => {
  await open(page, folder(), `lesson-${LESSON}`);
  const range = await seen(page, `${control("opening")} input[type=range]`);
  await range.focus();
  const place = () => page.$eval(`${control("opening")} input[type=range]`, (input) => input.getAttribute("aria-valuetext"));
  assert.equal(await place(), "free");
  await page.keyboard.press("ArrowRight");
  assert.equal(await place(), "free");
  await page.keyboard.press("Home");
  assert.equal(await place(), "covered by the palm");
  await says(page, reading("flow"), /^0$/);
});

test("the step buttons are taps of a finger, keep the focus at an end, and are large enough for a glove", async () => {
  await page.setViewport({ ...PHONE, hasTouch: true, isMobile: true });
  await open(page, folder(), `lesson-${LESSON}`);
  const more = await seen(page, `${control("charge")} .fan-step:first-child`);
  for (let tap = 0; tap < 6; tap += 1) await more.tap();
  await says(page, `${control("charge")} .fan-place`, /^5\s%$/u);
  await says(page, `${BENCH} [data-alarm="low-battery"]`, /sounds/);
  assert.equal(await page.evaluate(() => document.activeElement?.getAttribute("aria-disabled")), "true");
  const small = await page.$$eval(`${BENCH} button, ${BENCH} .fan-choice, ${BENCH} .fan-range, ${BENCH} summary`, (all) => all
    .map((each) => ({ each, box: each.getBoundingClientRect() })).filter(({ box }) => box.height < 55.5 || box.width < 55.5)
    .map(({ each, box }) => `${each.className} ${box.width} x ${box.height}`));
  assert.deepEqual(small, []);
});

test("on a phone nothing runs over the edge, and the readings stay in sight at the last control", async () => {
  await open(page, folder(), `lesson-${LESSON}`);
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  const last = await seen(page, `${control("charge")} input[type=range]`);
  await last.evaluate((input) => input.scrollIntoView({ block: "center" }));
  const top = await page.$eval(reading("flow"), (number) => number.getBoundingClientRect().top);
  assert.ok(top >= 0 && top < PHONE.height / 2, `the flow stands at ${top}`);
});

test("where less motion is asked for, readings jump and nothing moves on its own", async () => {
  await page.emulateMediaFeatures([{ name: "prefers-reduced-motion", value: "reduce" }]);
  await open(page, folder(), `lesson-${LESSON}`);
  const blades = () => page.$eval(`${BENCH} .fan-blades`, (each) => each.getAttribute("transform"));
  const before = await blades();
  await page.focus(`${control("load")} input[type=range]`);
  await page.keyboard.press("End");
  assert.equal(await words(page, reading("flow")), "167");
  await new Promise((done) => setTimeout(done, 400));
  assert.equal(await blades(), before);
  assert.doesNotMatch(await words(page, `${BENCH} .fan-buttons`), /Hold the picture still/);
});

test("the drawing moves, and holds still when it is told to", async () => {
  await open(page, folder(), `lesson-${LESSON}`);
  const blades = () => page.$eval(`${BENCH} .fan-blades`, (each) => each.getAttribute("transform"));
  await page.$eval(BENCH, (bench) => bench.scrollIntoView());
  const first = await blades();
  await page.waitForFunction((where, was) => document.querySelector(where)?.getAttribute("transform") !== was, {}, `${BENCH} .fan-blades`, first);
  await press(page, BENCH, "Hold the picture still");
  await new Promise((done) => setTimeout(done, 100));
  const held = await blades();
  await new Promise((done) => setTimeout(done, 400));
  assert.equal(await blades(), held);
});

test("no tone is made before somebody switches sound on, and none after the alarm is over", async () => {
  await page.close();
  ({ page, wrong } = await freshPage(browser, { ...PHONE, before: () => {
    const tones = /** @type {any} */ (window).tones = /** @type {number[]} */ ([]);
    const make = AudioContext.prototype.createOscillator;
    AudioContext.prototype.createOscillator = function made() {
      const tone = make.call(this);
      queueMicrotask(() => tones.push(tone.frequency.value));
      return tone;
    };
  } }));
  await open(page, folder(), `lesson-${LESSON}`);
  const tones = () => page.evaluate(() => /** @type {any} */ (window).tones);
  await setControl(page, control("opening"), 0);
  await says(page, ALARM, /sounds/);
  await new Promise((done) => setTimeout(done, 400));
  assert.deepEqual(await tones(), []);
  await press(page, BENCH, "Alarm sound");
  await page.waitForFunction(() => /** @type {any} */ (window).tones.length >= 3);
  assert.deepEqual((await tones()).slice(0, 3), [880, 660, 880]);
  await press(page, BENCH, "Back to the start");
  await new Promise((done) => setTimeout(done, 300));
  const count = (await tones()).length;
  await new Promise((done) => setTimeout(done, 700));
  assert.equal((await tones()).length, count);
});

test("a trial moves only what it allows, and its hidden place stands nowhere on it", async () => {
  await open(page, folder(), "lesson-find-the-cause");
  assert.deepEqual(await page.$$eval(`${TRIAL} [data-control]`, (all) => all.map((each) => each.getAttribute("data-control"))), ["setting", "opening"]);
  await says(page, `${TRIAL} .fan-standing`, /Dust in the filters ?not shown/);
  assert.doesNotMatch(await words(page, `${TRIAL} .fan-tables`), /Dust/);
  assert.equal(await page.$eval(`${TRIAL} .fan-unknown-load`, (sign) => sign.getAttribute("visibility")), "visible");
  assert.equal(await page.$$eval(`${TRIAL} .fan-dust path`, (all) => all.filter((each) => each.getAttribute("visibility") !== "hidden").length), 0);
  await setControl(page, `${TRIAL} [data-control="setting"]`, 1);
  await says(page, `${TRIAL} [data-reading="flow"] .fan-number`, /^167$/);
  await page.$eval(`${TRIAL} input[value="filters"]`, (input) => /** @type {HTMLElement} */ (input).click());
  await press(page, TRIAL, "Check this answer");
  await says(page, `${TRIAL} .remark`, /^Right/);
});

test("in the check a setting keeps its places when it is left, and shows them locked with the result", async () => {
  const always = await asking("setting");
  const edition = site((path) => always.address + path);
  await beginCard(page, edition, "R. Okafor");
  let one = await beginCheck(page, edition);
  while (one.key.kind !== "setting" && one.at < one.of) {
    await press(page, ".check-run", "Next");
    await says(page, ".check-run h2", new RegExp(`Question ${one.at + 1} of`));
    one = await asked(page);
  }
  const raw = rightAnswer(one.key, one.variant);
  await says(page, ".check-run [aria-current=step]", /not answered/);
  await give(page, ASKED, one.key, raw);
  await says(page, ".check-run [aria-current=step]", /^\d+ ?answered/);
  await page.reload();
  await press(page, "[data-check-begin]", /^Go on with question/);
  await asked(page);
  assert.deepEqual(await shown(page, ASKED, "setting"), raw);
  for (let { at } = await asked(page); at > 1; at -= 1) {
    await press(page, ".check-run", "Back");
    await says(page, ".check-run h2", new RegExp(`Question ${at - 1} of`));
  }
  await answerAll(page, ({ id }) => (id === one.id ? raw : null));
  await handIn(page);
  await press(page, ".result-questions", "The questions, your answers and the reasons");
  const answered = `.result-questions [data-question="${one.id}"]`;
  assert.deepEqual(await shown(page, answered, "setting"), raw);
  await says(page, `${answered} .remark, ${answered} .tag`, /^Right/);
  assert.ok(await page.$$eval(`${answered} .bench input, ${answered} .bench button`, (all) => all.every((each) => each.matches(":disabled"))));
  await always.stop();
});

test("with scripts off the start can be read, and what each control does stands in a table", async () => {
  await page.close();
  ({ page, wrong } = await freshPage(browser, { ...PHONE, script: false }));
  await page.goto(folder().address(`lesson-${LESSON}`));
  const text = (await page.$eval(BENCH, (bench) => bench.textContent ?? "")).replace(/\s+/g, " ");
  assert.match(text, /True flow 175 L\/min/);
  assert.match(text, /Low-flow alarm silent/);
  assert.match(text, /Dust in the filters.* 100 % ?167 ?167 ?100/);
  assert.match(text, /What is simplified here/);
});

for (const scheme of ["light", "dark"]) {
  test(`axe finds nothing at rest, in alarm, opened up, and above a question, in ${scheme}`, async () => {
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    await open(page, site((path) => server.address + path), `lesson-${LESSON}`);
    assert.deepEqual(await axe(page), []);
    await setControl(page, control("opening"), 0);
    await press(page, BENCH, "The bench in tables");
    await press(page, BENCH, "What is simplified here");
    await press(page, BENCH, "Hold the picture still");
    assert.deepEqual(await axe(page), []);
    await open(page, site((path) => server.address + path), "lesson-find-the-cause");
    assert.deepEqual(await axe(page), []);
  });
}
