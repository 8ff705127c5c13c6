// Filling in the sheet of a practical the way an assessor does.
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { COURSE } from "./course.mjs";
import { everyPage } from "./harness.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
export const PRACTICAL = (await everyPage()).filter((path) => path.startsWith(`${COURSE}/practical/`))[0];
/** What begins every id of its leaf. */
export const SLUG = `practical-${(PRACTICAL.split("/").pop() ?? "").replace(".html", "")}`;
export const NAMES = { name: "Robin Ashdown", number: "0417", workplace: "Quillon Basin Works", unit: "unit 3", place: "the hardstanding",
  assessor: "R. Tansley", role: "foreman", basis: "named by the works manager" };

/** @typedef {import("puppeteer-core").Page} Page */

/** Opens the sheet and waits until it is a form. @param {Page} page @param {string} address */
export async function open(page, address) {
  await page.goto(address);
  await page.waitForSelector(".practical.live");
}

/** Presses what the selector finds, away from the bar at the foot of the screen. @param {Page} page @param {string} selector */
export async function press(page, selector) {
  const found = await page.waitForSelector(selector);
  await found?.evaluate((each) => each.scrollIntoView({ block: "center" }));
  await found?.click();
}

/** Presses the button that reads so. @param {Page} page @param {string} words */
export async function pressButton(page, words) {
  const found = await page.evaluateHandle((wanted) => [...document.querySelectorAll("button")]
    .find((each) => each.textContent === wanted && each.checkVisibility()), words);
  const button = /** @type {import("puppeteer-core").ElementHandle<Element>} */ (found.asElement());
  if (!button) throw new Error(`no button reads ${words}`);
  await button.evaluate((each) => each.scrollIntoView({ block: "center" }));
  await button.click();
}

/** @param {Page} page @param {Record<string, string>} [names] @param {string} [slug] of another practical than the first */
export async function writeNames(page, names = NAMES, slug = SLUG) {
  for (const [name, text] of Object.entries(names)) await page.type(`#${slug}-line-${name}`, text);
}

/** @param {Page} page */
export async function confirmAll(page) {
  const count = await page.$$eval(".live .confirm-box input", (all) => all.length);
  for (let line = 1; line <= count; line += 1) await press(page, `.live .confirm > li:nth-child(${line}) .confirm-box`);
}

/** The steps on the page: id of the row, and whether the step is critical. @param {Page} page */
export function stepsOf(page) {
  return page.$$eval(".live .observed tbody tr", (all) => all.map((row) => ({ row: row.id, critical: row.classList.contains("is-critical") })));
}

/** @param {Page} page @param {string} row @param {"yes" | "no" | "not-seen"} seen */
export function mark(page, row, seen) {
  return press(page, `#${row} .mark-choice:has([value="${seen}"])`);
}

/** @param {Page} page */
export async function markAll(page) {
  for (const { row } of await stepsOf(page)) await mark(page, row, "yes");
}

/** @param {Page} page @param {"competent" | "not-yet-competent"} result */
export function choose(page, result) {
  return press(page, `.result-choice:has([value="${result}"])`);
}

/** What a selector finds, as one line of words. @param {Page} page @param {string} selector */
export function words(page, selector) {
  return page.$eval(selector, (each) => (each.textContent ?? "").replace(/\s+/g, " ").trim());
}

/** The fingerprint on the screen. @param {Page} page */
export async function fingerprint(page) {
  const groups = await page.$$eval(".practical-saved .fingerprint span", (all) => all.map((each) => each.textContent));
  return groups.join("-");
}

/** What the employer's reader says of a file, or of pasted codes. @param {string} path @param {string} [codes] */
export function employerReads(path, codes) {
  const said = execFileSync(process.env.PYTHON ?? join(ROOT, ".venv/bin/python"), [join(ROOT, "tests/browser/read_observation.py"), path], { cwd: ROOT, input: codes ?? "", encoding: "utf8" });
  return JSON.parse(said);
}
