// Opens the built site the ways a learner does: from a server, from its folder, or as one file, in a stock browser.
import { createServer } from "node:http";
import { mkdtempSync, rmSync } from "node:fs";
import { readFile, readdir, rename } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { extname, join, normalize, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import puppeteer from "puppeteer-core";

const require = createRequire(import.meta.url);
const axeSource = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");

export const SITE = resolve(required("JOURNEYBOOK_SITE"));

/** @param {string} name */
function required(name) {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: run these through pytest`);
  return value;
}

/** @type {Record<string, string>} */
const TYPES = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript", ".json": "application/json",
  ".woff2": "font/woff2", ".svg": "image/svg+xml", ".pdf": "application/pdf" };

/**
 * Serves a folder on loopback; returns its address and a way to stop it.
 * @param {string} [folder]
 * @param {(path: string, body: Buffer) => Buffer | string} [change] what is served in place of a file's own bytes
 */
export async function serve(folder = SITE, change = (_, body) => body) {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname);
    const file = normalize(join(folder, path.endsWith("/") ? path + "index.html" : path));
    try {
      if (!file.startsWith(folder + sep)) throw new Error("outside");
      const body = change(path, await readFile(file));
      response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" }).end(body);
    } catch {
      response.writeHead(404, { "content-type": "text/plain" }).end("not there");
    }
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", () => done(undefined)));
  const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
  return {
    address: `http://127.0.0.1:${port}/`,
    stop: () => new Promise((done) => {
      server.close(done);
      server.closeAllConnections();
    }),
  };
}

/** A name on a shop's own network, which both browsers take for this machine: over plain http it is no secure context. */
export const SHOP = "shop.example";

const CHROMIUM = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync", `--host-resolver-rules=MAP ${SHOP} 127.0.0.1`];

/** Where each browser puts what it saves. @type {WeakMap<import("puppeteer-core").Browser, string>} */
const downloads = new WeakMap();

/** In which browser a file of tests runs that does not say so itself: `chromium` or `firefox`. */
export const BROWSER = /** @type {"chromium" | "firefox"} */ (process.env.JOURNEYBOOK_BROWSER ?? "chromium");

/** Why a test without scripts is left out; `false` where it runs. */
export const WITHOUT_SCRIPT = BROWSER === "firefox" && "Firefox cannot be told over WebDriver BiDi to leave scripts off";

/** @param {"chromium" | "firefox"} name */
export async function launch(name = BROWSER) {
  const folder = mkdtempSync(join(tmpdir(), "journeybook-saved-"));
  const browser = await (name === "chromium"
    ? puppeteer.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: CHROMIUM })
    : puppeteer.launch({
      browser: "firefox", executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr", headless: true,
      extraPrefsFirefox: {
        "browser.download.folderList": 2, "browser.download.dir": folder, "browser.download.useDownloadDir": true,
        "browser.download.always_ask_before_handling_new_types": false,
        "browser.helperApps.neverAsk.saveToDisk": "application/json", "network.dns.localDomains": SHOP,
      },
    }));
  downloads.set(browser, folder);
  browser.once("disconnected", () => rmSync(folder, { recursive: true, force: true }));
  return browser;
}

/**
 * Does something that saves a file, and returns that file's name, place and bytes.
 * @param {import("puppeteer-core").Page} page
 * @param {() => Promise<unknown>} act
 */
export async function saved(page, act) {
  const folder = /** @type {string} */ (downloads.get(page.browser()));
  await act();
  for (const end = Date.now() + 10_000; Date.now() < end; await pause(40)) {
    const name = (await readdir(folder)).find((each) => each.endsWith(".json"));
    if (!name) continue;
    const bytes = await readFile(join(folder, name));
    // The name may be there before the bytes are.
    if (!parses(bytes)) continue;
    // Out of the way, so that the next file may bear the same name.
    const path = join(mkdtempSync(join(folder, "kept-")), name);
    await rename(join(folder, name), path);
    return { name, path, bytes };
  }
  throw new Error(`nothing was saved within 10 s; the folder holds ${[...await readdir(folder)].join(", ") || "nothing"}`);
}

/** @param {Buffer} bytes */
function parses(bytes) {
  try {
    JSON.parse(bytes.toString("utf8"));
    return true;
  } catch {
    return false;
  }
}

/** @param {number} milliseconds */
export const pause = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

/** The address of a file of the site when opened from its folder. @param {string} path */
export const fromFolder = (path) => pathToFileURL(join(SITE, path)).href;

/**
 * A fresh page, with nothing kept from any other, that remembers everything that went wrong in it.
 * @param {import("puppeteer-core").Browser} browser
 * @param {{ width?: number, height?: number, scale?: number, script?: boolean, before?: () => void }} [wish]
 *   `before` runs in each document before its own scripts
 */
export async function freshPage(browser, { width = 1100, height = 900, scale = 1, script = true, before } = {}) {
  const folder = /** @type {string} */ (downloads.get(browser));
  const isChromium = /chrom/i.test(await browser.version());
  const context = await browser.createBrowserContext(isChromium ? { downloadBehavior: { policy: "allow", downloadPath: folder } } : {});
  const page = await context.newPage();
  await page.setViewport({ width, height, deviceScaleFactor: scale });
  if (!script) await page.setJavaScriptEnabled(false);
  if (before) await page.evaluateOnNewDocument(before);
  /** @type {string[]} */
  const wrong = [];
  page.on("pageerror", (error) => wrong.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error" && !/favicon/.test(message.text() + message.location().url)) wrong.push(message.text());
  });
  /** @type {string[]} */
  const asked = [];
  page.on("request", (request) => asked.push(request.url()));
  return { page, context, wrong, asked };
}

/**
 * What axe finds on the page as it stands, as readable lines.
 * @param {import("puppeteer-core").Page} page
 * @param {string[]} [rules] only these; all of them where none are named
 */
export async function axe(page, rules = []) {
  if (!await page.evaluate("'axe' in window")) await page.evaluate(axeSource);
  const found = await page.evaluate(async (only) => {
    const options = { resultTypes: ["violations"], ...(only.length > 0 ? { runOnly: only } : {}) };
    // @ts-ignore - axe has just been put there
    const result = await window.axe.run(document, options);
    return result.violations.map((/** @type {any} */ v) => `${v.id}: ${v.help} — ${v.nodes.slice(0, 3).map((/** @type {any} */ n) => n.html.slice(0, 160)).join(" | ")}`);
  }, rules);
  return /** @type {string[]} */ (found);
}

/** Every HTML page of the site, as paths relative to it. */
export async function everyPage() {
  const entries = await readdir(SITE, { recursive: true });
  return entries.filter((name) => name.endsWith(".html")).map((name) => name.split(sep).join("/")).sort();
}
