// The checking page says each of its verdicts in words, from its folder, over plain http without WebCrypto, and without scripts.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath, pathToFileURL } from "node:url";
import { deflateSync } from "node:zlib";
import { certificateText, signer, trustText, WATCHED } from "../js/load-proof.mjs";
import { axe, freshPage, fromFolder, launch, serve, SHOP, SITE, WITHOUT_SCRIPT } from "./harness.mjs";

const YARD = signer("11".repeat(32));
const STRANGER = signer("22".repeat(32));
const DEMO = signer("00".repeat(32));
const ID = "urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11";
const COURSE = readdirSync(SITE, { recursive: true }).map(String).find((name) => /^[^/]+\/checking\.html$/.test(name))?.split("/")[0] ?? "";
const PAGE = `${COURSE}/checking.html`;
const ANSWER = "[data-answer] [data-verdict]";
const PYTHON = process.env.PYTHON ?? fileURLToPath(new URL("../../.venv/bin/python", import.meta.url));
const files = mkdtempSync(join(tmpdir(), "journeybook-checking-"));
/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {Awaited<ReturnType<typeof serve>>} */
let server;

before(async () => {
  browser = await launch();
  // The same site as if it had been built with the yard's trust list.
  cpSync(join(SITE, "assets"), join(files, "assets"), { recursive: true });
  cpSync(join(SITE, PAGE), join(files, PAGE), { recursive: true });
  trusting(listed());
  server = await serve(files);
});
after(async () => {
  await browser.close();
  await server.stop();
  rmSync(files, { recursive: true, force: true });
});

/** The yard's list: its assessor, and a key that is for trying out. @param {Record<string, unknown>} [changed] */
function listed(changed = {}) {
  const key = { did: YARD.did, holder: "Sam Reyes", role: "assessor", from: "2026-01-01", until: "2026-12-31", withdrawn: null, demo: false };
  return trustText([YARD], { keys: [key, { ...key, did: DEMO.did, holder: "Anybody", demo: true }], ...changed });
}

/** The code on paper, as the command that issues certificates writes it. @param {string} record */
function codeOf(record) {
  const program = "import sys; from journeybook.proof.certificate_code import to_code; print(to_code(sys.stdin.buffer.read()), end='')";
  return execFileSync(PYTHON, ["-c", program], { input: record, encoding: "utf8" });
}

/** @param {string} list */
function trusting(list) {
  const escaped = list.replaceAll("&", "&amp;").replaceAll('"', "&#34;");
  writeFileSync(join(files, PAGE), readFileSync(join(SITE, PAGE), "utf8").replace(/data-trust="[^"]*"/, () => `data-trust="${escaped}"`));
}

/** @param {string} name @param {string | Uint8Array} content */
function file(name, content) {
  writeFileSync(join(files, name), content);
  return join(files, name);
}

/** The page on 1 June 2026, as it stands once its list was read. @param {string} address @param {any} [wish] @param {import("puppeteer-core").Browser} [within] */
async function opened(address, wish = {}, within = browser) {
  const made = await freshPage(within, {
    ...wish,
    before: () => {
      const Real = Date;
      // @ts-ignore - only the constructor without a time is another
      globalThis.Date = class extends Real {
        /** @param {...any} when */
        constructor(...when) {
          // @ts-ignore
          super(...(when.length > 0 ? when : [2026, 5, 1, 12]));
        }
      };
    },
  });
  await made.page.goto(address);
  await made.page.waitForFunction(() => (document.querySelector("[data-trust-line]")?.textContent ?? "") !== "");
  return made;
}

/** @param {import("puppeteer-core").Page} page @param {string} path */
async function give(page, path) {
  await page.$eval("[data-answer]", (place) => place.replaceChildren());
  const input = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await page.$("[data-drop] input"));
  await input.uploadFile(path);
  await page.waitForSelector(ANSWER);
  return page.$eval(ANSWER, (card) => ({ kind: card.getAttribute("data-verdict"), isGood: card.classList.contains("verdict-good"), text: /** @type {HTMLElement} */ (card).innerText }));
}

const inFolder = () => pathToFileURL(join(files, PAGE)).href;

const UNCHANGED = "The record is unchanged";
/** Record, words that stand in this order, words that do not stand there. @type {Record<string, [string, RegExp, RegExp]>} */
const CASES = {
  genuine: [certificateText(YARD), /Genuine record[^]*Self-recorded[^]*Not observed[^]*its signer is on the trust list[^]*Ines Okafor[^]*1042[^]*21\.5 of 24, 80 % needed, must-pass 8 of 8[^]*Sam Reyes, assessor/, /Example|Assessor/],
  example: [certificateText(DEMO, WATCHED), /Example only[^]*Supervised[^]*Observed[^]*worth nothing at work[^]*Ines Okafor/, /Genuine|unchanged/],
  "unknown-signer": [certificateText(STRANGER), /Genuine, but signer unknown[^]*unknown here/, /its signer is on/],
  "out-of-date": [certificateText(YARD, { retrainBy: "2026-05-31" }), /Out of date[^]*Do not let the work start[^]*31\sMay\s2026/, /Genuine record/],
  altered: [certificateText(YARD).replace("Ines", "Anes"), /Altered[^]*not what was signed/, /Okafor|Self-recorded/],
  unreadable: ["{}", /No certificate found[^]*the PDF itself/, new RegExp(UNCHANGED)],
};
for (const [kind, [text, words, never]] of Object.entries(CASES)) {
  test(`${kind} is said in words`, async () => {
    const { page, context, wrong } = await opened(inFolder());
    const verdict = await give(page, file(`${kind}.json`, text));
    assert.equal(verdict.kind, kind);
    assert.match(verdict.text, words);
    assert.doesNotMatch(verdict.text, never);
    assert.equal(verdict.isGood, kind === "genuine");
    assert.equal(await page.evaluate(() => document.activeElement?.tagName), "H2");
    // Before axe, which fetches the styles itself.
    assert.deepEqual(wrong, []);
    assert.deepEqual(await axe(page), []);
    await context.close();
  });
}

test("a genuine record does not vouch for the page that was printed around it", async () => {
  const { page, context } = await opened(inFolder());
  const verdict = await give(page, file("good.json", CASES.genuine[0]));
  assert.match(verdict.text, /Where the paper says something else than this, the paper is false/);
  assert.match(await page.$eval(".checking-limits", (part) => /** @type {HTMLElement} */ (part).innerText), /Compare the paper with what is shown here/);
  await context.close();
});

test("a file that cannot be read leaves nothing standing of the one before", async () => {
  const { page, context } = await opened(inFolder());
  assert.equal((await give(page, file("good.json", CASES.genuine[0]))).kind, "genuine");
  await page.evaluate(() => { Blob.prototype.arrayBuffer = () => Promise.reject(new DOMException("moved", "NotReadableError")); });
  const input = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await page.$("[data-drop] input"));
  await input.uploadFile(file("other.json", CASES.altered[0]));
  await page.waitForSelector("[data-verdict=unreadable]");
  assert.equal(await page.$$eval(ANSWER, (cards) => cards.length), 1);
  await context.close();
});

test("where two are given the answer is that of the second, however long the first takes", async () => {
  const { page, context } = await opened(inFolder());
  await page.evaluate(() => {
    const real = Blob.prototype.arrayBuffer;
    Blob.prototype.arrayBuffer = async function () {
      const whole = await real.call(this);
      // The first one is the longer.
      if (whole.byteLength > 100) await new Promise((done) => { Object.assign(window, { goOn: done }); });
      return whole;
    };
  });
  const input = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await page.$("[data-drop] input"));
  await input.uploadFile(file("good.json", CASES.genuine[0]));
  await page.waitForFunction(() => "goOn" in window);
  await input.uploadFile(file("none.json", CASES.unreadable[0]));
  await page.waitForSelector("[data-verdict=unreadable]");
  await page.evaluate(async () => {
    /** @type {any} */ (window).goOn();
    await new Promise((done) => { setTimeout(done, 300); });
  });
  assert.equal(await page.$eval(ANSWER, (card) => card.getAttribute("data-verdict")), "unreadable");
  await context.close();
});

/** The list is of 5 March 2026. @type {[number[], RegExp][]} */
const DAYS = [
  [[2026, 5, 5], /^Genuine record\s+Self-recorded/],
  [[2026, 5, 6], /The trust list is old: what was withdrawn since is not known here[^]*Self-recorded/],
  [[2026, 2, 4], /^Genuine record\s+Self-recorded/],
  [[2026, 2, 3], /The clock here is behind the day of the trust list[^]*Self-recorded/],
];
for (const [when, words] of DAYS) {
  test(`on ${new Date(Date.UTC(when[0], when[1], when[2])).toISOString().slice(0, 10)} it is said what the day of the list makes doubtful`, async () => {
    const { page, context } = await opened(inFolder());
    await page.evaluate((parts) => {
      const Real = Date;
      // @ts-ignore - only the constructor without a time is another
      globalThis.Date = class extends Real {
        /** @param {...any} given */
        constructor(...given) {
          // @ts-ignore
          super(...(given.length > 0 ? given : [...parts, 12]));
        }
      };
    }, when);
    const verdict = await give(page, file("good.json", CASES.genuine[0]));
    assert.match(verdict.text, words);
    await context.close();
  });
}

test("an example that is out of date is told to be both", async () => {
  const { page, context } = await opened(inFolder());
  const verdict = await give(page, file("old.json", certificateText(YARD, { retrainBy: "2026-05-31", example: true })));
  assert.equal(verdict.kind, "out-of-date");
  assert.match(verdict.text, /Out of date[^]*Example only: made to try things out/);
  await context.close();
});

test("a newer trust list withdraws a certificate, and a stranger's is not taken", async () => {
  const { page, context } = await opened(inFolder());
  assert.equal((await give(page, file("good.json", CASES.genuine[0]))).kind, "genuine");
  const list = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await page.$("[data-drop-list] input"));
  await list.uploadFile(file("stranger.json", trustText([STRANGER], { number: 9 })));
  await page.waitForFunction(() => /not signed by the signer/.test(document.querySelector("[data-list-answer]")?.textContent ?? ""));
  await list.uploadFile(file("trust.json", listed({ number: 2, withdrawn: [{ id: ID, on: "2026-05-01", reason: "wrong person" }] })));
  await page.waitForSelector("[data-verdict=withdrawn]");
  assert.match(await page.$eval(ANSWER, (card) => /** @type {HTMLElement} */ (card).innerText), /Withdrawn \(list of 5 March 2026\)[^]*1 May 2026: wrong person/);
  await context.close();
});

test("the record in a PDF and the pasted code give the same answer", async () => {
  const { page, context } = await opened(inFolder());
  const pdf = Buffer.concat([Buffer.from("%PDF-1.7\nstream\n"), deflateSync(CASES.genuine[0]), Buffer.from("\nendstream\n")]);
  assert.equal((await give(page, file("good.pdf", pdf))).kind, "genuine");
  await page.$eval("[data-answer]", (place) => place.replaceChildren());
  const code = codeOf(CASES.genuine[0]);
  await page.$eval("textarea", (field, text) => { field.value = text; }, code.replace(/.{70}/g, "$&\n"));
  await page.click("[data-code] button");
  await page.waitForSelector("[data-verdict=genuine]");
  // As a mail quotes it.
  await page.$eval("[data-answer]", (place) => place.replaceChildren());
  await page.$eval("textarea", (field, text) => { field.value = text; }, `> “${code.replace(/.{70}/g, "$&\n> ")}”\n`);
  await page.click("[data-code] button");
  await page.waitForSelector("[data-verdict=genuine]");
  assert.equal((await give(page, file("code.txt", `${code}\n`))).kind, "genuine");
  assert.equal((await give(page, file("cut.txt", code.slice(0, -9)))).kind, "unreadable");
  await context.close();
});

test("without a trust list the page says that it knows no signer", async () => {
  const { page, context } = await opened(fromFolder(PAGE));
  if (await page.$eval("[data-checking]", (place) => place.getAttribute("data-trust")) === "") {
    assert.match(await page.$eval("[data-trust-line]", (line) => line.textContent ?? ""), /built without a trust list/);
  }
  assert.equal((await give(page, file("stranger.json", CASES["unknown-signer"][0]))).kind, "unknown-signer");
  await context.close();
});

test("a list that was changed in the page is said to be so, and no signer is known by it", async () => {
  trusting(listed().replace("Sam Reyes", "Sam Rayes"));
  const { page, context, wrong } = await opened(inFolder());
  trusting(listed());
  assert.match(await page.$eval("[data-trust-line]", (line) => line.textContent ?? ""), /^None: the trust list in this page is not as it was signed/);
  assert.equal((await give(page, file("good.json", CASES.genuine[0]))).kind, "unknown-signer");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("over plain http, where the browser has no WebCrypto, the page says the same", async () => {
  const { page, context } = await opened(server.address.replace("127.0.0.1", SHOP) + PAGE);
  assert.equal(await page.evaluate(() => [isSecureContext, typeof crypto.subtle].join()), "false,undefined");
  for (const kind of Object.keys(CASES)) {
    assert.equal((await give(page, file(`${kind}.json`, CASES[kind][0]))).kind, kind);
  }
  await context.close();
});

test("without scripts the page says what it needs", { skip: WITHOUT_SCRIPT }, async () => {
  const { page, context } = await freshPage(browser, { script: false });
  await page.goto(inFolder());
  const text = await page.$eval("[data-without]", (line) => /** @type {HTMLElement} */ (line).innerText);
  assert.match(text, /Open this page in a browser that runs them[^]*journeybook verify FILE/);
  assert.equal(await page.$eval("[data-ways]", (ways) => getComputedStyle(ways).display), "none");
  await context.close();
});

for (const width of [320, 390, 1200]) {
  test(`nothing is wider than a page of ${width}`, async () => {
    const { page, context } = await opened(inFolder(), { width });
    await give(page, file("good.json", CASES.genuine[0]));
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    await context.close();
  });
}
