// Search finds a lesson by a word in the middle of its text, in every edition, and gives nothing of the check away.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { CHECK, COURSE, folder, LESSONS, ONE_FILE, oneFile, site } from "./course.mjs";
import { freshPage, fromFolder, launch, serve, SITE } from "./harness.mjs";
import { fill, leaf, open, says, seen } from "./learner.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
const FIELD = `${leaf("search")} input[type=search]`;
const HITS = `${leaf("search")} [data-results]`;
const LESSON = [...LESSONS.keys()][Math.floor(LESSONS.size / 2)];
/** A word of the middle of that lesson's text that stands in no other lesson. */
let word = "";

before(async () => {
  browser = await launch();
  server = await serve();
  word = await ownWord();
});
after(async () => {
  await browser.close();
  await server.stop();
});

const EDITIONS = { "over http": () => site((path) => server.address + path), "from its folder": folder, "in the one-file edition": oneFile };
for (const [way, edition] of Object.entries(EDITIONS)) {
  test(`a lesson is found by a word in the middle of its text, ${way}`, async () => {
    const { page, context, wrong } = await freshPage(browser);
    await open(page, edition(), "search");
    await fill(page, FIELD, word.toUpperCase());
    await says(page, `${leaf("search")} [role=status]`, /places? found/);
    const marked = await page.$$eval(`${HITS} mark`, (all) => all.map((each) => each.textContent?.toLowerCase()));
    assert.ok(marked.includes(word), `${word} is marked among ${marked.join(", ")}`);
    await page.focus(FIELD);
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await seen(page, `${leaf(`lesson-${LESSON}`)} h1`);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("words of nothing say so, and what to try", async () => {
  const { page, context } = await freshPage(browser);
  await open(page, folder(), "search");
  await fill(page, FIELD, "zzyzx qqq");
  await says(page, `${leaf("search")} [role=status]`, /Nothing found\. Try a shorter word/);
  await context.close();
});

test("no question of the check, and none of its options, can be searched", async () => {
  const { page } = await freshPage(browser);
  await page.goto(fromFolder(`${COURSE}/check.html`));
  const asked = await page.$$eval("template[data-check-question]", (all) => all.flatMap((each) =>
    [...each.content.querySelectorAll(".ask")].map((ask) => (ask.textContent ?? "").replace(/\s+/g, " ").trim())));
  assert.ok(asked.length >= Object.keys(CHECK.keys).length);
  const site = readFileSync(join(SITE, COURSE, "search-data.js"), "utf8");
  const inOne = /<script type="application\/json" id="search-data">(.*?)<\/script>/s.exec(readFileSync(join(SITE, ONE_FILE), "utf8"))?.[1] ?? "";
  for (const [name, text] of Object.entries({ site: site.replace(/^Search\.receive\(|\);\s*$/g, ""), "one file": inOne })) {
    const entries = JSON.parse(text);
    assert.ok(entries.length > LESSONS.size, name);
    const whole = entries.flat().join("\n");
    assert.deepEqual(asked.filter((ask) => whole.includes(ask)), [], name);
    assert.deepEqual(entries.map((/** @type {string[]} */ [, , address]) => address).filter((/** @type {string} */ address) => /^(check\.html|#check\b)/.test(address)), [], name);
  }
});

/** A word that stands in the middle third of the lesson and in no other lesson. */
async function ownWord() {
  const { page, context } = await freshPage(browser);
  const texts = new Map();
  for (const lesson of LESSONS.keys()) {
    await page.goto(folder().address(`lesson-${lesson}`));
    texts.set(lesson, await page.$eval(".lesson-body", (body) => [...body.querySelectorAll("p, li")].map((each) => each.textContent).join(" ").toLowerCase()));
  }
  await context.close();
  const text = texts.get(LESSON);
  const others = [...texts].filter(([lesson]) => lesson !== LESSON).map(([, other]) => other).join(" ");
  const found = text.slice(text.length / 3, (text.length * 2) / 3).split(/[^a-z]+/).slice(1, -1).find((/** @type {string} */ each) => each.length >= 5 && !others.includes(each));
  assert.ok(found, `${LESSON} has a word of its own`);
  return found;
}
