// What the check keeps and what it refuses: a reload, an answer changed, a fact missed, other questions next time, a changed course.
import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { after, before, beforeEach, afterEach, test } from "node:test";
import { CHECK, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { freshPage, launch, saved, serve, SITE } from "./harness.mjs";
import { answerAll, ASKED, asked, beginCard, beginCheck, GATED, give, handIn, leaf, open, press, says, seen, shown, words } from "./learner.mjs";

const DESK = leaf("check");
/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
/** What is added to the digest that the served check page carries. */
let laterDigest = "";
/** @type {Awaited<ReturnType<typeof freshPage>>} */
let fresh;
const edition = site((path) => server.address + path);

before(async () => {
  browser = await launch();
  server = await serve(SITE, (path, body) => laterDigest && path.endsWith("/check.html") ? body.toString("utf8").replaceAll(CHECK.digest, laterDigest) : body);
});
after(async () => {
  await browser.close();
  await server.stop();
});
beforeEach(async () => {
  laterDigest = "";
  fresh = await freshPage(browser);
  await beginCard(fresh.page, edition, "Ola Brynn");
});
afterEach(async () => {
  assert.deepEqual(fresh.wrong, []);
  await fresh.context.close();
});

test("a reload in the middle of a check keeps every answer and the place", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  const given = await answerSome(page, 4);
  const before = await asked(page);
  await page.reload();
  await says(page, DESK, new RegExp(`Begun: 4 of ${before.of} answered`));
  await press(page, DESK, "Go on with question 5");
  assert.deepEqual(await asked(page), before);
  for (const { key, raw, id } of given.reverse()) {
    await press(page, ASKED, "Back");
    assert.equal((await asked(page)).id, id);
    const now = await shown(page, ASKED, key.kind);
    assert.deepEqual(comparable(key, now), comparable(key, raw), `question ${id}`);
  }
});

test("an order that is half placed is half placed after a reload", async () => {
  // Which kinds a form holds is chance: other learners begin until one is asked to put something in order.
  let order = null;
  for (let learners = 1; !order; learners += 1) {
    assert.ok(learners <= 12, "no learner was asked to put anything in order");
    if (learners > 1) {
      await fresh.context.close();
      fresh = await freshPage(browser);
      await beginCard(fresh.page, edition, "Ola Brynn");
    }
    await beginCheck(fresh.page, edition);
    order = await goToKind(fresh.page, "order");
  }
  const { page } = fresh;
  const some = rightAnswer(order.key, 0).slice(0, 2);
  await give(page, ASKED, order.key, some);
  await page.reload();
  await press(page, DESK, `Go on with question ${order.at}`);
  assert.deepEqual(await shown(page, ASKED, "order"), some);
  assert.equal(await page.$eval(`${DESK} .check-overview [aria-current=step]`, (box) => box.getAttribute("data-standing")), "begun");
});

test("going back changes an answer, and the changed one counts", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  // A drill is gone through once; the first other question is the one that is changed.
  let changed = 0;
  const form = await answerAll(page, ({ key, variant, at }) => {
    if (!changed && key.kind !== "drill") changed = at;
    return at === changed ? wrongAnswer(key, variant) : rightAnswer(key, variant);
  });
  const first = form[changed - 1];
  await press(page, DESK, "Back to the questions");
  for (let at = form.length; at > changed; at -= 1) await press(page, ASKED, "Back");
  assert.equal((await asked(page)).id, first.id);
  await give(page, ASKED, first.key, rightAnswer(first.key, first.variant));
  await press(page, `${DESK} .check-overview`, "Hand in");
  await handIn(page);
  await says(page, `${DESK} .result-marks`, new RegExp(`^${first.of} of ${first.of} marks`));
});

test("a must-pass question that is wrong means not yet passed, names the fact, and leads back to lessons that exist", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  const form = await answerAll(page, ({ id, key, variant }) => GATED.get(id) === CHECK.plan.gates[0].fact ? wrongAnswer(key, variant) : rightAnswer(key, variant));
  assert.equal(form.filter(({ id }) => GATED.get(id) === CHECK.plan.gates[0].fact).length, 1);
  await handIn(page);
  assert.equal(await words(page, `${DESK} .result-title`), "Knowledge check: not yet passed");
  const marks = Number(/^(\d+) of/.exec(await words(page, `${DESK} .result-marks`))?.[1]);
  assert.ok(marks * 100 >= CHECK.percent * form.length, "the marks alone would have passed");
  const missed = await page.$$eval(`${DESK} .check-result .line-hold`, (lines) => lines.filter((line) => !line.querySelector(".line-again")).map((line) => line.querySelector(".line-text")?.textContent?.trim()));
  assert.deepEqual(missed, [await words(page, `${DESK} [data-check-parts] [data-fact="${CHECK.plan.gates[0].fact}"]`)]);
  assert.equal(await page.$(`${DESK} .certificate`), null);
  const links = await page.$$eval(`${DESK} .line-again a`, (all) => all.map((link) => new URL(/** @type {HTMLAnchorElement} */ (link).href).pathname));
  assert.ok(links.length > 0);
  for (const link of links) assert.ok(existsSync(join(SITE, link)), link);
  await page.click(`${DESK} .line-again a`);
  await seen(page, "[data-read-end]");
});

test("a check taken again draws other questions as far as the bank has others", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  await answerAll(page, () => null);
  const first = await formOf(page);
  await handIn(page);
  await press(page, `${DESK} .check-result`, "Take the check again");
  await asked(page);
  const second = await formOf(page);
  assert.equal(second.length, first.length);
  for (const { questions, draw = 1 } of [...CHECK.plan.gates, ...CHECK.plan.cells]) {
    const again = questions.filter((/** @type {string} */ id) => first.includes(id) && second.includes(id)).length;
    assert.equal(again, Math.max(0, 2 * draw - questions.length), `drawn again among ${questions.join(", ")}`);
  }
});

test("a course that was changed in mid-check is never marked: the answers go to a file and the check starts again", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  const given = await answerSome(page, 2);
  const form = await formOf(page);
  laterDigest = "f".repeat(64);
  await page.reload();
  await says(page, DESK, /The course was changed since you began/);
  const file = await saved(page, () => press(page, DESK, "Save what was answered to a file"));
  assert.deepEqual((await sessionOf(page)).form.map((/** @type {any} */ line) => line.q), form, "nothing is thrown away before the file is there");
  await press(page, DESK, "The file is there: start the check again");
  const attempt = JSON.parse(file.bytes.toString("utf8"));
  assert.equal(attempt.digest, CHECK.digest);
  assert.deepEqual(Object.keys(attempt.answers).sort(), given.map(({ id }) => id).sort());
  assert.deepEqual(attempt.form.map((/** @type {any} */ line) => line.q), form);
  assert.equal((await asked(page)).at, 1);
  const session = await sessionOf(page);
  assert.equal(session.digest, laterDigest);
  assert.deepEqual(session.answers, {});
});

test("what another window answered meanwhile is kept beside what is answered here", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  await answerSome(page, 1);
  const { form } = await sessionOf(page);
  const elsewhere = form[form.length - 1].q;
  await inAnotherWindow(page, CHECK.course, "answered", elsewhere);
  const here = await asked(page);
  await give(page, ASKED, here.key, rightAnswer(here.key, here.variant));
  const { answers } = await sessionOf(page);
  assert.deepEqual(Object.keys(answers).sort(), [form[0].q, here.id, elsewhere].sort());
});

test("a check that another window handed in is over in this one too", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  await inAnotherWindow(page, CHECK.course, "over", "");
  const here = await asked(page);
  // One touch: the first is enough to find out that the check is over, and there is nothing left for a second.
  await give(page, ASKED, here.key, begun(rightAnswer(here.key, here.variant)));
  await says(page, DESK, /Begin the check/);
  assert.equal(await sessionOf(page), null);
});

test("a card that says passed is put right by the check page, which marks its answers again", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  await answerAll(page, () => null);
  await handIn(page);
  await page.evaluate((course) => {
    const box = JSON.parse(localStorage.getItem("journeybook.cards") ?? "{}");
    box.cards[box.current].courses[course].checks[0].passed = true;
    localStorage.setItem("journeybook.cards", JSON.stringify(box));
  }, CHECK.course);
  await open(page, edition, "card");
  await says(page, `${leaf("card")} td[data-check]`, /^Passed.*self-recorded, as this card says$/);
  await page.click(`${leaf("card")} .operation-check .work-title`);
  await says(page, `${DESK} .check-earlier`, /not yet passed/);
  await open(page, edition, "card");
  await says(page, `${leaf("card")} td[data-check]`, /^Not yet.*self-recorded, as this card says$/);
});

test("handing in with questions unanswered names them first, and each leads back to its question", async () => {
  const { page } = fresh;
  await beginCheck(page, edition);
  const form = await answerAll(page, ({ at, key, variant }) => at === 2 || at === 5 ? null : rightAnswer(key, variant));
  const list = await page.$$eval(`${DESK} .check-open button`, (all) => all.map((each) => each.textContent));
  assert.deepEqual(list, ["Question 2: not answered", "Question 5: not answered"]);
  await press(page, `${DESK} .check-open`, "Question 5: not answered");
  assert.equal((await asked(page)).at, 5);
  await press(page, `${DESK} .check-overview`, "Hand in");
  await press(page, `${DESK} .check-confirm`, "Hand in as it is");
  await says(page, `${DESK} .result-marks`, new RegExp(`^${form.length - 2} of ${form.length} marks`));
});

/** Answers the open question and those after it, rightly. @param {import("puppeteer-core").Page} page @param {number} count */
async function answerSome(page, count) {
  const given = [];
  for (let done = 0; done < count; done += 1) {
    const one = await asked(page);
    const raw = rightAnswer(one.key, one.variant);
    await give(page, ASKED, one.key, raw);
    given.push({ ...one, raw });
    await press(page, ASKED, "Next");
    await says(page, `${DESK} .check-run h2`, new RegExp(`Question ${one.at + 1} of`));
  }
  return given;
}

/** Turns pages until a question of that kind is open. @param {import("puppeteer-core").Page} page @param {string} kind */
async function goToKind(page, kind) {
  for (;;) {
    const one = await asked(page);
    if (one.key.kind === kind) return one;
    if (one.at === one.of) return null;
    await press(page, ASKED, "Next");
    await says(page, `${DESK} .check-run h2`, new RegExp(`Question ${one.at + 1} of`));
  }
}

/** As much of an answer as one touch gives. @param {any} raw */
function begun(raw) {
  if (Array.isArray(raw)) return raw.slice(0, 1);
  if (typeof raw !== "object") return raw;
  return "value" in raw ? { value: raw.value, unit: "" } : Object.fromEntries(Object.entries(raw).slice(0, 1));
}

/** The unit of a number is shown only where it can be chosen. @param {any} key @param {any} raw */
function comparable(key, raw) {
  if (key.kind === "choices") return [...raw].sort();
  if (key.kind === "drill") return Boolean(raw);
  return key.kind === "number" ? raw.value : raw;
}

/**
 * Changes the card as another window would that this one has not yet heard of.
 * @param {import("puppeteer-core").Page} page @param {string} course @param {"answered" | "over"} what @param {string} question
 */
async function inAnotherWindow(page, course, what, question) {
  await page.evaluate((course, what, question) => {
    const box = JSON.parse(localStorage.getItem("journeybook.cards") ?? "{}");
    const entry = box.cards[box.current].courses[course];
    if (what === "over") entry.session = null;
    else entry.session.answers[question] = "given elsewhere";
    localStorage.setItem("journeybook.cards", JSON.stringify(box));
  }, course, what, question);
}

/** @param {import("puppeteer-core").Page} page */
async function sessionOf(page) {
  const box = JSON.parse(await page.evaluate(() => localStorage.getItem("journeybook.cards") ?? "{}"));
  return box.cards[box.current].courses[CHECK.course].session;
}

/** @param {import("puppeteer-core").Page} page @returns {Promise<string[]>} */
async function formOf(page) {
  return (await sessionOf(page)).form.map((/** @type {any} */ line) => line.q);
}
