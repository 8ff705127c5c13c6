// With the keyboard alone: every control is reached, shows its focus, works, and leaves the focus somewhere.
import assert from "node:assert/strict";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { PRACTICE, oneFile, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { freshPage, launch, pause, serve } from "./harness.mjs";
import { ASKED, asked, leaf, says, seen, shown, words } from "./learner.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
/** @type {Page} */
let page;
const edition = site((path) => server.address + path);

before(async () => {
  browser = await launch();
  server = await serve();
});
after(async () => {
  await browser.close();
  await server.stop();
});
beforeEach(async () => { ({ page } = await freshPage(browser)); });
afterEach(() => page.browserContext().close());

for (const [way, made] of Object.entries({ "a page": () => edition, "the one-file edition": oneFile })) {
  test(`the first Tab on ${way} is the way past the tabs, into the text`, async () => {
    await page.goto(made().address("card").replace(/#.*/, ""));
    await tab();
    assert.equal(await focused(), "Skip to the text");
    await act("Enter");
    assert.equal(await page.evaluate(() => document.activeElement?.id), "content");
    await tab();
    assert.ok(await within("main"), "the next Tab is within the text");
    assert.ok(await page.$eval(leaf("card"), (each) => each.checkVisibility()));
  });
}

for (const kind of ["choice", "choices", "order", "match", "number"]) {
  test(`a practice question of the kind ${kind} is answered wrongly, tried again and answered rightly`, async () => {
    const { lesson, id, key } = PRACTICE.get(kind);
    const question = `[data-question="${id}"]`;
    await page.goto(edition.address(`lesson-${lesson}`));
    await seen(page, `${question} .question-foot button`);
    await give(question, key, wrongAnswer(key, 0));
    await press(question, "Check this answer");
    await says(page, `${question} .remark`, /^Not yet/);
    assert.ok(await within(`${question} .remark`), "the focus goes to what is said");
    await press(question, "Try again");
    assert.ok(await within(question), "the focus goes back to the question");
    await give(question, key, rightAnswer(key, 0));
    await press(question, "Check this answer");
    await says(page, `${question} .remark`, /^Right/);
    assert.ok(await within(`${question} .remark`));
  });
}

test("a question with nothing answered asks for an answer, and the focus stays", async () => {
  const { lesson, id } = PRACTICE.get("choice");
  const question = `[data-question="${id}"]`;
  await page.goto(edition.address(`lesson-${lesson}`));
  await seen(page, `${question} .question-foot button`);
  await press(question, "Check this answer");
  await says(page, `${question} .remark[role=status]`, /Choose one first/);
  assert.ok(await within(question));
});

test("steps of an order are placed, moved, taken out and undone, and each change is said", async () => {
  const { lesson, id, key } = PRACTICE.get("order");
  const question = `[data-question="${id}"]`;
  const said = () => page.$eval(`${question} fieldset [role=status]`, (each) => each.textContent ?? "");
  await page.goto(edition.address(`lesson-${lesson}`));
  await seen(page, `${question} .question-foot button`);
  const total = key.steps.length;
  const steps = await page.$$eval(`${question} [data-step]`, (all) => all.map((each) => each.getAttribute("data-step") ?? ""));
  const name = (/** @type {string} */ step) => words(page, `${question} [data-step="${step}"] .step-text`);

  for (const [at, step] of steps.entries()) {
    await reach(`${question} [data-step="${step}"] button`);
    await act(at % 2 ? "Enter" : "Space");
    const left = total - at - 1;
    assert.equal(await said(), `${await name(step)}: number ${at + 1} of ${total}.${left > 0 ? ` Still to place: ${left}.` : ""}`);
  }

  const down = `Move down: ${await name(steps[0])}`;
  await reach(`${question} [aria-label="${down}"]`);
  for (let place = 2; place <= total; place += 1) {
    await act("Enter");
    assert.equal(await said(), `${await name(steps[0])}: number ${place} of ${total}.`);
    assert.equal(await page.evaluate(() => document.activeElement?.getAttribute("aria-label")), down, "the arrow keeps the focus");
  }
  assert.deepEqual(await shown(page, question, "order"), [...steps.slice(1), steps[0]]);
  const last = await said();
  await act("Enter");
  assert.equal(await said(), last, "the last step moves no further down");

  await reach(`${question} [data-step="${steps[1]}"] button`);
  await act("Enter");
  assert.equal(await said(), `${await name(steps[1])}: taken out again.`);
  const changes = total + (total - 1) + 1;
  for (let undone = 1; undone <= changes; undone += 1) {
    await press(question, "Undo");
    assert.equal(await said(), `Undone. Placed: ${Math.min(total, changes - undone)} of ${total}.`);
  }
  assert.ok(await within(`${question} [data-step]`), "undoing everything leaves the focus at the steps");
});

test("a letter that is passed over with the arrows is not taken from another line", async () => {
  const { lesson, id, key } = PRACTICE.get("match");
  const question = `[data-question="${id}"]`;
  await page.goto(edition.address(`lesson-${lesson}`));
  await seen(page, `${question} .question-foot button`);
  const letters = await page.$$eval(`${question} [data-item="${key.items[0]}"] input`, (all) => all.map((each) => /** @type {HTMLInputElement} */ (each).value));
  const wanted = { [key.items[0]]: letters[1], [key.items[1]]: letters[2] };
  await give(question, key, wanted);
  assert.deepEqual(await shown(page, question, "match"), wanted);
  await give(question, key, { [key.items[1]]: letters[1] });
  assert.deepEqual(await shown(page, question, "match"), { [key.items[1]]: letters[1] });
  await says(page, `${question} fieldset [role=status]`, /: moved here from /);
});

test("a learner begins a card, works through the check, hands it in, and reads the result", async () => {
  await page.goto(edition.address("check"));
  await seen(page, "[data-check-begin] button");
  await press("[data-check-begin]", "Whose card?");
  assert.ok(await within("dialog[open]"));
  await reach("dialog[open] input[name=name]");
  await page.keyboard.type("Ada Winch");
  await act("Tab");
  await page.keyboard.type("Basin Lane");
  await act("Enter");
  await page.waitForFunction(() => !document.querySelector("dialog[open]"));
  await says(page, ".strip", /Ada Winch/);
  await lives();
  await press("[data-check-begin]", "Begin the check");
  for (;;) {
    const one = await asked(page);
    assert.ok(await within(".check-run"), "the focus is at the question");
    await give(ASKED, one.key, rightAnswer(one.key, one.variant));
    await press(ASKED, one.at === one.of ? "To handing in" : "Next");
    if (one.at === one.of) break;
    await says(page, ".check-run h2", new RegExp(`Question ${one.at + 1} of`));
  }
  assert.ok(await within(".check-confirm"));
  await press(".check-confirm", "Hand in");
  assert.equal(await focused(), "Knowledge check passed");
});

test("the sheet that asks whose card it is closes with Escape, and the focus is where it was", async () => {
  await page.goto(edition.address("card"));
  await seen(page, "[data-cards] button");
  await press("[data-cards]", "Whose card?");
  assert.ok(await within("dialog[open]"));
  for (let stops = 0; stops < 12; stops += 1) {
    await page.keyboard.press("Tab");
    const outside = await page.evaluate(() => document.activeElement !== document.body && !document.activeElement?.closest("dialog"));
    assert.equal(outside, false, "Tab stays in the sheet");
  }
  await page.keyboard.press("Escape");
  await page.waitForFunction(() => !document.querySelector("dialog[open]"));
  assert.equal(await focused(), "Whose card?");
});

test("beginning a card on the route card leaves the focus on the page", async () => {
  await page.goto(edition.address("card"));
  await seen(page, "[data-cards] button");
  await press("[data-cards]", "Whose card?");
  await reach("dialog[open] input[name=name]");
  await page.keyboard.type("Ada Winch");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => !document.querySelector("dialog[open]"));
  await says(page, "[data-cards]", /Ada Winch/);
  await lives();
});

test("entering a lesson on the card leaves the focus on the page", async () => {
  await page.goto(edition.address(`lesson-${PRACTICE.get("choice").lesson}`));
  await seen(page, "[data-read-end] button");
  await press("[data-read-end]", "I have read this: whose card?");
  await reach("dialog[open] input[name=name]");
  await page.keyboard.type("Ada Winch");
  await page.keyboard.press("Enter");
  await says(page, "[data-read-end]", /entered on the card of Ada Winch/);
  await lives();
});

/** Tab or Shift+Tab; where the focus stops, it can be seen. @param {boolean} [back] */
async function tab(back = false) {
  if (back) await page.keyboard.down("Shift");
  await page.keyboard.press("Tab");
  if (back) await page.keyboard.up("Shift");
  const hidden = await page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return "";
    const box = element.getBoundingClientRect();
    const inView = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
    // A row may carry the ring of the small box in it.
    const ringed = [element, element.parentElement, element.parentElement?.parentElement].some((each) => {
      const style = each && getComputedStyle(each);
      return style && style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
    });
    return inView && ringed ? "" : element.outerHTML.slice(0, 160);
  });
  assert.equal(hidden, "", "the focus can be seen");
}

/** Presses a key on what has the focus; afterwards something has it still. @param {import("puppeteer-core").KeyInput} key */
async function act(key) {
  // Not every browser's driver knows the space bar by its name.
  await page.keyboard.press(key === "Space" ? " " : key);
  await lives();
}

/** The focus is on something that can be seen, not on nothing. */
async function lives() {
  let lost = true;
  for (const end = Date.now() + 1000; lost && Date.now() < end; await pause(10)) {
    lost = await page.evaluate(() => !document.activeElement || document.activeElement === document.body || !document.activeElement.checkVisibility());
  }
  assert.equal(lost, false, "the focus is lost to the page");
}

/** What has the focus says. */
function focused() {
  return page.evaluate(() => (document.activeElement?.textContent ?? "").replace(/\s+/g, " ").trim());
}

/** Whether the focus is inside. @param {string} selector */
function within(selector) {
  return page.evaluate((where) => Boolean(document.activeElement?.closest(where)), selector);
}

/** Tabs, forwards or backwards, to the first visible element of that selector. @param {string} selector */
async function reach(selector) {
  for (let stops = 0; stops < 150; stops += 1) {
    const way = await page.evaluate((where) => {
      const target = [...document.querySelectorAll(where)].find((each) => each.checkVisibility());
      const from = document.activeElement ?? document.body;
      if (!target) return "missing";
      if (from === target) return "there";
      // A group of radio buttons is one stop.
      if (target instanceof HTMLInputElement && from instanceof HTMLInputElement && target.type === "radio" && from.type === "radio" && target.name === from.name) return "there";
      return from !== document.body && from.compareDocumentPosition(target) & Node.DOCUMENT_POSITION_PRECEDING ? "back" : "on";
    }, selector);
    if (way === "there") return;
    assert.notEqual(way, "missing", selector);
    await tab(way === "back");
  }
  assert.fail(`${selector} is not reached in 150 stops`);
}

/** Reaches the visible button of that name and presses Enter. @param {string} place @param {string} name */
async function press(place, name) {
  await page.evaluate((where, text) => {
    for (const old of document.querySelectorAll("[data-sought]")) old.removeAttribute("data-sought");
    const found = [...document.querySelectorAll(`${where} button, ${where} summary`)].find((each) => each.checkVisibility() && (each.textContent ?? "").replace(/\s+/g, " ").trim() === text);
    found?.setAttribute("data-sought", "");
  }, place, name);
  assert.ok(await page.$("[data-sought]"), `${place} has the button ${name}`);
  await reach("[data-sought]");
  await act("Enter");
}

/** Answers with keys. @param {string} question @param {any} key @param {any} raw */
async function give(question, key, raw) {
  switch (key.kind) {
    case "choice": return radio(`${question} input[type=radio]:not([data-control] *)`, raw);
    case "choices":
      for (const id of raw) {
        await reach(`${question} input[value="${id}"]`);
        await act("Space");
      }
      return;
    case "order":
      for (const step of raw) {
        await reach(`${question} [data-step="${step}"] button`);
        await act("Enter");
      }
      return;
    case "match":
      for (const [item, answer] of Object.entries(raw)) await radio(`${question} [data-item="${item}"] input`, String(answer));
      return;
    case "spot": return radio(`${question} input[type=radio]`, raw);
    case "triage":
      for (const [unit, place] of Object.entries(raw)) await radio(`${question} [data-unit="${unit}"] input`, String(place));
      return;
    case "setting":
      for (const [control, place] of Object.entries(raw)) await slide(`${question} [data-control="${control}"]`, Number(place));
      return;
    case "drill":
      await reach(`${question} .drill-begin > .button`);
      await act("Enter");
      for (const deed of raw) {
        await seen(page, `${question} [data-do="${deed}"]`);
        await reach(`${question} [data-do="${deed}"]`);
        await act("Enter");
      }
      return;
    default:
      await reach(`${question} input[name=value]`);
      await page.keyboard.type(raw.value);
      if (raw.unit && await page.$(`${question} input[name=unit]`)) await radio(`${question} input[name=unit]`, raw.unit);
  }
}

/** Sets one control of a bench: along its choices, or its slider from the lower end. @param {string} control @param {number} place */
async function slide(control, place) {
  if (await page.$(`${control} input[type=radio]`)) return radio(`${control} input`, String(place));
  await reach(`${control} input[type=range]`);
  await page.keyboard.press("Home");
  for (let step = 0; step < place; step += 1) await page.keyboard.press("ArrowRight");
  // Where it stood at its end already, going there has changed nothing.
  if (place === 0) { await page.keyboard.press("ArrowRight"); await page.keyboard.press("ArrowLeft"); }
}

/** Goes to a group of radio buttons, along it with the arrows, and chooses. @param {string} group @param {string} value */
async function radio(group, value) {
  await reach(group);
  for (let steps = 0; await page.evaluate(() => /** @type {HTMLInputElement} */ (document.activeElement).value) !== value; steps += 1) {
    assert.ok(steps < 20, `${value} is among the arrows' stops of ${group}`);
    await act("ArrowDown");
  }
  await act("Space");
}
