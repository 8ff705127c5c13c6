// A drill, one moment at a time: by mouse, keyboard and touch, with and without a limit, in practice and in the check.
import assert from "node:assert/strict";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { CHECK, COURSE, criticalWay, dataOf, oneFile, PRACTICE, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { axe, BROWSER, freshPage, launch, pause, serve, WITHOUT_SCRIPT } from "./harness.mjs";
import { answerAll, ASKED, beginCard, beginCheck, give, handIn, leaf, open, press, says, seen, words } from "./learner.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

const { lesson, id, key } = PRACTICE.get("drill");
const QUESTION = `[data-question="${id}"]`;
const RIGHT = /** @type {string[]} */ (rightAnswer(key, 0));
const COSTLY = /** @type {string[]} */ (wrongAnswer(key, 0));
const CRITICAL = criticalWay(key);
/** The drills of the check. */
const ASKED_DRILLS = Object.entries(CHECK.keys).filter(([, one]) => one.kind === "drill").map(([name]) => name);
const DESK = leaf("check");

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
/** @type {Awaited<ReturnType<typeof freshPage>>} */
let fresh;
/** @type {Page} */
let page;
/** In place of the seconds of each moment; none where they stay as they are. */
let seconds = "";
const edition = site((path) => server.address + path);

before(async () => {
  browser = await launch();
  server = await serve(undefined, (path, body) => {
    if (!path.endsWith(".html")) return body;
    const html = seconds ? body.toString().replace(/data-seconds="\d+"/g, `data-seconds="${seconds}"`) : body.toString();
    return path.endsWith("/check.html") ? withOneDrill(html) : html;
  });
});
after(async () => {
  await browser.close();
  await server.stop();
});
beforeEach(async () => {
  seconds = "";
  fresh = await freshPage(browser);
  ({ page } = fresh);
});
afterEach(async () => {
  assert.deepEqual(fresh.wrong, []);
  await fresh.context.close();
});

/** The check with a plan that draws one drill and one other question. @param {string} html */
function withOneDrill(html) {
  const plan = JSON.stringify(CHECK.plan);
  const other = CHECK.plan.gates[0].questions[0];
  const cells = [[ASKED_DRILLS[0]], [other]].map((questions) => ({ outcome: "any", level: "apply", draw: 1, questions }));
  const known = dataOf(`${COURSE}/check.html`, "check").check.plan;
  assert.equal(JSON.stringify(known), plan);
  assert.ok(html.includes(plan), "the plan stands in the page as it was written");
  return html.replace(plan, JSON.stringify({ ...CHECK.plan, gates: [], cells }));
}

const lessonPage = () => open(page, edition, `lesson-${lesson}`);
/** @param {string} selector */
const textOf = (selector) => words(page, `${QUESTION} ${selector}`);
/** @param {string[]} deeds */
const go = (deeds) => give(page, QUESTION, key, deeds);
/** @param {string} pace */
const choosePace = (pace) => page.$eval(`${QUESTION} .pace [value="${pace}"]`, (input) => /** @type {HTMLElement} */ (input).click());

test("the right way is told deed by deed, and is right at its end", async () => {
  await lessonPage();
  await go(RIGHT.slice(0, 1));
  const deed = await textOf(`.drill-moments [data-deed="${RIGHT[0]}"] .deed-text`);
  assert.equal(await textOf(".way-deed"), deed);
  const told = await page.$eval(`${QUESTION} .answer [data-deed="${RIGHT[0]}"] .reason`, (each) => (each.textContent ?? "").replace(/\s+/g, " ").trim());
  assert.equal(await textOf(".way-told"), told);
  await says(page, `${QUESTION} [role=status].unseen`, new RegExp(told.slice(0, 20).replace(/[.*+?^${}()|[\]\\]/g, "\\$&")));
  for (const next of RIGHT.slice(1)) await page.$eval(`${QUESTION} [data-do="${next}"]`, (button) => /** @type {HTMLElement} */ (button).click());
  await says(page, `${QUESTION} .remark`, /^Right/);
  assert.equal(await textOf(".drill-marks"), "100 % of the mark");
  assert.equal(await page.$$eval(`${QUESTION} .way-step`, (all) => all.length), RIGHT.length);
});

test("after each deed the focus is on the moment that follows", async () => {
  await lessonPage();
  await go([]);
  for (const deed of RIGHT.slice(0, -1)) {
    assert.ok(await page.$eval(`${QUESTION} .moment-now`, (each) => each === document.activeElement));
    await page.$eval(`${QUESTION} [data-do="${deed}"]`, (button) => /** @type {HTMLElement} */ (button).click());
  }
  await page.$eval(`${QUESTION} [data-do="${RIGHT.at(-1)}"]`, (button) => /** @type {HTMLElement} */ (button).click());
  assert.ok(await page.$eval(`${QUESTION} .tag`, (each) => each === document.activeElement), "at the end it is on what is said");
});

test("what a deed costs is told at the end, and it can be gone through again", async () => {
  await lessonPage();
  await go(COSTLY);
  await says(page, `${QUESTION} .remark`, /^Not yet · [\d.]+\s% of the mark/);
  const costs = await page.$$eval(`${QUESTION} .way-cost`, (all) => all.map((each) => 10 * Number(/[\d.]+/.exec(each.textContent ?? "")?.[0])));
  const [, mark] = /· ([\d.]+)\s%/.exec(await textOf(".tag-label")) ?? [];
  assert.equal(10 * Number(mark), Math.max(0, Object.values(key.ends).reduce((a, b) => Math.max(a, b)) - costs.reduce((a, b) => a + b, 0)));
  await press(page, QUESTION, "Go through it again");
  await press(page, QUESTION, "Begin");
  await go1(RIGHT);
  await says(page, `${QUESTION} .remark`, /^Right/);
});

/** Goes on from a drill that is begun. @param {string[]} deeds */
async function go1(deeds) {
  for (const deed of deeds) await page.$eval(`${QUESTION} [data-do="${deed}"]`, (button) => /** @type {HTMLElement} */ (button).click());
}

test("a critical error ends it, and what it does to people is said plainly", async () => {
  await lessonPage();
  await go(CRITICAL);
  await says(page, `${QUESTION} .remark`, /^Not yet · critical error/);
  const critical = await page.$eval(`${QUESTION} .answer [data-critical][data-deed="${CRITICAL.at(-1)}"] .reason`, (each) => (each.textContent ?? "").trim());
  assert.equal(await textOf(".critical-words"), critical);
  assert.equal(await textOf(".way-step:last-child .way-cost"), "Critical");
  assert.equal(await page.$$eval(`${QUESTION} .deed`, (all) => all.length), 0);
});

test("before the deed is done nothing on the screen tells what it leads to", async () => {
  await lessonPage();
  await go([]);
  const seenWords = await page.$eval(QUESTION, (each) => /** @type {HTMLElement} */ (each).innerText);
  const hidden = await page.$$eval(`${QUESTION} .answer .reason`, (all) => all.map((each) => (each.textContent ?? "").trim()));
  for (const one of hidden) assert.ok(!seenWords.includes(one), one);
});

test("the keyboard alone goes through it", async () => {
  await lessonPage();
  await page.focus(`${QUESTION} .drill-begin > .button`);
  await page.keyboard.press("Enter");
  for (const deed of RIGHT) {
    for (let tabs = 0; tabs < 8 && !await focusedOn(deed); tabs += 1) await page.keyboard.press("Tab");
    assert.ok(await focusedOn(deed), `${deed} is reached with Tab`);
    await page.keyboard.press("Enter");
  }
  await says(page, `${QUESTION} .remark`, /^Right/);
});

/** @param {string} deed */
const focusedOn = (deed) => page.evaluate((wanted) => document.activeElement?.getAttribute("data-do") === wanted, deed);

test("a second tap that comes too soon is a bounce, and does nothing", async () => {
  await lessonPage();
  await go([]);
  // Two taps within one task of the page, so that no slow machine spreads them.
  await page.$eval(QUESTION, (section, deed) => {
    const tap = (/** @type {string} */ selector) => section.querySelector(selector)?.dispatchEvent(new MouseEvent("click", { bubbles: true, detail: 1 }));
    tap(`[data-do="${deed}"]`);
    tap(".deed");
  }, RIGHT[0]);
  assert.equal(await page.$$eval(`${QUESTION} .way-step`, (all) => all.length), 1);
  await pause(450);
  await page.click(`${QUESTION} .deed`);
  await page.waitForFunction((question) => document.querySelectorAll(`${question} .way-step`).length === 2, {}, QUESTION);
});

test("on a phone a glove hits every deed, and nothing scrolls sideways", async () => {
  await page.setViewport({ width: 390, height: 844, hasTouch: BROWSER === "chromium", isMobile: false });
  await lessonPage();
  for (const deeds of [[], RIGHT.slice(0, 2)]) {
    if (deeds.length > 0) await go1(deeds);
    else await go(deeds);
    const boxes = await page.$$eval(`${QUESTION} .deed`, (all) => all.map((each) => { const { top, bottom, width } = each.getBoundingClientRect(); return { top, bottom, width }; }));
    for (const [at, box] of boxes.entries()) {
      assert.ok(box.bottom - box.top >= 56 && box.width >= 240, `deed ${at}`);
      if (at > 0) assert.ok(box.top - boxes[at - 1].bottom >= 7.9, `above deed ${at}`);
    }
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  }
});

test("a tap is enough for a deed", { skip: BROWSER === "firefox" && "touch is not emulated there" }, async () => {
  await page.setViewport({ width: 390, height: 844, hasTouch: true });
  await lessonPage();
  await page.tap(`${QUESTION} .drill-begin > .button`);
  await page.tap(`${QUESTION} [data-do="${RIGHT[0]}"]`);
  await seen(page, `${QUESTION} .way-step`);
});

test("when time is up the late deed happens, and that is said", async () => {
  seconds = "1";
  await lessonPage();
  await go([]);
  await seen(page, `${QUESTION} .clock`);
  await says(page, `${QUESTION} .way-late, ${QUESTION} .drill-over`, /Time was up/);
  const late = await page.$eval(`${QUESTION} [data-moment="${key.start}"]`, (each) => /** @type {HTMLElement} */ (each).dataset.late ?? "");
  await says(page, `${QUESTION} [role=status].unseen`, /^Time is up\. This happens: /);
  assert.ok((await textOf(".way-deed")).endsWith(await textOf(`.drill-moments [data-deed="${late}"] .deed-text`)));
});

test("slower is three times as long, and is remembered on the device", async () => {
  seconds = "20";
  await lessonPage();
  await choosePace("slower");
  await page.reload();
  await seen(page, `${QUESTION} .pace`);
  assert.equal(await page.$eval(`${QUESTION} .pace :checked`, (input) => /** @type {HTMLInputElement} */ (input).value), "slower");
  await go([]);
  assert.match(await textOf(".clock-words"), /^(60|59) seconds left$/);
});

test("without a limit there is no clock and nothing happens by itself", async () => {
  seconds = "1";
  await lessonPage();
  await choosePace("none");
  await go([]);
  await pause(1500);
  assert.equal(await page.$(`${QUESTION} .clock`), null);
  assert.equal(await page.$(`${QUESTION} .way-step`), null);
});

test("whoever has asked for less motion has no limit unless they choose one", { skip: BROWSER === "firefox" && "the preference is not emulated there" }, async () => {
  await page.emulateMediaFeatures([{ name: "prefers-reduced-motion", value: "reduce" }]);
  await lessonPage();
  await seen(page, `${QUESTION} .pace`);
  assert.equal(await page.$eval(`${QUESTION} .pace :checked`, (input) => /** @type {HTMLInputElement} */ (input).value), "none");
});

test("time stands still in a leaf that is not seen", async () => {
  seconds = "1";
  await lessonPage();
  await go([]);
  await page.$eval(leaf(`lesson-${lesson}`), (each) => each.setAttribute("hidden", ""));
  await pause(1600);
  assert.equal(await page.$(`${QUESTION} .way-step`), null);
});

test("the one-file edition goes through it as well", async () => {
  await open(page, oneFile(), `lesson-${lesson}`);
  await go(RIGHT);
  await says(page, `${QUESTION} .remark`, /^Right/);
});

test("on paper stands the whole drill as a text that branches, however far it has been gone through", { skip: BROWSER === "firefox" && "paper is not emulated there" }, async () => {
  await lessonPage();
  await go(RIGHT.slice(0, 1));
  await page.emulateMediaType("print");
  const shown = await page.$eval(QUESTION, (each) => ["drill-moments", "drill-stage"].map((name) => /** @type {Element} */ (each.querySelector(`.${name}`)).checkVisibility()));
  assert.deepEqual(shown, [true, false]);
});

test("with scripts off every moment can be read, and every deed leads to a place that is there", { skip: WITHOUT_SCRIPT }, async () => {
  const bare = await freshPage(browser, { script: false });
  await bare.page.goto(edition.address(`lesson-${lesson}`));
  const { moments, lost } = await bare.page.$eval(QUESTION, (each) => ({
    moments: [...each.querySelectorAll(".drill-moments > li")].filter((one) => one.checkVisibility()).length,
    lost: [...each.querySelectorAll(".go-to")].filter((link) => !document.querySelector(link.getAttribute("href") ?? "")).length,
  }));
  assert.ok(moments >= Object.keys(key.moments).length + Object.keys(key.ends).length);
  assert.equal(lost, 0);
  await press(bare.page, QUESTION, "Answer and reasons");
  assert.ok(await bare.page.$eval(`${QUESTION} .answer [data-critical] .reason`, (each) => each.checkVisibility()));
  await bare.context.close();
});

test("in the check it has no limit, is gone through once, and afterwards says only that it is done", async () => {
  await beginCard(page, edition, "Ada Winch");
  await beginCheck(page, edition);
  const drill = await toTheDrill();
  await seen(page, `${ASKED} .pace`);
  assert.equal(await page.$eval(`${ASKED} .pace :checked`, (input) => /** @type {HTMLInputElement} */ (input).value), "none");
  const way = criticalWay(drill);
  await give(page, ASKED, drill, way);
  await says(page, `${ASKED} .drill-done`, /^Done\./);
  assert.ok(await page.$eval(`${ASKED} .drill-done`, (each) => each === document.activeElement));
  const onlyDone = async () => {
    assert.equal(await page.$(`${ASKED} .deed`), null);
    assert.equal(await page.$(`${ASKED} .way`), null);
    assert.ok(await page.$eval(`${DESK} [aria-current=step]`, (box) => box.getAttribute("data-standing") === "answered"));
  };
  await onlyDone();
  await page.reload();
  await press(page, `${DESK} [data-check-begin]`, /^Go on with question/);
  await onlyDone();
  const back = await named();
  await press(page, ASKED, back === "Back" ? "Back" : "Next");
  await press(page, ASKED, back === "Back" ? "Next" : "Back");
  await onlyDone();
  await finish();
  assert.equal(await words(page, `${DESK} .result-title`), "Knowledge check: not yet passed");
  await says(page, `${DESK} .result-head`, /A critical error in a drill fails the check, whatever the marks\./);
  await says(page, `${DESK} .line-deed`, /\S/);
  const kept = JSON.parse(await page.evaluate(() => localStorage.getItem("journeybook.cards") ?? ""));
  const { attempt } = kept.cards[kept.current].courses[COURSE].checks[0];
  assert.deepEqual(JSON.parse(attempt).answers[ASKED_DRILLS[0]], way);
  await press(page, `${DESK} .result-questions`, "The questions, your answers and the reasons");
  const told = await page.$$eval(`${DESK} .result-questions [data-kind="drill"] .way-step`, (all) => all.length);
  assert.equal(told, way.length);
});

test("a drill that is left on its way is gone on with where it was left", async () => {
  await beginCard(page, edition, "Ola Brynn");
  await beginCheck(page, edition);
  const drill = await toTheDrill();
  const way = /** @type {string[]} */ (rightAnswer(drill, 0));
  await give(page, ASKED, drill, way.slice(0, 2));
  await page.reload();
  await press(page, `${DESK} [data-check-begin]`, /^Go on with question/);
  assert.equal(await page.$eval(`${DESK} [aria-current=step]`, (box) => box.getAttribute("data-standing")), "begun");
  assert.equal(await page.$$eval(`${ASKED} .way-step`, (all) => all.length), 2);
  await press(page, ASKED, "Go on with it");
  for (const deed of way.slice(2)) await page.$eval(`${ASKED} [data-do="${deed}"]`, (button) => /** @type {HTMLElement} */ (button).click());
  await seen(page, `${ASKED} .drill-done`);
  await finish();
  assert.equal(await words(page, `${DESK} .result-title`), "Knowledge check passed");
});

/** Turns to the drill of the check, and gives its key. */
async function toTheDrill() {
  for (let at = 0; at < 2; at += 1) {
    const name = await page.$eval(ASKED, (section) => section.getAttribute("data-question") ?? "");
    if (name === ASKED_DRILLS[0]) return CHECK.keys[name];
    await press(page, ASKED, "Next");
  }
  throw new Error("the check asks no drill");
}

/** What leads from the open question to the other one. */
async function named() {
  return page.$$eval(`${ASKED} .question-foot button`, (all) => all.some((each) => each.textContent === "Back") ? "Back" : "Next");
}

/** Answers the other question rightly and hands in. */
async function finish() {
  if (await named() === "Back") await press(page, ASKED, "Back");
  await answerAll(page, ({ key: one, variant }) => one.kind === "drill" ? null : rightAnswer(one, variant));
  await handIn(page);
}

test("axe finds nothing at any point, in light and dark", { skip: BROWSER === "firefox" && "looked at in Chromium" }, async () => {
  const look = async (/** @type {string} */ where) => {
    assert.deepEqual(await axe(page), [], where);
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "dark" }]);
    assert.deepEqual(await axe(page, ["color-contrast", "link-in-text-block"]), [], `${where}, in the dark`);
    await page.emulateMediaFeatures([]);
  };
  seconds = "90";
  await lessonPage();
  await look("before it begins");
  await go(RIGHT.slice(0, 2));
  await seen(page, `${QUESTION} .clock`);
  await look("on its way");
  await go1(RIGHT.slice(2));
  await look("right");
  await press(page, QUESTION, "Answer and reasons");
  await look("with its answers");
  for (const way of [COSTLY, CRITICAL]) {
    await press(page, QUESTION, "Go through it again");
    await go(way);
    await look(way === COSTLY ? "costly" : "critical");
  }
});
