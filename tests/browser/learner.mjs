// A learner's hands on a page: press what is named so, answer a question of any kind, work through the check.
import assert from "node:assert/strict";
import { pause } from "./harness.mjs";
import { CHECK, rightAnswer } from "./course.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** Longer than the time within which a second tap is taken for a bounce of the glove. */
const TAP = 320;

/** Opens a leaf; in the one-file edition, without loading the document again. @param {Page} page @param {import("./course.mjs").Edition} edition @param {string} slug */
export async function open(page, edition, slug) {
  const address = edition.address(slug);
  if (edition.isOneFile && page.url().split("#")[0] === address.split("#")[0]) {
    await page.evaluate((fragment) => { location.hash = fragment; }, slug);
  } else {
    await page.goto(address);
  }
  await seen(page, leaf(slug));
  await settled(page);
}

/** Waits until every part that can be seen is set up and laid out; a learner's hand would be slower than that. @param {Page} page */
export async function settled(page) {
  await page.waitForFunction(() => [...document.querySelectorAll(".practice .question:not(.live), .foot:not(.laid-out), .plate:not(.laid-out)")].every((each) => !each.checkVisibility()));
}

/** @param {string} slug */
export const leaf = (slug) => `[data-leaf="${slug}"]`;

/** Waits until something stands on the page and can be seen. @param {Page} page @param {string} selector */
export async function seen(page, selector) {
  const element = await page.waitForSelector(selector, { visible: true, timeout: 10_000 });
  return /** @type {import("puppeteer-core").ElementHandle<Element>} */ (element);
}

/** What an element says, in one line. @param {Page} page @param {string} selector */
export async function words(page, selector) {
  await page.waitForSelector(selector, { timeout: 10_000 });
  return page.$eval(selector, (each) => (each.textContent ?? "").replace(/\s+/g, " ").trim());
}

/** Waits until an element says something like this. @param {Page} page @param {string} selector @param {RegExp} wanted */
export async function says(page, selector, wanted) {
  let last = "";
  for (const end = Date.now() + 5000; Date.now() < end; await pause(30)) {
    last = await page.evaluate((where) => [...document.querySelectorAll(where)].map((each) => each.textContent).join(" ").replace(/\s+/g, " ").trim(), selector);
    if (wanted.test(last)) return last;
  }
  return assert.match(last, wanted, `in ${selector}`);
}

/**
 * Presses the visible button, link or summary of that name.
 * @param {Page} page @param {string} within @param {string | RegExp} name the whole of what it says, or a part of it
 */
export async function press(page, within, name) {
  for (const end = Date.now() + 5000; Date.now() < end; await pause(30)) {
    const found = await named(page, within, name);
    if (!found) continue;
    // While the check runs, a click that no pointer made: what turns a page drops a tap on the same spot for a while, as a glove bounces.
    if (await found.evaluate((each) => each.closest(".check-run, .check-confirm") !== null)) await found.evaluate((each) => each.click());
    else await found.click();
    await found.dispose();
    return;
  }
  assert.fail(`nothing to press says ${name} in ${within}; there is: ${(await pressable(page, within)).join(" · ")}`);
}

/** @param {Page} page @param {string} within @param {string | RegExp} name */
export async function named(page, within, name) {
  const handle = await page.evaluateHandle((where, text, isPattern) => {
    const says = (/** @type {Element} */ each) => (each.textContent ?? "").replace(/\s+/g, " ").trim();
    return [...document.querySelectorAll(where)].flatMap((place) => [...place.querySelectorAll("button, a[href], summary")])
      .find((each) => each.checkVisibility() && (isPattern ? new RegExp(text).test(says(each)) : says(each) === text)) ?? null;
  }, within, name instanceof RegExp ? name.source : name, name instanceof RegExp);
  return /** @type {import("puppeteer-core").ElementHandle<HTMLElement> | null} */ (handle.asElement());
}

/** @param {Page} page @param {string} within */
function pressable(page, within) {
  return page.evaluate((where) => [...document.querySelectorAll(where)].flatMap((place) => [...place.querySelectorAll("button, a[href], summary")])
    .filter((each) => each.checkVisibility()).map((each) => (each.textContent ?? "").replace(/\s+/g, " ").trim()), within);
}

/** Puts a text into a field in place of what stands there. @param {Page} page @param {string} selector @param {string} text */
export async function fill(page, selector, text) {
  const field = await seen(page, selector);
  await field.click({ count: 3 });
  await field.press("Backspace");
  await field.type(text);
}

/** Begins a card in the sheet that asks whose card it is. @param {Page} page @param {string} name @param {string} [workplace] */
export async function fillCard(page, name, workplace = "Basin Lane") {
  await seen(page, "dialog[open]");
  if (!await page.$eval("dialog[open] input[name=name]", (field) => field.checkVisibility())) await press(page, "dialog[open]", "Begin a new card");
  await fill(page, "dialog[open] input[name=name]", name);
  await fill(page, "dialog[open] input[name=workplace]", workplace);
  await press(page, "dialog[open]", "Begin this card");
  await page.waitForFunction(() => !document.querySelector("dialog[open]"));
}

/** Begins a card from the route card. @param {Page} page @param {import("./course.mjs").Edition} edition @param {string} name */
export async function beginCard(page, edition, name) {
  await open(page, edition, "card");
  await press(page, `${leaf("card")} [data-cards]`, /^(Whose card\?|Another card)$/);
  await fillCard(page, name);
}

/**
 * Gives an answer as a finger would: taps rows, boxes and steps, types numbers.
 * @param {Page} page @param {string} question a selector @param {any} key @param {any} raw
 * @param {{slowly?: boolean}} [how] with slow taps on the steps of an order; otherwise without a pointer, which no glove can bounce
 */
export async function give(page, question, key, raw, { slowly = false } = {}) {
  const tap = async (/** @type {string} */ selector) => {
    const target = await page.evaluateHandle((where) => {
      const control = document.querySelector(where);
      return control?.closest("label") ?? control;
    }, `${question} ${selector}`);
    const element = target.asElement();
    assert.ok(element, `${question} has no ${selector}`);
    await /** @type {import("puppeteer-core").ElementHandle<Element>} */ (element).click();
  };
  switch (key.kind) {
    case "choice":
    case "spot": return tap(`input[value="${raw}"]`);
    case "triage":
      for (const [unit, place] of Object.entries(raw)) await tap(`[data-unit="${unit}"] input[value="${place}"]`);
      return;
    case "choices": {
      const now = await shown(page, question, "choices");
      for (const id of key.options) if (now.includes(id) !== raw.includes(id)) await tap(`input[value="${id}"]`);
      return;
    }
    case "order":
      // What was placed before is taken out first, the last one first.
      for (const step of [...(await shown(page, question, "order")).reverse(), ...raw]) {
        if (slowly) {
          await pause(TAP);
          await tap(`[data-step="${step}"] button`);
        } else {
          // A click that no pointer made: neither a bounce, nor a key that lands elsewhere while the page is busy.
          await page.$eval(`${question} [data-step="${step}"] button`, (button) => /** @type {HTMLElement} */ (button).click());
        }
      }
      return;
    case "match":
      for (const [item, answer] of Object.entries(raw)) await tap(`[data-item="${item}"] input[value="${answer}"]`);
      return;
    case "number":
      await fill(page, `${question} input[name=value]`, raw.value);
      if (raw.unit && await page.$(`${question} input[name=unit]`)) await tap(`input[name=unit][value="${raw.unit}"]`);
      return;
    case "setting":
      for (const [control, place] of Object.entries(raw)) await setControl(page, `${question} [data-control="${control}"]`, place);
      return;
    case "drill":
      // A click that no pointer made, which no glove can bounce.
      for (const selector of [".drill-begin > .button", ...raw.map((/** @type {string} */ deed) => `[data-do="${deed}"]`)]) {
        await page.$eval(`${question} ${selector}`, (button) => /** @type {HTMLElement} */ (button).click());
      }
      return;
    default: throw new Error(`no hand is known for the kind ${key.kind}`);
  }
}

/** Moves one control of a bench to a place, with the keys that a slider and a row of choices understand. @param {Page} page @param {string} control a selector @param {number} place */
export async function setControl(page, control, place) {
  const choice = await page.$(`${control} input[type=radio][value="${place}"]`);
  if (choice) {
    await page.$eval(`${control} input[value="${place}"]`, (input) => /** @type {HTMLElement} */ (input.closest("label")).click());
    return;
  }
  const range = await seen(page, `${control} input[type=range]`);
  await range.focus();
  // From the nearer end, as a hand on the keyboard would.
  await page.keyboard.press("Home");
  for (let step = 0; step < place; step += 1) await page.keyboard.press("ArrowRight");
  // Where it stood at its end already, pressing Home has changed nothing.
  if (place === 0) { await page.keyboard.press("ArrowRight"); await page.keyboard.press("ArrowLeft"); }
}

/** The button that begins a practice question anew. */
export const AGAIN = /^(Try again|Go through it again)$/;

/** Gives an answer in practice and has it checked; a drill is checked at its end. @param {Page} page @param {string} question @param {any} key @param {any} raw @param {{slowly?: boolean}} [how] */
export async function answerPractice(page, question, key, raw, how) {
  await give(page, question, key, raw, how);
  if (key.kind !== "drill") await press(page, question, "Check this answer");
}

/** The answer that stands in a question on the page, in the shape of a raw answer. @param {Page} page @param {string} question @param {string} kind */
export function shown(page, question, kind) {
  return page.$eval(question, (section, kindOf) => {
    const chosen = [...section.querySelectorAll("input:checked")].filter((input) => !input.closest(".bench")).map((input) => /** @type {HTMLInputElement} */ (input));
    switch (kindOf) {
      case "choice":
      case "spot": return chosen[0]?.value ?? null;
      case "triage": return Object.fromEntries(chosen.map((input) => [input.closest("[data-unit]")?.getAttribute("data-unit"), input.value]));
      case "choices": return chosen.map((input) => input.value);
      // The check says of a drill only that it is done.
      case "drill": return section.querySelector(".drill-done") !== null;
      case "setting": return Object.fromEntries([...section.querySelectorAll(".bench [data-control]")].map((control) =>
        [control.getAttribute("data-control"), Number(/** @type {HTMLInputElement} */ (control.querySelector("input[type=range], input:checked")).value)]));
      case "order": return [...section.querySelectorAll("[data-step]")].filter((step) => step.querySelector("button[aria-pressed=true]")).map((step) => step.getAttribute("data-step"));
      case "match": return Object.fromEntries(chosen.map((input) => [input.closest("[data-item]")?.getAttribute("data-item"), input.value]));
      default: return { value: /** @type {HTMLInputElement} */ (section.querySelector("input[name=value]")).value, unit: chosen[0]?.value ?? "" };
    }
  }, kind);
}

// On the page of the check, in the one file, and on the page of a sitting alike.
const RUN = ".check-run";
/** The question of the check that is open. */
export const ASKED = `${RUN} .question`;

/** Which question is open: its id, variant, key and place from 1. @param {Page} page */
export async function asked(page) {
  await seen(page, ASKED);
  const { id, variant } = await page.$eval(ASKED, (section) => ({ id: section.getAttribute("data-question") ?? "", variant: Number(section.getAttribute("data-variant")) }));
  const place = /Question (\d+) of (\d+)/.exec(await words(page, `${RUN} h2`));
  assert.ok(place, "the question says its place");
  return { id, variant, key: CHECK.keys[id], at: Number(place[1]), of: Number(place[2]) };
}

/** Begins or takes up the check of the card in hand. @param {Page} page @param {import("./course.mjs").Edition} edition */
export async function beginCheck(page, edition) {
  await open(page, edition, "check");
  await press(page, `${leaf("check")} [data-check-begin]`, /^(Begin the check|Take the check again|Go on with question \d+)$/);
  return asked(page);
}

/**
 * Answers from the open question to the last, and stops before handing in. Returns what was asked, in order.
 * @param {Page} page
 * @param {(one: Awaited<ReturnType<typeof asked>>) => any} [answer] null leaves the question out; right where not told
 */
export async function answerAll(page, answer = ({ key, variant }) => rightAnswer(key, variant)) {
  const all = [];
  for (;;) {
    const one = await asked(page);
    const raw = answer(one);
    if (raw !== null) await give(page, ASKED, one.key, raw);
    all.push({ ...one, raw });
    if (one.at === one.of) {
      await press(page, RUN, "To handing in");
      await seen(page, `${leaf("check")} .check-confirm`);
      return all;
    }
    await press(page, RUN, "Next");
    await says(page, `${RUN} h2`, new RegExp(`Question ${one.at + 1} of`));
  }
}

/** @param {Page} page */
export async function handIn(page) {
  await press(page, `${leaf("check")} .check-confirm`, /^Hand in( as it is)?$/);
  await seen(page, `${leaf("check")} .check-result`);
}

/** The questions to which a must-pass fact is drawn. */
export const GATED = new Map(CHECK.plan.gates.flatMap((/** @type {any} */ gate) => gate.questions.map((/** @type {string} */ id) => [id, gate.fact])));
