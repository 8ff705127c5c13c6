/**
 * What an answer is worth: one small function for each kind of question, in one table.
 * Twin of builder/marking/mark.py and the files it names.
 */
const Mark = (() => {
  'use strict';

  const { WEIGHT, thousandths, malformed, distinctTexts, isMapping } = Marks;

  /** @param {ChoiceKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function choice(key, _variant, answer) {
    if (typeof answer !== 'string' || !key.options.includes(answer)) return malformed('choice');
    return { mark: answer === key.right ? WEIGHT : 0, remarks: { kind: 'choice' } };
  }

  /** @param {ChoicesKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function choices(key, _variant, answer) {
    const chosen = distinctTexts(answer, key.options);
    if (chosen === null) return malformed('choices');
    const missed = key.right.filter((option) => !chosen.includes(option));
    const extra = key.options.filter((option) => chosen.includes(option) && !key.right.includes(option));
    /** @type {Remarks} */
    const remarks = { kind: 'choices', missed, extra };
    if (key.whole) return { mark: missed.length === 0 && extra.length === 0 ? WEIGHT : 0, remarks };
    const right = key.right.length;
    const wrongOptions = key.options.length - right;
    const numerator = (right - missed.length) * wrongOptions - extra.length * right;
    return { mark: thousandths(Math.max(0, numerator), right * wrongOptions), remarks };
  }

  /** @param {OrderKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function order(key, _variant, answer) {
    const ordered = distinctTexts(answer, key.steps);
    if (ordered === null || ordered.length !== key.steps.length) return malformed('order');
    const broken = Precedence.broken(key.before, ordered);
    const critical = Precedence.broken(key.critical, ordered);
    const kept = Math.max(0, key.before.length - 2 * broken.length);
    return {
      mark: critical.length > 0 ? 0 : thousandths(kept, key.before.length),
      remarks: { kind: 'order', broken, critical, moves: Precedence.fewestMoves(broken) },
    };
  }

  /** @param {MatchKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function match(key, _variant, answer) {
    if (!isMapping(answer)) return malformed('match');
    const given = Object.entries(answer);
    if (!given.every(([item]) => key.items.includes(item))) return malformed('match');
    if (distinctTexts(given.map(([, partner]) => partner), key.answers) === null) return malformed('match');
    const chosen = new Map(given);
    const wrong = key.items.filter((item) => chosen.get(item) !== key.pairs[item]);
    return { mark: thousandths(key.items.length - wrong.length, key.items.length), remarks: { kind: 'match', wrong } };
  }

  /** @param {NumberKey} key @param {number} variant @param {unknown} answer @returns {Marked} */
  function number(key, variant, answer) {
    const members = isMapping(answer) ? Object.keys(answer).sort().join(' ') : '';
    const { value, unit } = isMapping(answer) ? answer : { value: undefined, unit: undefined };
    if (members !== 'unit value' || typeof value !== 'string' || typeof unit !== 'string') {
      return numberRefused('malformed', '');
    }
    const typed = Numbers.readTyped(value);
    const problem = typed.problem || unitProblem(key, unit);
    if (problem !== '') return numberRefused(problem, typed.read);
    const factor = unit === '' ? '1' : key.units[unit];
    const accepted = key.variants[variant];
    /** @type {NumberRemarks} */
    const remarks = { kind: 'number', read: typed.read, problem: '' };
    if (Numbers.within(typed, factor, accepted)) return { mark: WEIGHT, remarks };
    const slip = (accepted.slips ?? []).findIndex((interval) => Numbers.within(typed, factor, interval));
    return { mark: 0, remarks: slip < 0 ? remarks : { ...remarks, slip } };
  }

  /** @param {NumberKey} key @param {string} unit @returns {string} */
  function unitProblem(key, unit) {
    if (unit === '') return key['unit-needed'] ? 'unit-missing' : '';
    return Object.hasOwn(key.units, unit) ? '' : 'unit-unknown';
  }

  /** @param {string} problem @param {string} read @returns {Marked} */
  function numberRefused(problem, read) {
    return { mark: 0, remarks: { kind: 'number', read, problem } };
  }

  /** @type {Record<string, (key: any, variant: number, answer: unknown) => Marked>} */
  const KINDS = { choice, choices, order, match, number, drill: MarkByHand.drill, spot: MarkByHand.spot, triage: MarkByHand.triage, setting: MarkByHand.setting };

  /**
   * Mark and remarks for a raw answer; null is no answer. Never throws over an answer.
   * @param {Key} key
   * @param {number} variant counts from 0
   * @param {unknown} answer
   * @returns {Marked}
   */
  function mark(key, variant, answer) {
    if (answer === null || answer === undefined) {
      if (key.kind === 'number') return numberRefused('empty', '');
      return { mark: 0, remarks: { kind: key.kind, problem: 'unanswered' } };
    }
    const of = KINDS[key.kind];
    if (of === undefined) throw new RangeError(`no such kind of question: ${key.kind}`);
    return of(key, variant, answer);
  }

  return Object.freeze({ WEIGHT, mark, thousandths });
})();
