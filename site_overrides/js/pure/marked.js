/**
 * What every kind of question shares in marking: the weight, the rounding, and what an answer must look like.
 * Twin of builder/marking/kind.py.
 */
const Marks = (() => {
  'use strict';

  const WEIGHT = 1000;

  /**
   * numerator/denominator of a question's weight, halves rounded up, by integers only.
   * @param {number} numerator
   * @param {number} denominator
   * @returns {number}
   */
  function thousandths(numerator, denominator) {
    return Math.floor((2 * WEIGHT * numerator + denominator) / (2 * denominator));
  }

  /** @param {string} kind @returns {Marked} */
  function malformed(kind) {
    return { mark: 0, remarks: { kind, problem: 'malformed' } };
  }

  /**
   * The answer as a list of different texts, all of them allowed; otherwise null.
   * @param {unknown} answer
   * @param {readonly string[]} allowed
   * @returns {string[] | null}
   */
  function distinctTexts(answer, allowed) {
    if (!Array.isArray(answer)) return null;
    const chosen = new Set(answer);
    if (chosen.size !== answer.length) return null;
    return answer.every((each) => typeof each === 'string' && allowed.includes(each)) ? answer : null;
  }

  /** @param {unknown} value @returns {value is Record<string, unknown>} */
  function isMapping(value) {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
  }

  return Object.freeze({ WEIGHT, thousandths, malformed, distinctTexts, isMapping });
})();
