/**
 * What a whole check comes to. Twin of builder/marking/result.py.
 */
const Result = (() => {
  'use strict';

  /**
   * The result of one form.
   * @param {{
   *   plan: Plan, percent: number, outcomes: Record<string, string>, keys: Record<string, Key>,
   *   form: readonly Asked[], answers: Record<string, unknown>,
   * }} facts `outcomes` maps question ids to outcome ids
   * @returns {CheckResult}
   */
  function check({ plan, percent, outcomes, keys, form, answers }) {
    /** @type {Map<string, number>} */
    const marks = new Map();
    /** @type {string[]} */
    const critical = [];
    /** @type {Map<string, { marks: number, of: number }>} */
    const byOutcome = new Map();
    for (const asked of form) {
      const answer = Object.hasOwn(answers, asked.q) ? answers[asked.q] : null;
      const { mark: earned, remarks } = Mark.mark(keys[asked.q], asked.variant, answer);
      if (endedCritically(remarks)) critical.push(asked.q);
      const outcome = outcomes[asked.q];
      const share = byOutcome.get(outcome) ?? { marks: 0, of: 0 };
      byOutcome.set(outcome, { marks: share.marks + earned, of: share.of + Mark.WEIGHT });
      marks.set(asked.q, earned);
    }
    const mustPass = plan.gates.flatMap((gate) =>
      gate.questions
        .filter((question) => marks.has(question))
        .map((question) => ({ fact: gate.fact, question, mark: marks.get(question) ?? 0 })),
    );
    const total = Array.from(marks.values()).reduce((sum, each) => sum + each, 0);
    const of = Mark.WEIGHT * form.length;
    return {
      marks: total,
      of,
      percent,
      cut: leastPassing(percent, of),
      passed: total * 100 >= percent * of && mustPass.every((gate) => gate.mark === Mark.WEIGHT) && critical.length === 0,
      'must-pass': mustPass,
      critical,
      outcomes: Object.fromEntries(byOutcome),
      questions: Object.fromEntries(marks),
    };
  }

  /** A critical error in a drill; an order's critical pairs cost only its own marks. @param {any} remarks */
  function endedCritically(remarks) {
    return remarks.kind === 'drill' && Boolean(remarks.critical);
  }

  /**
   * The least marks that are `percent` of `of`, rounded up.
   * @param {number} percent
   * @param {number} of a multiple of 1000, so that nothing is lost
   * @returns {number}
   */
  function leastPassing(percent, of) {
    return Math.ceil((percent * of) / 100);
  }

  return Object.freeze({ check, leastPassing });
})();
