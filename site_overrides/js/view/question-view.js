/**
 * One question on the page: its control by kind, its answer, its variant, its reasons. A control with `settles` is answered as
 * soon as it can be read, and `settles` is what its button to begin anew says.
 * @typedef {{key: any, changed: () => void, keyOrder: (ids: string[]) => string[]}} ControlHost
 * @typedef {{
 *   arrange: (ids: string[]) => void,
 *   read: () => unknown,
 *   write: (raw: unknown) => void,
 *   draft: () => any,
 *   restore?: (draft: any) => void,
 *   missing: () => string,
 *   partial?: () => boolean,
 *   settles?: string,
 *   askAgain?: (problem: string, takeFocus?: boolean) => void,
 *   judge: (marked: any, key: any) => void,
 *   unjudge: () => void,
 * }} Control
 * @typedef {{
 *   section: HTMLElement, id: string, control: Control,
 *   useVariant: (variant: number) => void,
 *   judge: (marked: any) => void,
 *   unjudge: () => void,
 *   answer: HTMLDetailsElement,
 * }} QuestionOnPage
 */
const QuestionView = (() => {
  "use strict";

  /** Asked for when a question is there: some scripts are loaded only on pages with such questions. @type {Record<string, () => {mount: (section: HTMLElement, host: ControlHost) => Control}>} */
  const KINDS = {
    choice: () => ControlOptions,
    choices: () => ControlOptions,
    order: () => ControlOrder,
    match: () => ControlMatch,
    number: () => ControlNumber,
    spot: () => ControlSpot,
    triage: () => ControlTriage,
    drill: () => ControlDrill,
    setting: () => ControlBench,
  };

  /**
   * @param {HTMLElement} section
   * @param {any} key the marking key
   * @param {() => void} changed called after every change of the answer by the learner
   * @returns {QuestionOnPage}
   */
  function mount(section, key, changed) {
    const kind = section.dataset.kind || "";
    const factory = KINDS[kind]?.();
    if (!factory) throw new Error(`No control for the kind ${kind}.`);
    // A setting is answered with its bench; above any other question it is there to find out.
    const bench = kind === "setting" ? null : section.querySelector(".bench");
    if (bench instanceof HTMLElement) BenchesOnPage.mount(bench, () => {});
    const listed = key.options || [];
    const control = factory.mount(section, {
      key,
      changed,
      keyOrder: (ids) => listed.filter((/** @type {string} */ id) => ids.includes(id)),
    });
    Dom.one(section, "form").addEventListener("submit", (event) => event.preventDefault());
    section.classList.add("live");
    let judged = false;

    return {
      section,
      id: section.dataset.question || "",
      control,
      answer: /** @type {HTMLDetailsElement} */ (Dom.one(section, ".answer")),
      useVariant(variant) {
        section.dataset.variant = String(variant);
        for (const part of Dom.all(section, "[data-variant]")) part.hidden = part.dataset.variant !== String(variant);
      },
      judge(marked) {
        control.judge(marked, key);
        judged = true;
      },
      unjudge() {
        if (!judged) return;
        control.unjudge();
        judged = false;
      },
    };
  }

  return { mount };
})();
