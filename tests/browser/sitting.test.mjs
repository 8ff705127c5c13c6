// A sitting in a stock browser: from a file, and at a plain http address, where the browser has no cryptography of its own.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath, pathToFileURL } from "node:url";
import puppeteer from "puppeteer-core";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const PASSPHRASE = "guard mango river stone ladder zebra";
const folder = mkdtempSync(join(tmpdir(), "sitting-"));
/** @type {any} */ let sitting;
/** @type {import("puppeteer-core").Browser} */ let browser;
/** @type {import("node:http").Server} */ let server;

before(async () => {
  execFileSync(join(ROOT, ".venv/bin/python"), [join(ROOT, "tests/browser/make_sitting.py"), folder]);
  sitting = JSON.parse(readFileSync(join(folder, "class.sitting.json"), "utf8"));
  browser = await puppeteer.launch({ executablePath: "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--host-resolver-rules=MAP shop.example 127.0.0.1"] });
  server = createServer((_, response) => response.writeHead(200, { "content-type": "text/html; charset=utf-8" }).end(readFileSync(join(folder, "class.html"))));
  await new Promise((done) => server.listen(0, "127.0.0.1", () => done(undefined)));
});

after(async () => {
  await browser.close();
  server.close();
  rmSync(folder, { recursive: true });
});

/** @param {import("puppeteer-core").Page} page @param {string} passphrase @param {string} ticket */
async function type(page, passphrase, ticket) {
  await page.type("#sitting-passphrase", passphrase);
  await page.type("#sitting-ticket", ticket);
  await page.keyboard.press("Enter");
}

/** @param {import("puppeteer-core").Page} page @param {RegExp} words */
async function press(page, words) {
  const found = await page.evaluateHandle((source) => [...document.querySelectorAll("button")]
    .find((each) => new RegExp(source).test(each.textContent || "") && !each.closest("[hidden]")), words.source);
  await /** @type {import("puppeteer-core").ElementHandle} */ (found.asElement()).click();
}

for (const where of ["file", "http"]) {
  test(`what was answered outlives a reload, and is handed in once (${where})`, { timeout: 90_000 }, async () => {
    const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
    const address = where === "file" ? pathToFileURL(join(folder, "class.html")).href : `http://shop.example:${port}/`;
    const ticket = sitting.people[0].ticket;
    const page = await browser.newPage();
    await page.goto(address);
    assert.equal(await page.evaluate(() => Boolean(crypto.subtle)), where === "file");
    await type(page, PASSPHRASE.toUpperCase(), ticket.toLowerCase().replace("-", " "));
    await page.waitForSelector(".sitting-name", { timeout: 60_000 });
    assert.equal(await page.$eval(".sitting-name", (name) => name.textContent), sitting.people[0].name);
    await press(page, /^Yes, begin$/);
    await page.waitForSelector(".check-run");
    assert.equal(await page.$(".check-run .answer"), null);
    await page.reload();
    await type(page, PASSPHRASE, ticket);
    await page.waitForSelector(".sitting-name", { timeout: 60_000 });
    await press(page, /^Yes, go on$/);
    await press(page, /^Hand in$/);
    await press(page, /^Hand in/);
    const print = await page.$$eval(".fingerprint span", (groups) => groups.map((group) => group.textContent));
    assert.equal(print.length, 4);
    await page.reload();
    await type(page, PASSPHRASE, ticket);
    await page.waitForSelector(".sitting-done", { timeout: 60_000 });
    assert.deepEqual(await page.$$eval(".fingerprint span", (groups) => groups.map((group) => group.textContent)), print);
    await page.close();
  });
}
