/**
 * Brings the benches of a page to life: one view a kind of bench, in one table.
 * @typedef {{
 *   read: () => Record<string, number> | null,
 *   write: (places: Record<string, number> | null) => void,
 *   lock: () => void,
 * }} LiveBench `read` and `write`: control -> place, counted from 0; null while nobody has moved any
 * @typedef {{ data: any, changed: () => void }} BenchHost `data`: what Python gave for this bench
 */
const BenchesOnPage = (() => {
  "use strict";

  /** @type {Record<string, (section: HTMLElement, host: BenchHost) => LiveBench | null>} */
  const KINDS = {
    fan: FanBench.mount,
    assembly: AssemblyBench.mount,
  };

  /** What Python gave for each bench, by its id; in the one-file edition it stands in the page. @type {Record<string, any> | null} */
  let received = null;

  /** Those of a leaf that stand in its text; one above a question comes to life with the question. @param {HTMLElement} within */
  function mountAll(within) {
    for (const section of Dom.all(within, ".bench")) {
      if (!section.closest(".question")) mount(section, () => {});
    }
  }

  /** @param {HTMLElement} section @param {() => void} changed called after each change by the learner @returns {LiveBench | null} */
  function mount(section, changed) {
    received ??= JSON.parse(document.getElementById("bench-data")?.textContent || "{}");
    const data = received?.[section.dataset.bench || ""];
    const bench = data ? KINDS[data.kind]?.(section, { data, changed }) ?? null : null;
    section.classList.toggle("bench-live", bench !== null);
    return bench;
  }

  /** Takes the data of every bench of the course, where they are a file of their own. @param {Record<string, any>} benches */
  function receive(benches) {
    received = benches;
  }

  return { mountAll, mount, receive };
})();
