// Putting a unit together on the page: by mouse, keyboard, finger; in the list and in the drawing; from a server and as one file.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { BENCHES, folder, LESSONS, oneFile, site } from "./course.mjs";
import { axe, freshPage, launch, pause, serve, SITE, WITHOUT_SCRIPT } from "./harness.mjs";
import { open, press, says, seen, words } from "./learner.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** Longer than the time within which a second tap is taken for a bounce of the glove. */
const TAP = 320;
const BENCH = ".bench-assembly";
/** A lesson with an assembly bench, and what its script knows. */
const [LESSON, DATA] = [...LESSONS].flatMap(([id, path]) => Object.entries(BENCHES)
  .filter(([bench, { kind }]) => kind === "assembly" && readFileSync(join(SITE, path), "utf8").includes(`data-bench="${bench}"`))
  .map(([, data]) => /** @type {[string, any]} */ ([id, data])))[0];
const KEY = DATA.key;
/** One right order: always the first step that may come. @type {string[]} */
const ORDER = [];
while (ORDER.length < KEY.steps.length) {
  ORDER.push(KEY.steps.find((/** @type {string} */ step) => !ORDER.includes(step)
    && KEY.before.every((/** @type {string[]} */ [first, then]) => then !== step || ORDER.includes(first))));
}
const LAST = ORDER[ORDER.length - 1];
const PART = ORDER.find((step) => step in DATA.moves) ?? "";
const UP_TO_PART = ORDER.slice(0, ORDER.indexOf(PART));

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
/** @type {Page} */
let page;
/** @type {string[]} */
let wrong;

before(async () => { [browser, server] = await Promise.all([launch(), serve()]); });
after(async () => { await browser.close(); await server.stop(); });
beforeEach(async () => { ({ page, wrong } = await freshPage(browser)); });
afterEach(async () => {
  assert.deepEqual(wrong, []);
  await page.browserContext().close();
});

/** @param {import("./course.mjs").Edition} [edition] */
async function begin(edition = folder()) {
  await open(page, edition, `lesson-${LESSON}`);
  await seen(page, `${BENCH}.bench-live .assembly-step`);
}

/** @param {string} step */
const button = (step) => `${BENCH} [data-step="${step}"] button`;

/** Presses steps of the list one after the other. @param {string[]} steps */
async function put(steps) {
  for (const step of steps) {
    await page.click(button(step));
    await pause(TAP);
  }
}

/** @param {string} step */
const isInPlace = (step) => page.$eval(`${BENCH} [data-part="${step}"]`, (part) => part.classList.contains("in-place"));
const left = () => page.$$eval(`${BENCH} [data-still] button`, (all) => all.filter((each) => each.checkVisibility()).length);
const focused = () => page.evaluate(() => document.activeElement?.closest("[data-step]")?.getAttribute("data-step") ?? document.activeElement?.className);

for (const [way, edition] of /** @type {[string, () => import("./course.mjs").Edition][]} */ ([
  ["from a server", () => site((path) => server.address + path)], ["as one file", () => oneFile()],
])) {
  test(`${way}: a right order goes through to the end, and is told to be one of many`, async () => {
    await begin(edition());
    await put(ORDER);
    assert.match(await words(page, `${BENCH} .assembly-end`), /Everything is done, in a right order\. ?No step was refused\./);
    assert.match(await words(page, `${BENCH} [data-order]`), /One right order .* \d+ orders keep every rule, and each of them is as right as this one\./);
    assert.ok(await page.$eval(`${BENCH} [data-order]`, (each) => each.checkVisibility()));
    assert.equal(await page.$$eval(`${BENCH} [data-part]`, (all) => all.filter((each) => each.classList.contains("in-place")).length), ORDER.length);
  });
}

test("before the end the right order stays covered, and so do the rules", async () => {
  await begin();
  assert.equal(await page.$eval(`${BENCH} [data-order]`, (each) => each.checkVisibility()), false);
  assert.equal(await page.$eval(`${BENCH} [data-rules]`, (each) => each.hasAttribute("open")), false);
});

test("a step that comes too early is refused, with the rule and what it would lead to; nothing is put on", async () => {
  await begin();
  await put([LAST]);
  const broken = KEY.rules.findIndex((/** @type {any} */ rule) => rule.then.includes(LAST));
  const reason = await words(page, `${BENCH} [data-rule="${broken}"] .reason`);
  await says(page, `${BENCH} .assembly-remark`, /Not yet/);
  const said = await words(page, `${BENCH} .assembly-remark`);
  assert.ok(said.includes(reason), said);
  assert.match(said, /^(Critical|Too early)/);
  assert.equal(await isInPlace(LAST), false);
  assert.equal(await left(), ORDER.length);
  assert.ok((await words(page, `${BENCH} .unseen[role="status"]`)).includes(reason), "it is said to whoever cannot see it");
  assert.equal(await focused(), LAST, "the focus stays where it was");
  assert.ok(await page.$eval(`${BENCH} .assembly-remark`, (each) => {
    const { top, bottom } = each.getBoundingClientRect();
    return top < innerHeight && bottom > 0;
  }), "the reason is in sight");
});

test("where a critical rule is among those broken, it comes first", async () => {
  await begin();
  const both = KEY.steps.find((/** @type {string} */ step) => {
    const rules = KEY.rules.filter((/** @type {any} */ rule) => rule.then.includes(step));
    return rules.some((/** @type {any} */ rule) => rule.critical) && rules.some((/** @type {any} */ rule) => !rule.critical);
  });
  await put([both]);
  const first = KEY.rules.findIndex((/** @type {any} */ rule) => rule.critical && rule.then.includes(both));
  await says(page, `${BENCH} .assembly-remark`, /^Critical ?Not yet/);
  assert.equal(await words(page, `${BENCH} .broken-rule .tag-why`), await words(page, `${BENCH} [data-rule="${first}"] .reason`));
});

test("refused steps are counted to the end", async () => {
  await begin();
  await put([LAST, LAST, ...ORDER]);
  assert.match(await words(page, `${BENCH} .assembly-end`), /2 steps were refused\./);
});

test("a part tapped in the drawing moves to its place, its name goes, and it stands among what is done", async () => {
  await begin();
  await put(UP_TO_PART);
  await page.click(`${BENCH} [data-part="${PART}"]`);
  await page.waitForFunction((where) => document.querySelector(where)?.classList.contains("in-place"), {}, `${BENCH} [data-part="${PART}"]`);
  const [x, y] = DATA.moves[PART];
  assert.equal(await page.$eval(`${BENCH} [data-part="${PART}"]`, (part) => part.getAttribute("transform")), `translate(${x} ${y})`);
  assert.equal(await page.$eval(`${BENCH} [data-label="${PART}"]`, (label) => getComputedStyle(label).visibility), "hidden");
  assert.equal(await page.$$eval(`${BENCH} .assembly-done li`, (all) => all.length), UP_TO_PART.length + 1);
});

test("what is refused in the drawing is told below the drawing", async () => {
  await begin();
  await page.click(`${BENCH} [data-part="${LAST}"] text`);
  await says(page, `${BENCH} .assembly-sheet .assembly-remark`, /Not yet/);
});

test("a step without a part gets its tick", async () => {
  await begin();
  const deed = ORDER.find((step) => !(step in DATA.moves)) ?? "";
  const visible = () => page.$eval(`${BENCH} [data-tick="${deed}"]`, (tick) => getComputedStyle(tick).visibility);
  assert.equal(await visible(), "hidden");
  await put(ORDER.slice(0, ORDER.indexOf(deed) + 1));
  assert.equal(await visible(), "visible");
});

test("the keyboard alone goes through to the end; each move is said, and the focus is never lost", async () => {
  await begin();
  await page.focus(button(ORDER[0]));
  for (const [at, step] of ORDER.entries()) {
    for (let tabs = 0; await focused() !== step; tabs += 1) {
      assert.ok(tabs < 60, `${step} can be reached`);
      await page.keyboard.down("Shift");
      if (tabs < 20) await page.keyboard.press("Tab");
      await page.keyboard.up("Shift");
      if (tabs >= 20) await page.keyboard.press("Tab");
    }
    await page.keyboard.press(at % 2 ? "Enter" : " ");
    if (at < ORDER.length - 1) {
      assert.match(await words(page, `${BENCH} .unseen[role="status"]`), new RegExp(`: number ${at + 1} of ${ORDER.length}\\.$`));
      assert.notEqual(await page.evaluate(() => document.activeElement?.tagName), "BODY");
    }
  }
  assert.equal(await focused(), "assembly-end");
});

test("the last one can be taken back, and everything can start again, counted anew", async () => {
  await begin();
  await put([LAST, ...UP_TO_PART, PART]);
  await press(page, BENCH, "Take the last one back");
  assert.equal(await isInPlace(PART), false);
  assert.match(await words(page, `${BENCH} .unseen[role="status"]`), /: taken back\.$/);
  assert.ok(await page.$eval(button(PART), (each) => each.checkVisibility()));
  await press(page, BENCH, "Start again");
  assert.equal(await left(), ORDER.length);
  assert.equal(await page.$eval(`${BENCH} [data-part="${PART}"]`, (part) => part.hasAttribute("transform")), false);
  await put(ORDER);
  assert.match(await words(page, `${BENCH} .assembly-end`), /No step was refused\./);
});

test("from the end the last step can still be taken back", async () => {
  await begin();
  await put(ORDER);
  await press(page, BENCH, "Take the last one back");
  assert.equal(await left(), 1);
  assert.equal(await page.$eval(`${BENCH} [data-order]`, (each) => each.checkVisibility()), false);
});

test("a bounce of the glove does nothing", async () => {
  await begin();
  await page.click(button(ORDER[0]));
  await page.click(button(LAST));
  assert.equal(await left(), ORDER.length - 1);
  assert.equal(await page.$(`${BENCH} .assembly-remark`), null);
});

test("for whoever asked for less motion nothing moves, it is there at once", async () => {
  await page.emulateMediaFeatures([{ name: "prefers-reduced-motion", value: "reduce" }]);
  await begin();
  await put(UP_TO_PART);
  await page.click(button(PART));
  assert.equal(await page.evaluate(() => document.getAnimations().length), 0);
  assert.equal(await isInPlace(PART), true);
});

test("a finger on a phone: every button is 56 pixels high, 8 apart, and nothing scrolls sideways", async () => {
  await page.setViewport({ width: 390, height: 844, hasTouch: true, isMobile: true });
  await begin();
  const boxes = await page.$$eval(`${BENCH} button`, (all) => all.filter((each) => each.checkVisibility()).map((each) => {
    const { top, bottom, left, right } = each.getBoundingClientRect();
    return { top: top + scrollY, bottom: bottom + scrollY, left, right };
  }));
  for (const box of boxes) assert.ok(box.bottom - box.top >= 56, JSON.stringify(box));
  for (const [at, box] of boxes.entries()) {
    for (const other of boxes.slice(at + 1)) {
      const apart = Math.max(other.top - box.bottom, box.top - other.bottom, other.left - box.right, box.left - other.right);
      assert.ok(apart >= 7.9, `${JSON.stringify(box)} and ${JSON.stringify(other)}`);
    }
  }
  for (const step of [LAST, ...ORDER]) {
    await page.$eval(button(step), (each) => each.scrollIntoView({ block: "center" }));
    await page.tap(button(step));
    await pause(TAP);
  }
  assert.match(await words(page, `${BENCH} .assembly-end`), /1 step was refused\./);
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
});

test("axe finds nothing apart, refused, half way and at the end, in light and dark", async () => {
  for (const value of ["light", "dark"]) {
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value }]);
    await page.goto("about:blank");
    await begin();
    assert.deepEqual(await axe(page), [], `${value}, apart`);
    await put([LAST]);
    assert.deepEqual(await axe(page), [], `${value}, refused`);
    await put(ORDER.slice(0, 5));
    assert.deepEqual(await axe(page), [], `${value}, half way`);
    await put(ORDER.slice(5));
    assert.deepEqual(await axe(page), [], `${value}, at the end`);
    // axe asks for the style sheet, which the page's policy refuses.
    wrong.length = 0;
  }
});

test("with scripts off the drawing, the rules and one right order stand there, and no box is ticked", { skip: WITHOUT_SCRIPT }, async () => {
  const still = await freshPage(browser, { script: false });
  await still.page.goto(folder().address(`lesson-${LESSON}`));
  const shown = await still.page.$$eval(`${BENCH} svg, ${BENCH} [data-rule], ${BENCH} .assembly-sequence li, ${BENCH} [data-step]`,
    (all) => all.filter((each) => each.checkVisibility()).length);
  assert.equal(shown, 1 + KEY.rules.length + 2 * KEY.steps.length);
  assert.deepEqual(await still.page.$$eval(`${BENCH} [data-tick]`, (all) => all.filter((each) => getComputedStyle(each).visibility === "visible").length), 0);
  await still.context.close();
});

test("on paper stand the drawing, the steps, the rules and one right order, and no button of the screen", async () => {
  await begin();
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.emulateMediaType("print");
  assert.ok(await page.$eval(`${BENCH} [data-rule="0"] .reason`, (each) => each.checkVisibility()));
  assert.ok(await page.$eval(`${BENCH} .assembly-sequence`, (each) => each.checkVisibility()));
  assert.ok(await page.$eval(`${BENCH} [data-step] .assembly-name`, (each) => each.checkVisibility()));
  assert.equal(await page.$eval(`${BENCH} .assembly-foot`, (each) => each.checkVisibility()), false);
});
