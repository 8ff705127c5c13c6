/**
 * What keeps a step from coming next. Twin of `refused` in builder/benches/orders.py.
 * @typedef {{steps: string[], before: string[][], rules: {first: string, then: string[], critical: boolean}[]}} AssemblyKey
 */
const Assembly = (() => {
  'use strict';

  /**
   * Both lists are empty where the step may come: the steps that must come before it, and the rules it would break, critical ones first.
   * @param {AssemblyKey} key @param {readonly string[]} done @param {string} step
   * @returns {{waits: string[], rules: number[]}}
   */
  function refused(key, done, step) {
    const there = new Set(done);
    const missing = new Set(key.before.filter(([first, then]) => then === step && !there.has(first)).map(([first]) => first));
    const broken = key.rules
      .map((rule, index) => ({ rule, index }))
      .filter(({ rule }) => rule.then.includes(step) && !there.has(rule.first));
    const ranked = [...broken.filter(({ rule }) => rule.critical), ...broken.filter(({ rule }) => !rule.critical)];
    return { waits: key.steps.filter((each) => missing.has(each)), rules: ranked.map(({ index }) => index) };
  }

  return Object.freeze({ refused });
})();
