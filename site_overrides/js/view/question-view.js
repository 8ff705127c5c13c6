/**
 * One question on the page: its control by kind, its answer, its variant, its reasons.
 * @typedef {{changed: () => void, keyOrder: (ids: string[]) => string[]}} ControlHost
 * @typedef {{
 *   arrange: (ids: string[]) => void,
 *   read: () => unknown,
 *   write: (raw: unknown) => void,
 *   draft: () => any,
 *   restore?: (draft: any) => void,
 *   missing: () => string,
 *   partial?: () => boolean,
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

  /** @type {Record<string, {mount: (section: HTMLElement, host: ControlHost) => Control}>} */
  const KINDS = {
    choice: ControlOptions,
    choices: ControlOptions,
    order: ControlOrder,
    match: ControlMatch,
    number: ControlNumber,
  };

  /**
   * @param {HTMLElement} section
   * @param {any} key the marking key
   * @param {() => void} changed called after every change of the answer by the learner
   * @returns {QuestionOnPage}
   */
  function mount(section, key, changed) {
    const kind = section.dataset.kind || "";
    const factory = KINDS[kind];
    if (!factory) throw new Error(`No control for the kind ${kind}.`);
    const listed = key.options || [];
    const control = factory.mount(section, {
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
