/**
 * A check that was handed in, read again from its attempt. Nothing is taken from the card's own line that the attempt
 * can say: marks, result and fingerprint come from the raw answers, and the day must be that of its end.
 * @typedef {{course: string, version: string, digest: string, profile: string, language: string, percent: number, months: number,
 *   plan: Plan, keys: Record<string, Key>, outcomes: Record<string, string>}} CheckFacts what the page knows of its check
 * @typedef {{attempt: AttemptRecord, fingerprint: string, day: string, number: number, result: CheckResult | null}} HandedInCheck
 *   `number` counts from 1, as this device remembers; `result` is null where the page holds another state of the course
 */
const HandedIn = (() => {
  "use strict";

  /** What an attempt and the page must have in common for the one to be marked by the other. */
  const OF_ONE_STATE = /** @type {const} */ (["course", "version", "digest", "profile", "language"]);

  /** What a line of a card says of the result, besides the attempt itself. */
  const NUMBERS = /** @type {const} */ (["marks", "of", "percent", "passed"]);

  /**
   * @param {CheckEntry} entry
   * @param {number} number
   * @param {CheckFacts} facts
   * @returns {HandedInCheck}
   */
  function read(entry, number, facts) {
    const attempt = /** @type {AttemptRecord} */ (Canonical.read(entry.attempt));
    const isOurs = OF_ONE_STATE.every((name) => attempt[name] === facts[name]) && CheckSession.hasItsForm(attempt, facts.plan);
    return {
      attempt,
      number,
      day: isDayOf(entry.day, attempt.ended) ? entry.day : attempt.ended.slice(0, 10),
      fingerprint: Attempt.fingerprint(Sha256.utf8(entry.attempt)),
      result: isOurs ? mark(facts, attempt) : null,
    };
  }

  /** @param {CheckFacts} facts @param {AttemptRecord} attempt */
  function mark(facts, attempt) {
    const { plan, percent, outcomes, keys } = facts;
    return Result.check({ plan, percent, outcomes, keys, form: attempt.form, answers: attempt.answers });
  }

  /**
   * The lines of a card with marks and result as their answers earn them; a line of another state of the course stays as it
   * is. The very same array where every line is true already.
   * @param {CheckEntry[]} lines @param {CheckFacts} facts
   */
  function trued(lines, facts) {
    const marked = lines.map((line, index) => {
      const { result } = read(line, index + 1, facts);
      const isTrue = !result || NUMBERS.every((name) => result[name] === line[name]);
      return isTrue ? line : { ...line, marks: result.marks, of: result.of, percent: result.percent, passed: result.passed };
    });
    return marked.every((line, index) => line === lines[index]) ? lines : marked;
  }

  /**
   * Whether a day of some wall calendar can be that of a moment: local time is at most 14 hours from UTC.
   * @param {string} day @param {string} moment
   */
  function isDayOf(day, moment) {
    const noon = Date.parse(`${day}T12:00:00Z`);
    return Math.abs(noon - Date.parse(moment)) <= (12 + 14) * 3_600_000;
  }

  /**
   * Whether a line of a card, and the course it stands under, say what its attempt says. Marks are not looked at: they
   * need the keys, and `read` takes them from the answers.
   * @param {CheckEntry} line @param {string} course
   */
  function agrees(line, course) {
    const record = /** @type {AttemptRecord} */ (Canonical.read(line.attempt));
    return record.course === course && record.version === line.version && record.digest === line.digest
      && record.ended === line.ended && isDayOf(line.day, record.ended)
      && Attempt.fingerprint(Sha256.utf8(line.attempt)) === line.fingerprint
      && record.form.map((asked) => asked.q).join(" ") === line.questions.join(" ");
  }

  /** Whether a text is an attempt's record, in its canonical form. @param {string} text */
  function isRecord(text) {
    try {
      const record = Canonical.read(text);
      return Attempt.isRecord(record) && Dates.isInstant(record.started) && Dates.isInstant(record.ended);
    } catch {
      return false;
    }
  }

  return { read, mark, trued, agrees, isRecord };
})();
