// Calculation sheets, by mouse, keyboard, touch and without scripts: what is typed is read exactly or asked for again beside its box.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { dataOf, folder, LESSONS, ONE_FILE, oneFile, site } from "./course.mjs";
import { axe, freshPage, launch, pause, serve, WITHOUT_SCRIPT } from "./harness.mjs";

/** @typedef {import("puppeteer-core").Page} Page */

/** @type {import("puppeteer-core").Browser} */
let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** Calculator -> the lesson that shows it, and its data. @type {Map<string, {lesson: string, data: any}>} */
const SHEETS = new Map();
for (const [lesson, path] of LESSONS) {
  for (const [id, data] of Object.entries(dataOf(path ?? "", `lesson-${lesson}`).calculators ?? {})) SHEETS.set(id, { lesson, data });
}
const WEAR = "wear-time-protection";

/** @param {Page} page @param {import("./course.mjs").Edition} edition @param {string} id */
async function open(page, edition, id) {
  await page.goto(edition.address(`lesson-${SHEETS.get(id)?.lesson}`));
  await page.waitForSelector(`${sheet(id)}.live`);
}

/** @param {string} id */
const sheet = (id) => `[data-calculator="${id}"]`;
/** @param {string} id @param {string} input */
const box = (id, input) => `${sheet(id)} [data-input="${input}"] .calc-box`;

/** @param {Page} page @param {string} id @param {string} input @param {string} text */
async function type(page, id, input, text) {
  await page.$eval(box(id, input), (each) => /** @type {HTMLInputElement} */ (each).focus());
  await page.keyboard.down("Control");
  await page.keyboard.press("a");
  await page.keyboard.up("Control");
  await page.keyboard.press("Delete");
  await page.keyboard.type(text);
}

/** @param {Page} page @param {string} id @param {string} result */
const shown = (page, id, result) => page.$eval(`${sheet(id)} [data-result="${result}"] .calc-figure`, (each) => (each.textContent ?? "").replace(/\s+/g, " ").trim());

/** @param {Page} page @param {string} id @param {string} input */
const asked = (page, id, input) => page.$eval(`${sheet(id)} [data-input="${input}"] .ask-again`, (each) => each.textContent);

test("the course has calculators, each in a lesson", () => assert.ok(SHEETS.size >= 5, [...SHEETS.keys()].join()));

for (const [name, edition] of /** @type {const} */ ([["from its folder", folder()], ["in the one-file edition", oneFile()]])) {
  test(`every sheet comes alive with its worked example unchanged, ${name}`, async () => {
    const { page, context, wrong } = await freshPage(browser);
    for (const [id, { data }] of SHEETS) {
      await open(page, edition, id);
      const still = await Promise.all(data.results.map((/** @type {any} */ each) => shown(page, id, each.id)));
      // Typing the start values again changes nothing: both languages work alike.
      for (const input of data.inputs) if (!input.choices) await type(page, id, input.id, input.start);
      assert.deepEqual(await Promise.all(data.results.map((/** @type {any} */ each) => shown(page, id, each.id))), still, id);
    }
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("over http, results follow what is typed, with a comma as well as a point", async () => {
  const server = await serve();
  const { page, context, wrong, asked: requests } = await freshPage(browser);
  await open(page, site((path) => server.address + path), WEAR);
  await type(page, WEAR, "factor", "20");
  await type(page, WEAR, "share", "95");
  assert.equal(await shown(page, WEAR, "left"), "≈10.3");
  assert.equal(await shown(page, WEAR, "minutes"), "3 min");
  await type(page, WEAR, "share", "100");
  assert.equal(await shown(page, WEAR, "left"), "20");
  await open(page, site((path) => server.address + path), "flow-units");
  await type(page, "flow-units", "flow", "169,9");
  assert.match(await shown(page, "flow-units", "over"), /^−0\.1 L\/min$/);
  assert.deepEqual(wrong, []);
  assert.ok(requests.every((address) => address.startsWith(server.address)), "nothing else is asked for");
  await context.close();
  await server.stop();
});

test("the sum stands there with the numbers that were typed", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, folder(), WEAR);
  await type(page, WEAR, "share", "90");
  const sum = await page.$eval(`${sheet(WEAR)} [data-result="minutes"] .calc-worked`, (each) => each.textContent);
  assert.equal(sum?.trim(), "= 60 × (100 − 90) ÷ 100");
  await context.close();
});

for (const [text, words] of /** @type {const} */ ([
  ["101", /^Write a number from 0 to 100\.$/], ["-1", /^Write a number from 0 to 100\.$/], ["", /^Write a number first\.$/],
  ["1,000", /two ways/], ["95.5", /^Write a whole number\.$/], ["most", /cannot be read as a number/],
])) {
  test(`“${text}” is asked for again beside its box, and what rests on it has no number`, async () => {
    const { page, context, wrong } = await freshPage(browser);
    await open(page, folder(), WEAR);
    await type(page, WEAR, "share", text);
    assert.match(await asked(page, WEAR, "share") ?? "", words);
    assert.equal(await page.$eval(box(WEAR, "share"), (each) => each.getAttribute("aria-invalid")), "true");
    assert.equal(await shown(page, WEAR, "left"), "–");
    assert.match(await page.$eval(`${sheet(WEAR)} [data-result="left"]`, (each) => each.textContent ?? ""), /No result yet\. Look at line B\./);
    await type(page, WEAR, "share", "50");
    assert.equal(await asked(page, WEAR, "share"), "");
    assert.equal(await page.$eval(box(WEAR, "share"), (each) => each.hasAttribute("aria-invalid")), false);
    assert.equal(await shown(page, WEAR, "minutes"), "30 min");
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("a line that is asked for again leaves results alone that do not rest on it", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, folder(), WEAR);
  await type(page, WEAR, "factor", "0");
  assert.equal(await shown(page, WEAR, "left"), "–");
  assert.equal(await shown(page, WEAR, "minutes"), "3 min");
  await context.close();
});

test("by keyboard alone: from line to line, and back to the start values", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, folder(), WEAR);
  await page.focus(box(WEAR, "factor"));
  await page.keyboard.type("10");
  await page.keyboard.press("Tab");
  await page.keyboard.type("50");
  assert.equal(await shown(page, WEAR, "left"), "≈1.8");
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement?.textContent), "Back to the start values");
  await page.keyboard.press("Enter");
  const start = SHEETS.get(WEAR)?.data.inputs.map((/** @type {any} */ each) => each.start);
  assert.deepEqual(await page.$$eval(`${sheet(WEAR)} .calc-box`, (all) => all.map((each) => /** @type {HTMLInputElement} */ (each).value)), start);
  assert.ok(await page.evaluate(() => document.activeElement?.matches(".calc-box")), "the focus is in the first box again");
  await context.close();
});

test("by touch on a phone: a tap selects the number, and every target is large enough", async () => {
  const { page, context } = await freshPage(browser, { width: 390, height: 800 });
  for (const id of SHEETS.keys()) {
    await open(page, folder(), id);
    const small = await page.$$eval(`${sheet(id)} :is(.calc-box, button)`, (all) => all.map((each) => each.getBoundingClientRect()).filter(({ height, width }) => height < 56 || width < 56).length);
    assert.equal(small, 0, id);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${id}: nothing scrolls sideways`);
  }
  await open(page, folder(), WEAR);
  const target = await page.$(box(WEAR, "share"));
  await target?.tap();
  await page.keyboard.type("80");
  assert.equal(await page.$eval(box(WEAR, "share"), (each) => /** @type {HTMLInputElement} */ (each).value), "80");
  assert.equal(await page.$eval(box(WEAR, "share"), (each) => each.getAttribute("inputmode")), "decimal");
  await context.close();
});

test("results are said aloud once, after a pause, with their names", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, folder(), WEAR);
  await type(page, WEAR, "factor", "25");
  await type(page, WEAR, "share", "90");
  await pause(1000);
  const said = await page.$eval(`${sheet(WEAR)} .calc-lines > [role=status]`, (each) => each.textContent);
  assert.match(said ?? "", /Factor that is left over the whole time: about 7\.4\./);
  assert.match(said ?? "", /: 6 min\./);
  await context.close();
});

test("the caution stands above the results on every sheet, on screen and on paper", async () => {
  const { page, context } = await freshPage(browser);
  for (const id of SHEETS.keys()) {
    await open(page, folder(), id);
    for (const medium of /** @type {const} */ (["screen", "print"])) {
      await page.emulateMediaType(medium);
      const { height, end, next } = await page.$eval(sheet(id), (each) => {
        const caution = /** @type {Element} */ (each.querySelector(".calc-caution")).getBoundingClientRect();
        return { height: caution.height, end: caution.bottom, next: /** @type {Element} */ (each.querySelector(".calc-results")).getBoundingClientRect().top };
      });
      assert.ok(height > 40 && end <= next + 1, `${id}, ${medium}`);
    }
    await page.emulateMediaType("screen");
  }
  await context.close();
});

test("without scripts a sheet is a worked example", { skip: WITHOUT_SCRIPT }, async () => {
  const { page, context } = await freshPage(browser, { script: false });
  for (const [id, { lesson }] of SHEETS) {
    await page.goto(folder().address(`lesson-${lesson}`));
    assert.equal(await page.$$eval(`${sheet(id)} :is(input, select, button)`, (all) => all.length), 0, `${id} has no dead controls`);
    const words = await page.$eval(sheet(id), (each) => /** @type {HTMLElement} */ (each).innerText);
    assert.match(words, /= /, id);
    assert.doesNotMatch(words, /–$/m, id);
  }
  await context.close();
});

test("axe finds nothing on a sheet, filled in and asking again, in light and dark", async () => {
  const { page, context } = await freshPage(browser);
  for (const id of SHEETS.keys()) {
    await open(page, folder(), id);
    for (const scheme of ["light", "dark"]) {
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      assert.deepEqual(await axe(page), [], `${id}, ${scheme}`);
    }
    const first = SHEETS.get(id)?.data.inputs.find((/** @type {any} */ each) => !each.choices);
    await type(page, id, first.id, "x");
    for (const scheme of ["light", "dark"]) {
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      assert.deepEqual(await axe(page), [], `${id}, ${scheme}, asking again`);
    }
  }
  await context.close();
});

test("two sheets of the one-file edition share no id", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(oneFile().address("card"));
  const doubles = await page.$$eval("[id]", (all) => {
    const ids = all.map((each) => each.id);
    return ids.filter((id, at) => ids.indexOf(id) !== at);
  });
  assert.deepEqual(doubles, [], ONE_FILE);
  await context.close();
});

test("at twice the text size every sheet and number box stays within a small phone", async () => {
  const { page, context } = await freshPage(browser, { width: 360, height: 640 });
  for (const [id, { lesson }] of SHEETS) {
    await open(page, folder(), id);
    await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
    const out = await page.$$eval(".calc *, .number *", (all) => all.filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > 360).map((each) => each.className));
    assert.deepEqual(out, [], lesson);
  }
  await context.close();
});
