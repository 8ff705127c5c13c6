/** Starts the page of a sitting. The only file of it that asks the browser for the time, for storage and for cryptography. */
const SittingBegin = (() => {
  "use strict";

  function start() {
    const desk = Dom.one(document, "[data-sitting]");
    const record = JSON.parse(Dom.one(document, "#sealed").textContent || "{}");
    const beginnings = new Set((Dom.one(document, "#beginnings").textContent || "").trim().split(" "));
    DrillPace.keepIn(() => window.localStorage, () => window.matchMedia("(prefers-reduced-motion: reduce)").matches);
    SittingView.mount(desk, {
      record, beginnings,
      now: () => new Date(),
      storage: () => window.localStorage,
      subtle: globalThis.crypto?.subtle,
      language: document.documentElement.lang || "en",
    });
  }

  if (document.readyState === "complete") start();
  else document.addEventListener("DOMContentLoaded", start);

  return { start };
})();
