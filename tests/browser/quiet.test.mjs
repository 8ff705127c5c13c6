// Nothing leaves the device: no request beyond the page's own files, no foreign script runs, and no page complains.
import assert from "node:assert/strict";
import { pathToFileURL } from "node:url";
import { after, before, test } from "node:test";
import { COURSE, ONE_FILE, oneFile, PRACTICE, rightAnswer, site, wrongAnswer } from "./course.mjs";
import { everyPage, freshPage, fromFolder, launch, pause, saved, serve, SITE } from "./harness.mjs";
import { AGAIN, answerAll, answerPractice, beginCard, beginCheck, handIn, leaf, open, press, says } from "./learner.mjs";

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<unknown>}} */
let server;

before(async () => {
  browser = await launch("chromium");
  server = await serve();
});
after(async () => {
  await browser.close();
  await server.stop();
});

/** Runs before the page's own scripts: what the policy stopped is written down. */
const watchPolicy = () => {
  Object.assign(window, { stopped: [] });
  document.addEventListener("securitypolicyviolation", (event) => {
    // @ts-ignore - put there above
    window.stopped.push(`${event.effectiveDirective} ${event.blockedURI}`);
  });
};

/** @param {import("puppeteer-core").Page} page @returns {Promise<string[]>} */
const stopped = async (page) => /** @type {string[]} */ (await page.evaluate("window.stopped"));

test("over http, no page asks for anything beyond its server, says an error, or breaks its own policy", async () => {
  await visitAll((path) => server.address + path, server.address);
});

test("from its folder, no page asks for anything beyond the folder, says an error, or breaks its own policy", async () => {
  await visitAll(fromFolder, `${pathToFileURL(SITE).href}/`);
});

test("the one-file edition asks for nothing but itself, whichever leaf is open", async () => {
  const { page, context, wrong, asked } = await freshPage(browser, { before: watchPolicy });
  await page.goto(fromFolder(ONE_FILE));
  const leaves = await page.$$eval("[data-leaf]", (all) => all.map((each) => each.getAttribute("data-leaf") ?? ""));
  assert.ok(leaves.length > 10);
  for (const slug of leaves) await open(page, oneFile(), slug);
  await settled(page);
  assert.deepEqual(foreign(asked), [fromFolder(ONE_FILE)]);
  assert.deepEqual(wrong, []);
  assert.deepEqual(await stopped(page), []);
  await context.close();
});

const PLACES = {
  "over http": () => `${server.address}${COURSE}/check.html`,
  "from its folder": () => fromFolder(`${COURSE}/check.html`),
  "in the one-file edition": () => fromFolder(ONE_FILE),
};
for (const [way, address] of Object.entries(PLACES)) {
  test(`the policy stops a foreign script, an inline handler, an image and a request, ${way}`, async () => {
    const { page, context } = await freshPage(browser, { before: watchPolicy });
    await page.goto(address());
    await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "window.reached = 'script'";
      document.body.append(script);
      const button = document.createElement("button");
      button.setAttribute("onclick", "window.reached = 'handler'");
      document.body.append(button);
      button.click();
      const image = document.createElement("img");
      image.src = "https://elsewhere.invalid/x.png";
      document.body.append(image);
      const outside = document.createElement("script");
      outside.src = "https://elsewhere.invalid/x.js";
      document.body.append(outside);
      // Not waited for: where nothing stops it, a name that does not exist can take minutes to fail.
      fetch("https://elsewhere.invalid/x").catch(() => {});
    });
    await settled(page);
    assert.equal(await page.evaluate("window.reached"), undefined);
    const found = (await stopped(page)).map((line) => line.split(" ")[0]).sort();
    assert.deepEqual(found, ["connect-src", "img-src", "script-src-attr", "script-src-elem", "script-src-elem"]);
    await context.close();
  });
}

test("the policy stops a script that stands in the page's own HTML", async (t) => {
  const altered = await serve(SITE, (path, body) => path.endsWith("/kit.html")
    ? body.toString("utf8").replace("</main>", "<script>window.reached = 'script'</script><b onmouseover=\"window.reached = 'handler'\">here</b></main>") : body);
  t.after(() => altered.stop());
  const { page, context } = await freshPage(browser, { before: watchPolicy });
  await page.goto(`${altered.address}${COURSE}/kit.html`);
  await page.hover("main > b");
  await settled(page);
  assert.equal(await page.evaluate("window.reached"), undefined);
  assert.deepEqual((await stopped(page)).map((line) => line.split(" ")[0]).sort(), ["script-src-attr", "script-src-elem"]);
  await context.close();
});

const WORK = { "from its folder": () => site(fromFolder), "in the one-file edition": oneFile };
for (const [way, made] of Object.entries(WORK)) {
  test(`practice of every kind, the check, the certificate and a saved file ask for nothing and break no policy, ${way}`, async () => {
    const { page, context, wrong, asked } = await freshPage(browser, { before: watchPolicy });
    const edition = made();
    /** @type {string[]} */
    const broken = [];
    await beginCard(page, edition, "Ada Winch");
    for (const { lesson, id, key } of PRACTICE.values()) {
      const question = `${leaf(`lesson-${lesson}`)} [data-question="${id}"]`;
      await open(page, edition, `lesson-${lesson}`);
      await answerPractice(page, question, key, wrongAnswer(key, 0));
      await press(page, question, AGAIN);
      await answerPractice(page, question, key, rightAnswer(key, 0));
      await says(page, `${question} .remark`, /^Right/);
      broken.push(...await stopped(page));
    }
    await beginCheck(page, edition);
    await answerAll(page);
    await handIn(page);
    await saved(page, () => press(page, leaf("check"), "Save the attempt to a file"));
    await settled(page);
    broken.push(...await stopped(page));
    assert.deepEqual(broken, []);
    assert.deepEqual(wrong, []);
    assert.deepEqual(foreign(asked).filter((address) => !address.startsWith(`${pathToFileURL(SITE).href}/`)), []);
    await context.close();
  });
}

/** @param {(path: string) => string} address @param {string} home */
async function visitAll(address, home) {
  const { page, context, wrong, asked } = await freshPage(browser, { before: watchPolicy });
  for (const path of await everyPage()) {
    await page.goto(address(path));
    await settled(page);
    assert.deepEqual(await stopped(page), [], path);
    assert.deepEqual(wrong, [], path);
  }
  assert.ok(asked.length > 60, `${asked.length} requests`);
  assert.deepEqual(foreign(asked).filter((one) => !one.startsWith(home)), []);
  await context.close();
}

/** What was fetched from somewhere: data in the page and blobs made by it are not. @param {string[]} asked */
function foreign(asked) {
  return asked.filter((address) => !/^(data|blob):/.test(address));
}

/** Long enough for a refused load to be reported. @param {import("puppeteer-core").Page} page */
async function settled(page) {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0))));
  await pause(40);
}
