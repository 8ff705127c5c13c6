/**
 * A check that was handed in, read again from its attempt. Nothing is taken from the card's own line that the attempt
 * can say: marks, result and fingerprint come from the raw answers.
 * @typedef {{course: string, digest: string, percent: number, months: number, plan: Plan, keys: Record<string, Key>,
 *   outcomes: Record<string, string>}} CheckFacts what the page knows of its check
 * @typedef {{attempt: AttemptRecord, fingerprint: string, day: string, number: number, result: CheckResult | null}} HandedInCheck
 *   `number` counts from 1, as this device remembers; `result` is null where the page holds another state of the course
 */
const HandedIn = (() => {
  "use strict";

  /**
   * @param {CheckEntry} entry
   * @param {number} number
   * @param {CheckFacts} facts
   * @returns {HandedInCheck}
   */
  function read(entry, number, facts) {
    const attempt = /** @type {AttemptRecord} */ (Canonical.read(entry.attempt));
    const isOurs = attempt.course === facts.course && attempt.digest === facts.digest && CheckSession.hasItsForm(attempt, facts.plan);
    return {
      attempt,
      number,
      day: entry.day,
      fingerprint: Attempt.fingerprint(Sha256.utf8(entry.attempt)),
      result: isOurs ? mark(facts, attempt) : null,
    };
  }

  /** @param {CheckFacts} facts @param {AttemptRecord} attempt */
  function mark(facts, attempt) {
    const { plan, percent, outcomes, keys } = facts;
    return Result.check({ plan, percent, outcomes, keys, form: attempt.form, answers: attempt.answers });
  }

  /** Whether a text is an attempt's record, in its canonical form. @param {string} text */
  function isRecord(text) {
    try {
      const record = /** @type {any} */ (Canonical.read(text));
      return record?.format === Attempt.FORMAT && typeof record.card?.name === "string" && typeof record.seed === "string"
        && Array.isArray(record.form) && Array.isArray(record.avoid) && typeof record.answers === "object" && record.answers !== null;
    } catch {
      return false;
    }
  }

  return { read, mark, isRecord };
})();
