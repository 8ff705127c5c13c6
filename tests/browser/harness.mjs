// Opens the built site the ways a learner does: from a server, from its folder, or as one file, in a stock browser.
import { createServer } from "node:http";
import { readFile, readdir } from "node:fs/promises";
import { createRequire } from "node:module";
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

const TYPES = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript", ".json": "application/json",
  ".woff2": "font/woff2", ".svg": "image/svg+xml", ".pdf": "application/pdf" };

/** Serves a folder on loopback; returns its address and a way to stop it. */
export async function serve(folder = SITE) {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname);
    const file = normalize(join(folder, path.endsWith("/") ? path + "index.html" : path));
    if (!file.startsWith(folder + sep)) return response.writeHead(403).end();
    try {
      const body = await readFile(file);
      response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" }).end(body);
    } catch {
      response.writeHead(404, { "content-type": "text/plain" }).end("not there");
    }
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", () => done(undefined)));
  const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
  return { address: `http://127.0.0.1:${port}/`, stop: () => new Promise((done) => server.close(done)) };
}

const CHROMIUM = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync"];

/** @param {"chromium" | "firefox"} name */
export function launch(name) {
  return name === "chromium"
    ? puppeteer.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: CHROMIUM })
    : puppeteer.launch({ browser: "firefox", executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr", headless: true });
}

/** The address of a file of the site when opened from its folder. @param {string} path */
export const fromFolder = (path) => pathToFileURL(join(SITE, path)).href;

/**
 * A fresh page that remembers everything that went wrong in it.
 * @param {import("puppeteer-core").Browser} browser
 * @param {{ width?: number, height?: number, script?: boolean }} [wish]
 */
export async function freshPage(browser, { width = 1100, height = 900, script = true } = {}) {
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  await page.setViewport({ width, height });
  if (!script) await page.setJavaScriptEnabled(false);
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
 */
export async function axe(page) {
  await page.evaluate(axeSource);
  const found = await page.evaluate(async () => {
    // @ts-ignore - axe has just been put there
    const result = await window.axe.run(document, { resultTypes: ["violations"] });
    return result.violations.map((/** @type {any} */ v) => `${v.id}: ${v.help} — ${v.nodes.slice(0, 3).map((/** @type {any} */ n) => n.html.slice(0, 160)).join(" | ")}`);
  });
  return /** @type {string[]} */ (found);
}

/** Every HTML page of the site, as paths relative to it. */
export async function everyPage() {
  const entries = await readdir(SITE, { recursive: true });
  return entries.filter((name) => name.endsWith(".html")).map((name) => name.split(sep).join("/")).sort();
}
