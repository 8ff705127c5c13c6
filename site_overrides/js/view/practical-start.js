/** Starts the form of each practical. The only file of it that asks the browser for the time and for storage. */
const PracticalStart = (() => {
  "use strict";

  function start() {
    for (const leaf of Dom.all(document, '[data-leaf][data-kind="practical"]')) OneFile.whenOpen(leaf, () => attempt(leaf));
  }

  /** Where it fails the sheet for the hand is still there. @param {HTMLElement} leaf */
  function attempt(leaf) {
    try {
      PracticalView.mount(leaf, { now: () => new Date(), storage: () => window.localStorage, language: document.documentElement.lang || "en" });
    } catch (error) {
      console.error(error);
      leaf.prepend(Dom.make("p", { class: "script-failed", role: "status" },
        Words.say("The form does not work in this browser. Print the sheet and fill it in by hand.")));
    }
  }

  // After the steps of `Start`, which say which leaf of the one-file edition is open.
  const later = () => Slices.add(start);
  if (document.readyState === "complete") later();
  else document.addEventListener("DOMContentLoaded", later);

  return { start };
})();
