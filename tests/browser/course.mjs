// What the built course holds, read from its own pages: where its leaves are, and the right answer to each question.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { everyPage, fromFolder, SITE } from "./harness.mjs";

const pages = await everyPage();
const found = pages.find((path) => /^[^/]+\/check\.html$/.test(path));
if (!found) throw new Error("the site holds no course with a check");

/** The demo course's id. */
export const COURSE = found.split("/")[0];
export const ONE_FILE = `${COURSE}.html`;
/** The data that stand in a page for its scripts. @param {string} path @param {string} slug */
export function dataOf(path, slug) {
  const script = new RegExp(`<script type="application/json" data-for="${slug}">(.*?)</script>`, "s").exec(readFileSync(join(SITE, path), "utf8"));
  return script ? JSON.parse(script[1]) : {};
}

/** Lesson id -> its page, in the order of the course. @type {Map<string, string>} */
export const LESSONS = new Map(dataOf(`${COURSE}/index.html`, "card").lessons.map((/** @type {{id: string}} */ { id }) =>
  [id, pages.find((path) => path.startsWith(`${COURSE}/`) && path.endsWith(`/${id}.html`))]));

/** What the scripts know of each bench of the course, by its id. @type {Record<string, any>} */
export const BENCHES = JSON.parse((/\((.*)\);\s*$/s.exec(readFileSync(join(SITE, COURSE, "bench-data.js"), "utf8")) ?? ["", "{}"])[1]);

/** Percent, plan and keys of the check. */
export const CHECK = dataOf(found, "check").check;

/** Kind -> the first practice question of that kind: its lesson, id and key. */
export const PRACTICE = new Map();
for (const [lesson, path] of LESSONS) {
  for (const [id, { key }] of Object.entries(dataOf(path, `lesson-${lesson}`).practice ?? {})) {
    if (!PRACTICE.has(key.kind)) PRACTICE.set(key.kind, { lesson, id, key });
  }
}

/**
 * An edition of the course as addresses: of the route card, the check, a lesson.
 * @typedef {{address: (slug: string) => string, isOneFile: boolean}} Edition
 */

/** The many pages, below a server's address or from the folder. @param {(path: string) => string} base @returns {Edition} */
export function site(base) {
  return {
    isOneFile: false,
    address: (slug) => base(slug.startsWith("lesson-") ? LESSONS.get(slug.slice(7)) ?? "" : slug === "card" ? `${COURSE}/index.html` : `${COURSE}/${slug}.html`),
  };
}

export const folder = () => site(fromFolder);

/** @param {string} [address] of the one file; from its folder unless told @returns {Edition} */
export function oneFile(address = fromFolder(ONE_FILE)) {
  return { isOneFile: true, address: (slug) => `${address}#${slug}` };
}

/** A raw answer that earns the whole weight. @param {any} key @param {number} variant */
export function rightAnswer(key, variant) {
  switch (key.kind) {
    case "choice":
    case "choices": return key.right;
    case "order": return sorted(key);
    case "match": return key.pairs;
    case "spot": return key.right;
    case "triage": return key.right;
    case "number": return { value: decimalWithin(key.variants[variant]), unit: key.unit };
    case "drill": return wayTo(key, (mark) => mark === 1000);
    case "setting": return settings(key, (accepted) => accepted);
    default: throw new Error(`no right answer is known for the kind ${key.kind}`);
  }
}

/** A raw answer, whole but not right. @param {any} key @param {number} variant */
export function wrongAnswer(key, variant) {
  switch (key.kind) {
    case "choice": return key.options.find((/** @type {string} */ id) => id !== key.right);
    case "choices": return key.options.filter((/** @type {string} */ id) => !key.right.includes(id));
    case "order": return sorted(key).reverse();
    case "match": return Object.fromEntries(key.items.map((/** @type {string} */ item, /** @type {number} */ at) => [item, key.pairs[key.items[(at + 1) % key.items.length]]]));
    case "spot": return key.spots.find((/** @type {string} */ id) => id !== key.right);
    case "triage": return Object.fromEntries(key.units.map((/** @type {string} */ unit) => [unit, key.places[(key.places.indexOf(key.right[unit]) + 1) % key.places.length]]));
    case "drill": return wayTo(key, (mark) => mark < 1000);
    case "setting": return settings(key, (accepted) => !accepted);
    case "number": return { value: String(Math.ceil(fraction(key.variants[variant].high)) * 2 + 12345), unit: key.unit };
    default: throw new Error(`no wrong answer is known for the kind ${key.kind}`);
  }
}

/** The first combination of places that is accepted, or that is not. @param {any} key @param {(accepted: boolean) => boolean} fits */
function settings(key, fits) {
  const all = key.counts.reduce((/** @type {number[][]} */ made, /** @type {number} */ count) =>
    made.flatMap((places) => Array.from({ length: count }, (_, place) => [...places, place])), [[]]);
  const places = all.find((/** @type {number[]} */ each) => fits(key.accepted.some((/** @type {number[]} */ one) => String(one) === String(each))));
  return Object.fromEntries(key.controls.map((/** @type {string} */ control, /** @type {number} */ at) => [control, places[at]]));
}

/** Steps so that every pair stands in its order. @param {any} key @returns {string[]} */
function sorted(key) {
  const waiting = [...key.steps];
  const order = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex((step) => !key.before.some((/** @type {string[]} */ [first, then]) => then === step && waiting.includes(first)));
    order.push(...waiting.splice(next, 1));
  }
  return order;
}

/**
 * The deeds of the first way through a drill that ends without a critical error and with such a mark.
 * @param {any} key @param {(mark: number) => boolean} fits @param {string} [here] @param {number} [penalty] @param {string[]} [deeds] @returns {string[] | null}
 */
export function wayTo(key, fits, here = key.start, penalty = 0, deeds = []) {
  if (here in key.ends) return fits(Math.max(0, key.ends[here] - penalty)) ? deeds : null;
  for (const [deed, done] of Object.entries(key.moments[here])) {
    const way = done.critical ? null : wayTo(key, fits, done.to, penalty + done.penalty, [...deeds, deed]);
    if (way) return way;
  }
  return null;
}

/** The first critical error of a drill, with the right deeds before it. @param {any} key @returns {string[]} */
export function criticalWay(key) {
  /** @type {string[]} */
  const way = rightAnswer(key, 0);
  /** @type {string[]} */
  const deeds = [];
  for (let here = key.start; ;) {
    const wrong = Object.keys(key.moments[here]).find((deed) => key.moments[here][deed].critical);
    if (wrong) return [...deeds, wrong];
    const right = way[deeds.length];
    deeds.push(right);
    here = key.moments[here][right].to;
  }
}

/** @param {string} text `n` or `n/d` */
function fraction(text) {
  const [above, below = "1"] = text.split("/");
  return Number(above) / Number(below);
}

/** The shortest decimal between low and high. @param {{low: string, high: string}} range */
function decimalWithin({ low, high }) {
  for (let places = 0; places < 12; places += 1) {
    const text = ((fraction(low) + fraction(high)) / 2).toFixed(places);
    if (Number(text) >= fraction(low) && Number(text) <= fraction(high)) return text;
  }
  throw new Error(`no short decimal lies between ${low} and ${high}`);
}
