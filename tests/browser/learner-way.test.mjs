// A learner's whole way: whose card, a lesson, practice, the check, the certificate, and the attempt marked again from its file.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { after, before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { CHECK, folder, oneFile, PRACTICE, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { freshPage, launch, saved, serve } from "./harness.mjs";
import { answerAll, beginCard, beginCheck, give, handIn, leaf, open, press, says, seen, words } from "./learner.mjs";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const PYTHON = process.env.PYTHON ?? `${ROOT}.venv/bin/python`;
const NAME = "Ines Okonkwo-Brandt";

/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;
before(async () => { server = await serve(); });
after(() => server.stop());

const WAYS = {
  chromium: { "over http": () => site((path) => server.address + path), "from its folder": folder, "as one file": oneFile },
  firefox: { "over http": () => site((path) => server.address + path), "as one file": oneFile },
};

// Two browsers do not get in each other's way.
describe("in two browsers", { concurrency: 2 }, () => {
  for (const [name, ways] of Object.entries(WAYS)) {
    describe(`in ${name}`, { concurrency: 1 }, () => {
      /** @type {import("puppeteer-core").Browser} */
      let browser;
      before(async () => { browser = await launch(/** @type {"chromium" | "firefox"} */ (name)); });
      after(() => browser.close());
      for (const [way, edition] of Object.entries(ways)) {
        test(`a learner comes from "Whose card?" to the certificate, ${way}`, async () => { await learn(browser, edition()); });
      }
    });
  }
});

/** @param {import("puppeteer-core").Browser} browser @param {import("./course.mjs").Edition} edition */
async function learn(browser, edition) {
  const { page, context, wrong } = await freshPage(browser);
  await beginCard(page, edition, NAME);
  await says(page, `${leaf("card")} [data-cards]`, new RegExp(NAME));
  await readFirstLesson(page, edition);
  for (const kind of ["choice", "choices", "order", "match", "number"]) await practise(page, edition, kind);
  await beginCheck(page, edition);
  const form = await answerAll(page);
  await handIn(page);
  await seeResult(page, form);
  await seeCertificate(page);
  await seeMarkedAgain(page, form);
  await open(page, edition, "card");
  await says(page, `${leaf("card")} td[data-check]`, /^Passed.*self-recorded, as this card says$/);
  assert.deepEqual(wrong, []);
  await context.close();
}

/** @param {import("puppeteer-core").Page} page @param {import("./course.mjs").Edition} edition */
async function readFirstLesson(page, edition) {
  await press(page, leaf("card"), /^Start here/);
  await page.waitForFunction(() => [...document.querySelectorAll("[data-read-end]")].some((end) => end.checkVisibility()));
  const lesson = await page.evaluate(() => [...document.querySelectorAll("[data-read-end]")].find((end) => end.checkVisibility())?.closest("[data-leaf]")?.getAttribute("data-leaf") ?? "");
  assert.match(lesson, /^lesson-/);
  await press(page, leaf(lesson), "I have read this: enter it on the card");
  await says(page, `${leaf(lesson)} [data-read-end]`, new RegExp(`Read.*entered on the card of ${NAME}`));
  await open(page, edition, "card");
  await says(page, `${leaf("card")} [data-next]`, /^Go on with/);
}

/** @param {import("puppeteer-core").Page} page @param {import("./course.mjs").Edition} edition @param {string} kind */
async function practise(page, edition, kind) {
  const { lesson, id, key } = PRACTICE.get(kind);
  const slug = `lesson-${lesson}`;
  const question = `${leaf(slug)} [data-question="${id}"]`;
  await open(page, edition, slug);
  const variant = Number(await page.$eval(question, (section) => section.getAttribute("data-variant")));
  await give(page, question, key, wrongAnswer(key, variant), { slowly: true });
  await press(page, question, "Check this answer");
  await says(page, `${question} .remark`, /^Not yet/);
  await press(page, question, "Try again");
  await give(page, question, key, rightAnswer(key, variant));
  await press(page, question, "Check this answer");
  await says(page, `${question} .remark`, /^Right/);
}

/** @param {import("puppeteer-core").Page} page @param {any[]} form */
async function seeResult(page, form) {
  const result = `${leaf("check")} .check-result`;
  assert.equal(await words(page, `${result} h2`), "Knowledge check passed");
  const said = await words(page, result);
  assert.match(said, new RegExp(`${form.length} of ${form.length} marks`));
  assert.match(said, /Attempt 1, as this device remembers/);
  const gates = await page.$$eval(`${result} .result-part`, (parts) => parts.filter((part) => part.querySelector("h3")?.textContent === "Must-pass")
    .flatMap((part) => [...part.querySelectorAll("li .line-word")].map((each) => each.textContent)));
  assert.deepEqual(gates, CHECK.plan.gates.map(() => "Right"));
}

/** @param {import("puppeteer-core").Page} page */
async function seeCertificate(page) {
  await seen(page, `${leaf("check")} .certificate`);
  const said = await page.$eval(`${leaf("check")} .certificate`, (sheet) => /** @type {HTMLElement} */ (sheet).innerText.replace(/\s+/g, " "));
  assert.ok(said.includes(NAME));
  assert.match(said, /knowledge check only/i);
  assert.match(said, /self-recorded: nobody confirmed who answered/i);
  assert.match(said, /practical not observed/i);
  assert.match(said, /example unit: not valid for work/i);
  assert.match(said, /draft: this course is not released/i);
  assert.match(said, /Must-pass: (\d+) of \1 right/);
  // A competent person is somebody to ask; the certificate makes nobody one.
  assert.doesNotMatch(said.replace(/\ba competent person\b/gi, ""), /\bcompetent\b/i);
}

/** The saved attempt has the fingerprint that was shown, and earns the same marks outside the browser. @param {import("puppeteer-core").Page} page @param {any[]} form */
async function seeMarkedAgain(page, form) {
  const shown = await page.$$eval(`${leaf("check")} .fingerprint span`, (groups) => groups.map((group) => group.textContent).join("-"));
  assert.match(shown, /^[A-Z2-7]{4}(-[A-Z2-7]{4}){3}$/);
  const file = await saved(page, () => press(page, leaf("check"), "Save the attempt to a file"));
  assert.match(file.name, /^attempt-ines-okonkwo-brandt-.*\.json$/);
  assert.equal(fingerprint(file.bytes), shown);
  const marked = JSON.parse(execFileSync(PYTHON, ["-c", "from journeybook.cli import main; main()", "mark", "--json", file.path], { cwd: ROOT, encoding: "utf8" }));
  assert.equal(marked.fingerprint, shown);
  assert.equal(marked.card.name, NAME);
  assert.equal(marked.result.passed, true);
  assert.equal(marked.result.marks, form.length * 1000);
}

/** The first 80 bits of SHA-256 in RFC 4648 base32. @param {Buffer} bytes */
function fingerprint(bytes) {
  const bits = [...createHash("sha256").update(bytes).digest().subarray(0, 10)].map((byte) => byte.toString(2).padStart(8, "0")).join("");
  return (bits.match(/.{5}/g) ?? []).map((five) => "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"[parseInt(five, 2)]).join("").replace(/.{4}(?=.)/g, "$&-");
}
