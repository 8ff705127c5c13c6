/** Puts everything in its place. The only file that asks the browser for the time, for chance and for storage. */
const Start = (() => {
  "use strict";

  /** 128 random bits in hexadecimal. crypto.getRandomValues also works on plain http and from file://. */
  function newSeed() {
    return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
  }

  const now = () => new Date();

  function start() {
    const language = document.documentElement.lang || "en";
    const store = CardStore.open(() => window.localStorage);
    const sheet = CardDialog.make(store, { newId: newSeed, now });
    if (typeof DrillPace !== "undefined") DrillPace.keepIn(() => window.localStorage, () => window.matchMedia("(prefers-reduced-motion: reduce)").matches);
    /** @type {(() => unknown)[]} */
    // What only the check or the search needs is loaded only there.
    const steps = [
      () => OneFile.mount(),
      () => typeof Search !== "undefined" && inEach("[data-search]", Search.mount),
      () => inEach("[data-leaf]", (leaf) => PracticeView.mountAll(leaf, newSeed, attempt)),
      () => typeof BenchesOnPage !== "undefined" && inEach("[data-leaf]", BenchesOnPage.mountAll),
      () => typeof CalculatorView !== "undefined" && inEach("[data-leaf]", CalculatorView.mountAll),
      () => typeof CheckingView !== "undefined" && inEach("[data-checking]", (place) => CheckingView.mount(place, now, language)),
      // After the questions, whose set-up changes their height.
      () => {
        inEach("[data-leaf]", FarParts.layOut);
        FarParts.layOut();
      },
      () => CardView.mount(store, sheet),
      () => RouteView.mount(store, sheet, { now, language }),
      () => typeof CheckView !== "undefined" && inEach("[data-check-desk]", (desk) => CheckView.mount(desk, store, sheet, { now, newSeed, language })),
    ];
    Slices.add(...steps.map((step) => () => attempt(step)));
  }

  /** Mounts something in every such place, once the leaf that holds it is open. @param {string} selector @param {(place: HTMLElement) => void} mount */
  function inEach(selector, mount) {
    for (const place of Dom.all(document, selector)) OneFile.whenOpen(place, () => attempt(() => mount(place)));
  }

  /** One part that fails leaves the others, and the page itself, as they are. @param {() => void} step */
  function attempt(step) {
    try {
      step();
    } catch (error) {
      console.error(error);
      const main = document.querySelector("main");
      if (main && !main.querySelector(".script-failed")) {
        main.prepend(Dom.make("p", { class: "script-failed", role: "status" },
          Words.say("A part of this page does not work in this browser. You can still read everything; answers and reasons stand under each question.")));
      }
    }
  }

  OneFile.prepare();
  if (document.readyState === "complete") start();
  else document.addEventListener("DOMContentLoaded", start);

  return { start };
})();
