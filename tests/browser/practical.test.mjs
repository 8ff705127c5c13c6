// The sheet of a practical as a form: filled in, kept, saved, and read by the employer's tool. Its paper: practical-paper.test.mjs.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { COURSE, dataOf, ONE_FILE } from "./course.mjs";
import { axe, BROWSER, freshPage, fromFolder, launch, saved, serve } from "./harness.mjs";
import { choose, confirmAll, employerReads, fingerprint, mark, markAll, NAMES, open, PRACTICAL, press, pressButton, SLUG, stepsOf, words, writeNames } from "./sheet.mjs";

const KEPT = `journeybook-observation-1:${COURSE}:${SLUG.replace("practical-", "")}`;
/** Why a test in the dark is left out; `false` where it runs. */
const ONLY_LIGHT = BROWSER === "firefox" && "Firefox cannot be told over WebDriver BiDi which colours somebody prefers";
/** @type {import("puppeteer-core").Browser} */ let browser;
/** @type {Awaited<ReturnType<typeof serve>>} */ let served;
before(async () => {
  browser = await launch();
  served = await serve();
});
after(async () => {
  await browser.close();
  await served.stop();
});

for (const where of ["file", "http", "one file"]) {
  test(`what is filled in outlives a reload, and is saved as a record that the employer can read (${where})`, async () => {
    const { page, context, wrong, asked } = await freshPage(browser);
    const address = where === "file" ? fromFolder(PRACTICAL) : where === "http" ? served.address + PRACTICAL : `${fromFolder(ONE_FILE)}#${SLUG}`;
    await open(page, address);
    await writeNames(page);
    await confirmAll(page);
    const [first] = await stepsOf(page);
    await mark(page, first.row, "yes");
    await press(page, `#${first.row} .marks-more .button`);
    await page.type(`#${first.row}-note`, "named two");
    await page.reload();
    await page.waitForSelector(".practical.live");
    assert.equal(await page.$eval(`#${SLUG}-line-name`, (box) => /** @type {HTMLInputElement} */ (box).value), NAMES.name);
    assert.equal(await page.$eval(`#${first.row}-note`, (box) => /** @type {HTMLTextAreaElement} */ (box).value), "named two");
    assert.ok(await page.$eval(`#${first.row}-note`, (box) => box.checkVisibility()));
    await markAll(page);
    await choose(page, "competent");
    const file = await saved(page, () => pressButton(page, "Save the record"));
    await page.waitForSelector(".practical-saved:not([hidden])");
    const read = employerReads(file.path);
    assert.deepEqual(read.problems, []);
    assert.equal(read.worth.competent, true);
    assert.equal(read.fingerprint, await fingerprint(page));
    const record = JSON.parse(file.bytes.toString("utf8"));
    const { version, digest } = dataOf(PRACTICAL, SLUG).practical;
    assert.deepEqual([record.version, record.digest, record.person, record.steps[0].note],
      [version, digest, { id: NAMES.number, name: NAMES.name, workplace: NAMES.workplace }, "named two"]);
    assert.match(file.name, /robin-ashdown/);
    const codes = await page.evaluate(() => {
      // @ts-ignore - the page's own scripts
      const text = [...document.querySelectorAll(".practical")].map(() => JSON.parse(localStorage.getItem(Object.keys(localStorage).find((key) => key.startsWith("journeybook-observation-1")))).record)[0];
      // @ts-ignore
      return RecordCodes.texts(Sha256.utf8(text), Attempt.fingerprint(Sha256.utf8(text)), (plain) => Fflate.deflateSync(plain, { level: 9 })).join("\n");
    });
    assert.equal(employerReads("-", codes).fingerprint, read.fingerprint);
    await pressButton(page, "Show it as codes");
    assert.ok(await page.$eval(".codes svg", (each) => each.checkVisibility()));
    await page.reload();
    await page.waitForSelector(".practical-saved:not([hidden])");
    assert.equal(await fingerprint(page), read.fingerprint);
    assert.deepEqual(wrong, []);
    assert.ok(asked.every((each) => each.startsWith("file:") || each.startsWith(served.address) || each.startsWith("data:") || each.startsWith("blob:")), asked.join(" "));
    await context.close();
  });
}

test("no step can be marked before every line is confirmed, and the page says so and leads there", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  const shut = () => page.$$eval(".marks input", (all) => all.every((each) => each.matches(":disabled")));
  assert.ok(await shut());
  assert.match(await words(page, ".steps-shut"), /^The steps cannot be marked yet/);
  await pressButton(page, "To what is not confirmed");
  assert.ok(await page.evaluate(() => document.activeElement?.matches(".confirm > li:first-child input")));
  await confirmAll(page);
  assert.ok(!await shut());
  assert.ok(await page.$eval(".steps-shut", (each) => !each.checkVisibility()));
  assert.match(await words(page, ".confirm-word"), /All of it is confirmed/);
  await markAll(page);
  await choose(page, "competent");
  await press(page, ".confirm > li:first-child .confirm-box");
  assert.ok(await shut());
  assert.equal(await page.$$eval(".marks-seen :checked", (all) => all.length), (await stepsOf(page)).length);
  assert.equal(await page.$$eval(".result-choice :checked", (all) => all.length), 0);
  assert.match(await words(page, ".why-not"), /Not every line of “confirm first” is confirmed/);
  await context.close();
});

test("the count and the reasons say in words which critical step stands in the way", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  await confirmAll(page);
  const steps = await stepsOf(page);
  const critical = steps.filter((step) => step.critical);
  const count = () => words(page, ".watch-count");
  assert.equal(await count(), `0 of ${steps.length} steps marked, ${critical.length} critical not yet`);
  await markAll(page);
  assert.equal(await count(), `${steps.length} of ${steps.length} steps marked, each critical one shown`);
  assert.equal(await words(page, ".why-not"), "");
  const [one] = critical;
  const number = steps.indexOf(one) + 1;
  const text = await words(page, `#${one.row} .observed-text`);
  const competent = () => page.$eval('.result-choice [value="competent"]', (each) => !each.matches(":disabled"));
  assert.ok(await competent());
  await press(page, `#${one.row} .marks-more .mark-choice`);
  assert.equal(await words(page, ".why-not"), `“Competent” cannot be chosen:Step ${number}, critical, needed a hint: ${text}`);
  assert.ok(!await competent());
  for (const [seen, said] of /** @type {["no" | "not-seen", string][]} */ ([["no", "is marked “no”"], ["not-seen", "is marked “not seen”"]])) {
    await mark(page, one.row, seen);
    assert.match(await words(page, ".why-not"), new RegExp(`Step ${number}, critical, ${said}`));
    assert.match(await words(page, `#${one.row} .mark-word`), /not yet competent/);
    assert.equal(await count(), `${steps.length} of ${steps.length} steps marked, 1 critical not shown`);
  }
  assert.equal(await page.$eval(".why-not a", (link) => link.getAttribute("href")), `#${one.row}`);
  await context.close();
});

test("ended at once it can only be not yet competent, and nobody is marked down in words", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  await writeNames(page);
  await confirmAll(page);
  const [first] = await stepsOf(page);
  await mark(page, first.row, "yes");
  await pressButton(page, "End it at once");
  assert.match(await words(page, ".watch-count"), /^Ended at \d\d:\d\d\. 1 of/);
  assert.match(await words(page, ".watch-ended"), /never a mark against anybody/);
  for (const part of [".watch-bar", ".practical-stop", ".practical-result"]) assert.doesNotMatch(await words(page, part), /\bfail|incompetent/i);
  assert.ok(await page.$eval('.result-choice [value="competent"]', (each) => each.matches(":disabled")));
  assert.ok(await page.$eval('.result-choice [value="not-yet-competent"]', (each) => /** @type {HTMLInputElement} */ (each).checked));
  await pressButton(page, "Go on after all");
  assert.equal(await page.$$eval(".result-choice :checked", (all) => all.length), 0);
  await pressButton(page, "End it at once");
  const file = await saved(page, () => pressButton(page, "Save the record"));
  const record = JSON.parse(file.bytes.toString("utf8"));
  assert.deepEqual([record.stopped, record.result], [true, "not-yet-competent"]);
  assert.deepEqual(record.steps.map((/** @type {any} */ step) => step.seen).slice(0, 2), ["yes", "not-seen"]);
  assert.deepEqual(employerReads(file.path).problems, []);
  await context.close();
});

test("what is missing is said beside its box, and the focus goes there", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  await pressButton(page, "Save the record");
  assert.ok(await page.evaluate((id) => document.activeElement?.id === id, `${SLUG}-line-name`));
  assert.equal(await page.$eval(`#${SLUG}-line-name`, (box) => box.getAttribute("aria-invalid")), "true");
  assert.match(await words(page, ".save-missing"), /Write who was watched\.Write who the assessor is\.Choose the result\./);
  await page.type(`#${SLUG}-line-name`, "Robin");
  assert.equal(await page.$eval(`#${SLUG}-line-name`, (box) => box.getAttribute("aria-invalid")), null);
  assert.equal(await page.$eval(".practical-saved", (each) => each.checkVisibility()), false);
  await context.close();
});

test("a saved record is not changed: what is put right is another record, and the page says so", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  await writeNames(page);
  await confirmAll(page);
  await markAll(page);
  await choose(page, "competent");
  await saved(page, () => pressButton(page, "Save the record"));
  const first = await fingerprint(page);
  assert.ok(await page.$$eval(".watch-who input, .marks input, .result-choice input, .confirm-box input", (all) => all.every((each) => each.matches(":disabled"))));
  assert.match(await words(page, ".practical-saved"), /A saved record is not changed/);
  await pressButton(page, "Put something right");
  assert.match(await words(page, ".watch-save"), new RegExp(`The record ${first} is saved, and stays what it is`));
  const file = await saved(page, async () => pressButton(page, "Save the record"));
  assert.equal(await fingerprint(page), first, "nothing was changed, so it is the same record");
  assert.deepEqual(employerReads(file.path).problems, []);
  await pressButton(page, "Put something right");
  await page.type(`#${SLUG}-line-unit`, " and its spare battery");
  const other = await saved(page, () => pressButton(page, "Save the record"));
  assert.notEqual(await fingerprint(page), first);
  assert.equal(JSON.parse(other.bytes.toString("utf8")).unit, `${NAMES.unit} and its spare battery`);
  await context.close();
});

test("nothing goes from the device without a question; the next person finds the assessor", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, served.address + PRACTICAL);
  await writeNames(page);
  await pressButton(page, "Clear this sheet");
  assert.match(await words(page, ".watch-question"), /^Clear this sheet\?/);
  await pressButton(page, "Keep it");
  assert.equal(await page.$eval(`#${SLUG}-line-name`, (box) => /** @type {HTMLInputElement} */ (box).value), NAMES.name);
  await confirmAll(page);
  await pressButton(page, "End it at once");
  await saved(page, () => pressButton(page, "Save the record"));
  await pressButton(page, "Next person");
  await pressButton(page, "It is saved: next person");
  const values = await page.$$eval(".watch-who input", (all) => all.map((box) => [box.id.split("-line-")[1], /** @type {HTMLInputElement} */ (box).value]));
  const held = Object.fromEntries(values);
  assert.deepEqual([held.name, held.number, held.unit, held.assessor, held.place], ["", "", "", NAMES.assessor, NAMES.place]);
  assert.equal(await page.$$eval(".practical :checked", (all) => all.length), 0);
  await pressButton(page, "Clear this sheet");
  await pressButton(page, "Clear it");
  assert.equal(await page.evaluate((key) => localStorage.getItem(key), KEPT), null);
  assert.equal(await page.$eval(`#${SLUG}-line-assessor`, (box) => /** @type {HTMLInputElement} */ (box).value), "");
  await context.close();
});

test("where the browser keeps nothing, the page says so once, and saving works", async () => {
  const { page, context, wrong } = await freshPage(browser, { before: () => Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } }) });
  await open(page, fromFolder(PRACTICAL));
  await writeNames(page);
  assert.equal((await words(page, "main")).split("this browser keeps nothing").length, 2);
  await pressButton(page, "End it at once");
  const file = await saved(page, () => pressButton(page, "Save the record"));
  assert.deepEqual(employerReads(file.path).problems, []);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a sheet begun on another state of the course keeps its names alone, and says so", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, served.address + PRACTICAL);
  await writeNames(page);
  await confirmAll(page);
  await page.evaluate((key) => {
    const kept = JSON.parse(localStorage.getItem(key) ?? "");
    kept.sheet.digest = "0".repeat(64);
    localStorage.setItem(key, JSON.stringify(kept));
  }, KEPT);
  await page.reload();
  await page.waitForSelector(".practical.live");
  assert.match(await words(page, ".practical-intro"), /begun on an earlier state of the course/);
  assert.equal(await page.$eval(`#${SLUG}-line-name`, (box) => /** @type {HTMLInputElement} */ (box).value), NAMES.name);
  assert.equal(await page.$$eval(".practical :checked", (all) => all.length), 0);
  await context.close();
});

test("a name can be taken from a card that this device holds", async () => {
  const { page, context } = await freshPage(browser);
  await page.goto(served.address + PRACTICAL);
  await page.evaluate(() => localStorage.setItem("journeybook.cards", JSON.stringify({ format: "journeybook cards 1", current: null,
    cards: { "a-1": { id: "a-1", name: "Kay Ferriby", workplace: "Shed 2", made: "2026-11-24", courses: {} } } })));
  await open(page, served.address + PRACTICAL);
  await press(page, ".watch-cards summary");
  await press(page, ".watch-cards .card-choice");
  const values = await page.$$eval(".watch-group:first-child input", (all) => all.map((box) => /** @type {HTMLInputElement} */ (box).value));
  assert.deepEqual(values, ["Kay Ferriby", "a-1", "Shed 2"]);
  await context.close();
});

test("a keyboard alone fills in the sheet and saves it", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, fromFolder(PRACTICAL));
  /** @param {string} selector */
  const tabTo = async (selector) => {
    for (let presses = 0; presses < 120; presses += 1) {
      if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`Tab never came to ${selector}`);
  };
  await tabTo(`#${SLUG}-line-name`);
  await page.keyboard.type("Robin");
  await tabTo(`#${SLUG}-line-assessor`);
  await page.keyboard.type("R. Tansley");
  const lines = await page.$$eval(".confirm-box", (all) => all.length);
  for (let line = 1; line <= lines; line += 1) {
    await tabTo(`.confirm > li:nth-child(${line}) input`);
    await page.keyboard.press(" ");
  }
  const steps = await stepsOf(page);
  for (const { row } of steps) {
    await tabTo(`#${row} .marks-seen input`);
    await page.keyboard.press(" ");
    // In sight: not under the bar at the foot of the screen.
    assert.ok(await page.evaluate(() => {
      const [bar, box] = [document.querySelector(".watch-bar"), document.activeElement].map((each) => /** @type {Element} */ (each).getBoundingClientRect());
      return box.bottom <= bar.top || box.top >= bar.bottom;
    }), row);
  }
  await page.keyboard.press("Tab");
  await tabTo(".result-choice input");
  await page.keyboard.press(" ");
  assert.ok(await page.$eval('.result-choice [value="competent"]', (each) => /** @type {HTMLInputElement} */ (each).checked));
  await tabTo(".watch-save .button");
  const file = await saved(page, () => page.keyboard.press("Enter"));
  assert.equal(employerReads(file.path).worth.competent, true);
  assert.ok(await page.evaluate(() => document.activeElement?.matches(".practical-saved h2")));
  await context.close();
});

for (const scheme of /** @type {const} */ (["light", "dark"])) {
  for (const width of [390, 1200]) {
    test(`it is accessible and fits its screen before, while and after it is filled in, ${width} ${scheme}`, { skip: scheme === "dark" && ONLY_LIGHT }, async () => {
      const { page, context, wrong } = await freshPage(browser, { width });
      if (!ONLY_LIGHT) await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      await open(page, fromFolder(PRACTICAL));
      // Before axe, which reads the styles anew and is refused.
      assert.deepEqual(wrong, []);
      const look = async (/** @type {string} */ when) => {
        assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth), when);
        assert.deepEqual(await axe(page), [], when);
      };
      await look("blank");
      await writeNames(page);
      await confirmAll(page);
      const steps = await stepsOf(page);
      await mark(page, steps[0].row, "yes");
      await mark(page, (steps.find((step) => step.critical) ?? steps[0]).row, "no");
      await press(page, `#${steps[0].row} .marks-more .button`);
      await look("half way");
      const small = await page.$$eval(".mark-choice, .confirm-box, .practical button, .watch-line input", (all) => all.filter((each) => each.checkVisibility())
        .map((each) => ({ words: each.textContent || each.id, box: each.getBoundingClientRect() })).filter(({ box }) => box.height < 56 || box.width < 56).map(({ words }) => words));
      assert.deepEqual(small, []);
      const near = await page.$$eval(".marks", (all) => all.flatMap((field) => {
        const boxes = [...field.querySelectorAll(".mark-choice, .button")].map((each) => each.getBoundingClientRect());
        return boxes.slice(1).map((box, index) => Math.max(box.left - boxes[index].right, box.top - boxes[index].bottom));
      }));
      assert.ok(Math.min(...near) >= 7.9, String(Math.min(...near)));
      await pressButton(page, "End it at once");
      await look("ended");
      await saved(page, () => pressButton(page, "Save the record"));
      await pressButton(page, "Show it as codes");
      await look("saved");
      await context.close();
    });
  }
}

test("on a small phone the bar takes one row, and at twice the text size nothing sticks out", async () => {
  const { page, context } = await freshPage(browser, { width: 360, height: 640 });
  await open(page, fromFolder(PRACTICAL));
  await confirmAll(page);
  const steps = await stepsOf(page);
  await mark(page, (steps.find((step) => step.critical) ?? steps[0]).row, "no");
  assert.ok(await page.$eval(".watch-bar", (bar) => bar.getBoundingClientRect().height) < 100);
  await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
  // Less the width of a scroll bar, where the browser shows one.
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth), 0);
  assert.ok(await page.$eval(".watch-bar", (bar) => bar.getBoundingClientRect().height) < 320);
  await context.close();
});
