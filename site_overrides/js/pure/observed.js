/**
 * Which reasons keep a practical from being *competent*. Twin of `against_competent` in builder/marking/observed.py:
 * the page offers the word only where the employer's reader would let it stand.
 * @typedef {["safety" | "stopped" | "step", string]} AgainstCompetent why, and which step
 * @typedef {{id: string, seen: string, prompted: boolean}} SeenStep
 */
const Observed = (() => {
  "use strict";

  /** Whether the person showed the step without help. @param {SeenStep} step */
  function isShown(step) {
    return step.seen === "yes" && !step.prompted;
  }

  /**
   * @param {{safety: boolean[], stopped: boolean, steps: SeenStep[], critical: string[]}} sheet steps in the order of the practical
   * @returns {AgainstCompetent[]}
   */
  function against({ safety, stopped, steps, critical }) {
    /** @type {AgainstCompetent[]} */
    const found = [];
    if (!safety.every(Boolean)) found.push(["safety", ""]);
    if (stopped) found.push(["stopped", ""]);
    for (const step of steps) if (critical.includes(step.id) && !isShown(step)) found.push(["step", step.id]);
    return found;
  }

  return Object.freeze({ against, isShown });
})();
