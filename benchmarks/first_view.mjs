// What a slow phone has to do before a page can be used: Chromium with its processor slowed four times, pages from loopback.
//
// Build first (`make site`). Each page is opened afresh a few times, pages in turn; medians are printed. "usable" is the later of
// the first paint with words and the end of what DOMContentLoaded set off, by the clock from the start of the navigation (goal:
// 1 s). All other columns are processor time of the page's main thread, which other work on the machine disturbs little: "busy" until
// the page came to rest, three parts of it, and the longest stretch without a pause in which a tap could be answered (goal: 50 ms)
// with what most of it was spent on; "other" there is the browser's own, such as looking through forms and handing over what was
// painted. Tracing itself adds to every column.
//
//   node benchmarks/first_view.mjs [site] [runs]
import { resolve } from "node:path";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const SITE = resolve(process.argv[2] ?? "site");
process.env.JOURNEYBOOK_SITE = SITE;
const RUNS = Number(process.argv[3] ?? 5);
const SLOWER = 4;
const { launch, serve, pause } = await import("../tests/browser/harness.mjs");
const { COURSE, LESSONS, ONE_FILE, PRACTICE } = await import("../tests/browser/course.mjs");

/** Where an event of the trace belongs. @type {Record<string, "html" | "layout" | "script">} */
const PARTS = {
  ParseHTML: "html", ParseAuthorStyleSheet: "layout", UpdateLayoutTree: "layout", Layout: "layout", PrePaint: "layout", Paint: "layout",
  Layerize: "layout", Commit: "layout", EvaluateScript: "script", FunctionCall: "script", "v8.compile": "script", EventDispatch: "script",
  TimerFire: "script", MinorGC: "script", MajorGC: "script", FireIdleCallback: "script",
};

/** `ts` by the clock, `tts` and `tdur` in processor time of the thread, microseconds. @typedef {{name: string, ph: string, ts: number, tts: number, tdur: number, tid: number, pid: number, args: any}} TraceEvent */
/** @typedef {{usable: number, busy: number, html: number, layout: number, script: number, longest: number, of: string}} Measured */

/**
 * Tasks of the page's main thread, each with the time of its parts; what stands within another event counts for the inner one.
 * @param {TraceEvent[]} events
 */
function tasksOf(events) {
  const main = events.find((each) => each.name === "thread_name" && each.args.name === "CrRendererMain" && events.some((one) =>
    one.name === "navigationStart" && one.pid === each.pid && one.tid === each.tid && /^(http|file)/.test(one.args?.data?.documentLoaderURL ?? "")));
  if (!main) throw new Error("the trace has no main thread");
  const mine = events.filter((each) => each.pid === main.pid && each.tid === main.tid);
  const begun = mine.find((each) => each.name === "navigationStart" && /^(http|file)/.test(each.args?.data?.documentLoaderURL ?? ""))?.ts ?? 0;
  const whole = mine.filter((each) => each.ph === "X" && each.ts >= begun && each.tdur !== undefined).sort((a, b) => a.ts - b.ts || b.tdur - a.tdur);
  /** @type {{start: number, length: number, parts: Record<string, number>}[]} */
  const tasks = [];
  /** @type {{end: number, part: string}[]} */
  let open = [];
  let at = 0;
  const spend = (/** @type {number} */ until) => {
    const task = tasks.at(-1);
    if (task && open.length > 0) {
      const { part } = open[open.length - 1];
      task.parts[part] = (task.parts[part] ?? 0) + (until - at) / 1000;
    }
    at = until;
  };
  const close = (/** @type {number} */ until) => {
    while (open.length > 0 && open[open.length - 1].end <= until) {
      spend(open[open.length - 1].end);
      open.pop();
    }
    spend(until);
  };
  for (const event of whole) {
    const end = event.tts + event.tdur;
    if (event.name === "RunTask") {
      close(event.tts);
      open = [{ end, part: "other" }];
      tasks.push({ start: (event.ts - begun) / 1000, length: event.tdur / 1000, parts: {} });
      at = event.tts;
    } else if (open.length > 0 && PARTS[event.name]) {
      close(event.tts);
      if (open.length > 0) open.push({ end: Math.min(end, open[0].end), part: PARTS[event.name] });
    }
  }
  close(Infinity);
  return tasks;
}

/** @param {import("puppeteer-core").Browser} browser @param {string} address @returns {Promise<Measured>} */
async function once(browser, address) {
  const folder = mkdtempSync(join(tmpdir(), "journeybook-trace-"));
  const context = await browser.createBrowserContext();
  try {
    const page = await context.newPage();
    await page.setViewport({ width: 390, height: 844, deviceScaleFactor: 1, hasTouch: true });
    await page.emulateCPUThrottling(SLOWER);
    const path = join(folder, "trace.json");
    await page.tracing.start({ path, categories: ["-*", "toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline", "blink.user_timing", "v8"] });
    await page.goto(address, { waitUntil: "load" });
    await pause(1500);
    const usable = await page.evaluate(() => {
      const [navigation] = /** @type {PerformanceNavigationTiming[]} */ (performance.getEntriesByType("navigation"));
      const paint = performance.getEntriesByName("first-contentful-paint")[0];
      return Math.max(navigation.domContentLoadedEventEnd, paint?.startTime ?? Infinity);
    });
    await page.tracing.stop();
    const tasks = tasksOf(JSON.parse(readFileSync(path, "utf8")).traceEvents).filter((task) => task.start < usable + 1400);
    const sum = (/** @type {string} */ part) => tasks.reduce((total, task) => total + (task.parts[part] ?? 0), 0);
    const longest = tasks.reduce((a, b) => (b.length > a.length ? b : a));
    const most = Object.entries(longest.parts).sort((a, b) => b[1] - a[1]).filter(([, part]) => part > longest.length / 4);
    return {
      usable, busy: tasks.reduce((total, task) => total + task.length, 0), html: sum("html"), layout: sum("layout"), script: sum("script"),
      longest: longest.length, of: most.map(([part, length]) => `${part} ${length.toFixed(0)}`).join(", "),
    };
  } finally {
    await context.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @param {number[]} numbers */
const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

const server = await serve();
const browser = await launch("chromium");
const lessons = [...LESSONS.values()];
const practised = LESSONS.get(PRACTICE.get("order").lesson);
const bySize = lessons.map((path) => ({ path, size: readFileSync(join(SITE, path ?? "")).length })).sort((a, b) => a.size - b.size);
/** @type {Record<string, string>} */
const pages = {
  "route card": `${COURSE}/index.html`,
  "lesson of middling length": bySize[Math.floor(bySize.length / 2)].path ?? "",
  "lesson with an order to practise": practised ?? "",
  "longest lesson": bySize[bySize.length - 1].path ?? "",
  "check": `${COURSE}/check.html`,
  "words": `${COURSE}/words.html`,
  "one file, at its front": ONE_FILE,
  "one file, at a lesson": `${ONE_FILE}#lesson-${PRACTICE.get("order").lesson}`,
};
/** @type {Record<string, Measured[]>} */
const measured = Object.fromEntries(Object.keys(pages).map((name) => [name, []]));
await once(browser, server.address + pages["route card"]);
for (let run = 0; run < RUNS; run += 1) {
  for (const [name, path] of Object.entries(pages)) measured[name].push(await once(browser, server.address + path));
}
const COLUMNS = /** @type {const} */ (["usable", "busy", "html", "layout", "script", "longest"]);
console.log(`${"ms, processor slowed 4 times".padEnd(34)}${COLUMNS.map((column) => column.padStart(9)).join("")}  of it`);
for (const [name, runs] of Object.entries(measured)) {
  const typical = [...runs].sort((a, b) => a.longest - b.longest)[Math.floor(runs.length / 2)];
  console.log(`${name.padEnd(34)}${COLUMNS.map((column) => median(runs.map((run) => run[column])).toFixed(0).padStart(9)).join("")}  ${typical.of}`);
}
await browser.close();
await server.stop();
