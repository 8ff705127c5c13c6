// The whole way of a certificate, in a stock browser and by the commands: a sealed sitting is opened, answered and handed in; what came back is
// marked and vouched for; certificates are signed; and the checking page of the firm's site says what each is worth, from its PDF and its code.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath, pathToFileURL } from "node:url";
import { rightAnswer } from "./course.mjs";
import { freshPage, launch, saved, serve, SHOP } from "./harness.mjs";
import { asked, ASKED, give, press, says, seen } from "./learner.mjs";
import * as sheet from "./sheet.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const PYTHON = resolve(process.env.PYTHON ?? join(ROOT, ".venv/bin/python"));
const SIGNING = "guard mango river stone ladder zebra";
const yard = mkdtempSync(join(tmpdir(), "journeybook-yard-"));
const project = join(yard, "project");
const privately = join(yard, "private");
/** @type {any} */ let sitting;
/** @type {import("puppeteer-core").Browser} */ let browser;
/** @type {Awaited<ReturnType<typeof serve>>} */ let server;

const now = new Date();
const today = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;

before(async () => {
  execFileSync(PYTHON, [join(ROOT, "tests/browser/make_yard.py"), yard, today], { stdio: "pipe" });
  sitting = JSON.parse(readFileSync(join(privately, "class.sitting.json"), "utf8"));
  browser = await launch();
  mkdirSync(join(yard, "room"));
  copyFileSync(join(privately, "class.html"), join(yard, "room", "class.html"));
  server = await serve(yard);
});

after(async () => {
  await browser.close();
  await server.stop();
  rmSync(yard, { recursive: true });
});

/** A command of ours in the firm's folder; what it says, and its exit code. @param {string[]} words @param {string} [input] */
function journeybook(words, input = "") {
  const done = spawnSync(join(dirname(PYTHON), "journeybook"), words, { cwd: project, encoding: "utf8", input, stdio: ["pipe", "pipe", "pipe", "pipe"] });
  return { said: done.stdout + done.stderr, code: done.status };
}

/** As it is typed at a shop's own network: plain http, no secure context. @param {string} path */
const onNetwork = (path) => server.address.replace("127.0.0.1", SHOP) + path;
/** @param {string} path */
const asFile = (path) => pathToFileURL(join(yard, path)).href;

/**
 * One person's sitting, every answer right, up to the saved record in `private/came-back`.
 * @param {string} address @param {{ticket: string, name: string}} person
 */
async function sit(address, person) {
  const { page, context, wrong, asked: requests } = await freshPage(browser);
  await page.goto(address);
  await page.type("#sitting-passphrase", sitting.passphrase);
  await page.type("#sitting-ticket", person.ticket);
  await page.keyboard.press("Enter");
  await page.waitForSelector(".sitting-name", { timeout: 60_000 });
  await press(page, "body", /^Yes, begin$/);
  for (;;) {
    const one = await asked(page);
    await give(page, ASKED, one.key, rightAnswer(one.key, one.variant));
    if (one.at === one.of) break;
    await press(page, ".check-run", "Next");
    await says(page, ".check-run h2", new RegExp(`Question ${one.at + 1} of`));
  }
  await press(page, ".check-run", "To handing in");
  await press(page, ".check-confirm", /^Hand in( as it is)?$/);
  await seen(page, ".fingerprint");
  const print = (await page.$$eval(".fingerprint span", (groups) => groups.map((group) => group.textContent))).join("-");
  const record = await saved(page, () => press(page, "body", /^Save the record/));
  mkdirSync(join(privately, "came-back"), { recursive: true });
  copyFileSync(record.path, join(privately, "came-back", `${person.ticket}.json`));
  assert.deepEqual(wrong, []);
  assert.deepEqual(requests.filter((each) => !each.startsWith(address) && !/^(data|blob):|favicon/.test(each)), []);
  await context.close();
  return print;
}

/**
 * One practical of the first person, seen done on the page of the firm's site, up to the saved record in `private/came-back`.
 * @param {string} address @param {string} slug
 */
async function watch(address, slug) {
  const { page, context, wrong } = await freshPage(browser);
  await sheet.open(page, address);
  await sheet.writeNames(page, { ...sheet.NAMES, workplace: "Slip 2" }, slug);
  await sheet.confirmAll(page);
  await sheet.markAll(page);
  await sheet.choose(page, "competent");
  const record = await saved(page, () => sheet.pressButton(page, "Save the record"));
  await page.waitForSelector(".practical-saved:not([hidden])");
  const print = await sheet.fingerprint(page);
  copyFileSync(record.path, join(privately, "came-back", `${slug}.json`));
  assert.deepEqual(wrong, []);
  await context.close();
  return print;
}

/** What the checking page says. @param {string} address @param {(page: import("puppeteer-core").Page) => Promise<unknown>} hand */
async function checked(address, hand) {
  const { page, context, wrong } = await freshPage(browser);
  await page.goto(address);
  await page.waitForFunction(() => (document.querySelector("[data-trust-line]")?.textContent ?? "") !== "");
  await hand(page);
  await page.waitForSelector("[data-answer] [data-verdict]");
  const found = await page.$eval("[data-answer] [data-verdict]", (card) => ({ kind: card.getAttribute("data-verdict"), text: /** @type {HTMLElement} */ (card).innerText }));
  assert.deepEqual(wrong, []);
  await context.close();
  return found;
}

test("a class goes from the sealed page to certificates that the checking page knows", { timeout: 500_000 }, async (t) => {
  const [robin, kay] = sitting.people;
  const prints = {
    [robin.ticket]: await sit(asFile("room/class.html"), robin),
    [kay.ticket]: await sit(onNetwork("room/class.html"), kay),
  };

  const course = sitting.course;
  const practicals = readdirSync(join(project, "site", course, "practical")).filter((name) => name.endsWith(".html")).sort();
  assert.ok(practicals.length > 1);
  const observed = [];
  for (const [at, name] of practicals.entries()) {
    const address = `project/site/${course}/practical/${name}`;
    observed.push(await watch(at % 2 ? onNetwork(address) : asFile(address), `practical-${name.replace(".html", "")}`));
  }

  const taken = journeybook(["mark", join(privately, "came-back"), "--sitting", join(privately, "class.sitting.json")]);
  assert.equal(taken.code, 0, taken.said);
  assert.match(taken.said, new RegExp(`In all: ${2 + observed.length} taken in`));
  assert.equal(taken.said.match(/knowledge check passed/g)?.length, 2);
  assert.match(journeybook(["mark", join(privately, "came-back"), "--sitting", join(privately, "class.sitting.json")]).said, new RegExp(`In all: ${2 + observed.length} already held`));

  const list = join(privately, "signed.csv");
  const signed = [...Object.entries(prints), ...observed.map((print) => [robin.ticket, print])];
  writeFileSync(list, ["ticket,fingerprint,identity", ...signed.map(([ticket, print]) => `${ticket},${print},yes`)].join("\n"));
  const vouched = journeybook(["vouch", join(privately, "class.sitting.json"), "--by", "T. Marrable", "--list", list]);
  assert.equal(vouched.code, 0, vouched.said);

  const into = join(privately, "certificates");
  const certified = journeybook(
    ["certify", join(privately, "class.sitting.json"), "--key", join(privately, "marrable.pem"), "--into", into, "--passphrase-fd", "0"],
    `${SIGNING}\n`,
  );
  assert.equal(certified.code, 0, certified.said);
  const papers = readdirSync(into).filter((name) => name.endsWith(".pdf")).sort();
  assert.equal(papers.length, 2, certified.said);
  const again = journeybook(
    ["certify", join(privately, "class.sitting.json"), "--key", join(privately, "marrable.pem"), "--into", into, "--passphrase-fd", "0"],
    `${SIGNING}\n`,
  );
  assert.match(again.said, /already issued/i);
  assert.deepEqual(readdirSync(into).filter((name) => name.endsWith(".pdf")).sort(), papers);

  for (const [way, address] of Object.entries({ file: asFile(`project/site/${course}/checking.html`), http: onNetwork(`project/site/${course}/checking.html`), "one file": asFile(`project/site/${course}.html`) + "#checking" })) {
    for (const name of papers) {
      const found = await checked(address, async (page) => {
        const input = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await page.$("[data-drop] input"));
        await input.uploadFile(join(into, name));
      });
      // A demo key, so that nobody takes it for more than it is.
      assert.equal(found.kind, "example", `${way}: ${found.text}`);
      assert.match(found.text, name.includes("Ashdown") ? /Supervised[^]*Observed[^]*Robin Ashdown/ : /Supervised[^]*Not observed[^]*Kay Ferriby/);
    }
  }

  const paper = join(into, papers[0]);
  const code = execFileSync(PYTHON, [join(ROOT, "tests/browser/read_code.py"), paper], { encoding: "utf8" });
  assert.match(code, /^JB1:/);
  t.diagnostic(`the code that was read off the paper has ${code.length} signs`);
  const pasted = await checked(onNetwork(`project/site/${course}/checking.html`), async (page) => {
    await page.$eval("textarea", (area, text) => { area.value = text; }, code);
    await press(page, "[data-code]", "Check this code");
  });
  assert.equal(pasted.kind, "example");
  const verified = journeybook(["verify", paper, "--json"]);
  assert.equal(JSON.parse(verified.said)[0].kind, "example", verified.said);

  // One byte of the record inside the paper is another one, everything else as it was.
  const spoilt = join(privately, "spoilt.json");
  const record = readFileSync(paper.replace(/\.pdf$/, ".json"), "utf8");
  writeFileSync(spoilt, record.replace("supervised", "supervisef"));
  const worse = await checked(asFile(`project/site/${course}/checking.html`), async (page) => {
    const input = /** @type {import("puppeteer-core").ElementHandle<HTMLInputElement>} */ (await page.$("[data-drop] input"));
    await input.uploadFile(spoilt);
  });
  assert.equal(worse.kind, "unreadable");
});
