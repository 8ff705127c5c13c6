// Every link and fragment of every page leads to something that is there, and no document has an id twice.
import assert from "node:assert/strict";
import { existsSync, statSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { ONE_FILE } from "./course.mjs";
import { everyPage, freshPage, fromFolder, launch, SITE } from "./harness.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
/** Path of a page -> its ids and links as the browser reads them, templates included. @type {Map<string, {ids: string[], links: string[], refers: string[]}>} */
const read = new Map();

before(async () => {
  browser = await launch("chromium");
  const { page } = await freshPage(browser, { script: false });
  for (const path of await everyPage()) {
    await page.goto(fromFolder(path));
    read.set(path, await page.evaluate(() => {
      const within = (/** @type {ParentNode} */ root, /** @type {string} */ selector) => {
        /** @type {Element[]} */
        const found = [...root.querySelectorAll(selector)];
        for (const template of root.querySelectorAll("template")) found.push(...within(template.content, selector));
        return found;
      };
      return {
        ids: within(document, "[id]").map((each) => each.id),
        links: within(document, "[href], [src]").map((each) => each.getAttribute("href") ?? each.getAttribute("src") ?? ""),
        refers: within(document, "[for], [aria-labelledby], [aria-describedby]").flatMap((each) =>
          ["for", "aria-labelledby", "aria-describedby"].flatMap((name) => (each.getAttribute(name) ?? "").split(/\s+/).filter(Boolean))),
      };
    }));
  }
});
after(() => browser.close());

test("no page has an id twice", () => {
  const twice = [...read].flatMap(([path, { ids }]) => ids.filter((id, at) => ids.indexOf(id) !== at).map((id) => `${path}: ${id}`));
  assert.deepEqual(twice, []);
});

test("every link within the site leads to a file and a place that are there", () => {
  const lost = [];
  let followed = 0;
  for (const [path, { links }] of read) {
    for (const link of links) {
      if (/^(data:|https?:|mailto:)/.test(link)) continue;
      followed += 1;
      const target = new URL(link, fromFolder(path));
      const file = fileURLToPath(new URL(target.pathname, "file:///"));
      const place = decodeURIComponent(target.hash.slice(1));
      const to = file.slice(SITE.length + 1);
      if (!file.startsWith(SITE) || !existsSync(file) || !statSync(file).isFile()) lost.push(`${path}: ${link} is not there`);
      else if (place && !read.get(to)?.ids.includes(place)) lost.push(`${path}: ${link} has no such place`);
    }
  }
  assert.ok(followed > 500, `${followed} links followed`);
  assert.deepEqual(lost, []);
});

test("the one-file edition links to nothing but its own places", () => {
  const links = read.get(ONE_FILE)?.links ?? [];
  assert.ok(links.length > 200);
  assert.deepEqual(links.filter((link) => !/^(#[a-z]|data:)/.test(link)), []);
});

test("every label and description names an element of its page", () => {
  const lost = [...read].flatMap(([path, { ids, refers }]) => refers.filter((id) => !ids.includes(id)).map((id) => `${path}: ${id}`));
  assert.deepEqual(lost, []);
});

test("no page but the one-file edition stands outside the site's way: each is linked from another", () => {
  const reached = new Set([...read].flatMap(([path, { links }]) => links.filter((link) => !link.startsWith("data:")).map((link) => fileURLToPath(new URL(new URL(link, fromFolder(path)).pathname, "file:///")))));
  const alone = [...read.keys()].filter((path) => path !== "index.html" && !reached.has(join(SITE, path)));
  assert.deepEqual(alone, []);
});
