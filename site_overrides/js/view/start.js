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
    /** @type {(() => void)[]} */
    // What only the check or the search needs is loaded only there.
    const steps = [
      () => OneFile.mount(),
      () => {
        if (typeof Search === "undefined") return;
        for (const place of Dom.all(document, "[data-search]")) OneFile.whenOpen(place, () => attempt(() => Search.mount(place)));
      },
      () => {
        for (const leaf of Dom.all(document, "[data-leaf]")) OneFile.whenOpen(leaf, () => attempt(() => PracticeView.mountAll(leaf, newSeed, attempt)));
      },
      () => {
        if (typeof BenchesOnPage === "undefined") return;
        for (const leaf of Dom.all(document, "[data-leaf]")) OneFile.whenOpen(leaf, () => attempt(() => BenchesOnPage.mountAll(leaf)));
      },
      () => {
        if (typeof CalculatorView === "undefined") return;
        for (const leaf of Dom.all(document, "[data-leaf]")) OneFile.whenOpen(leaf, () => attempt(() => CalculatorView.mountAll(leaf)));
      },
      () => {
        if (typeof CheckingView === "undefined") return;
        for (const place of Dom.all(document, "[data-checking]")) {
          OneFile.whenOpen(place, () => attempt(() => CheckingView.mount(place, { now, language, subtle: crypto.subtle })));
        }
      },
      // After the questions, whose set-up changes their height.
      () => {
        for (const leaf of Dom.all(document, "[data-leaf]")) OneFile.whenOpen(leaf, () => FarParts.layOut(leaf));
        FarParts.layOut();
      },
      () => CardView.mount(store, sheet),
      () => RouteView.mount(store, sheet, { now, language }),
      () => {
        if (typeof CheckView === "undefined") return;
        for (const desk of Dom.all(document, "[data-check-desk]")) {
          OneFile.whenOpen(desk, () => attempt(() => CheckView.mount(desk, store, sheet, { now, newSeed, language })));
        }
      },
    ];
    Slices.add(...steps.map((step) => () => attempt(step)));
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
