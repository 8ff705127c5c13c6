/**
 * One learner's card: what was read, which checks were handed in, and a check that is under way. All functions
 * return a new card.
 * @typedef {{ended: string, day: string, marks: number, of: number, percent: number, passed: boolean,
 *   version: string, digest: string, fingerprint: string, questions: string[], attempt: string}} CheckEntry
 *   `attempt` is the canonical text of the record
 * @typedef {{read: Record<string, string>, checks: CheckEntry[], session: SessionState | null}} CourseEntry
 *   `read` maps lessons to days
 * @typedef {{id: string, name: string, workplace: string, made: string, courses: Record<string, CourseEntry>}} Card
 */
const CardRecord = (() => {
  "use strict";

  const FILE_FORMAT = "journeybook card 1";
  /** A card holds text only; anything larger is some other file. */
  const LARGEST_FILE = 4_000_000;
  const LONGEST_NAME = 120;

  /** @param {{id: string, name: string, workplace: string, made: string}} facts @returns {Card} */
  function blank(facts) {
    return { ...facts, name: tidy(facts.name), workplace: tidy(facts.workplace), courses: {} };
  }

  /**
   * A name as the record can hold it: composed, one space between words, at most 120 characters. Cut between
   * characters and without half surrogate pairs, because a record with half a character could not be handed in.
   * @param {string} text
   */
  function tidy(text) {
    const whole = text.normalize("NFC").replace(/\s+/g, " ").trim();
    return Array.from(whole).filter((character) => !/^[\ud800-\udfff]$/.test(character)).slice(0, LONGEST_NAME).join("").trim();
  }

  /** The day a lesson was read, or nothing. @param {CourseEntry} entry @param {string} lesson */
  function dayOf(entry, lesson) {
    return Object.hasOwn(entry.read, lesson) ? entry.read[lesson] : "";
  }

  /** What the card says about a course; blank where nothing was done yet. @param {Card | null} card @param {string} course @returns {CourseEntry} */
  function of(card, course) {
    return (card && Object.hasOwn(card.courses, course) && card.courses[course])
      || { read: {}, checks: [], session: null };
  }

  /** @param {Card} card @param {string} course @param {Partial<CourseEntry>} change @returns {Card} */
  function withCourse(card, course, change) {
    return { ...card, courses: { ...card.courses, [course]: { ...of(card, course), ...change } } };
  }

  /** The first day counts; reading again changes nothing. @param {Card} card @param {string} course @param {string} lesson @param {string} day */
  function readLesson(card, course, lesson, day) {
    const { read } = of(card, course);
    return Object.hasOwn(read, lesson) ? card : withCourse(card, course, { read: { ...read, [lesson]: day } });
  }

  /** @param {Card} card @param {string} course @param {SessionState | null} session */
  function withSession(card, course, session) {
    return withCourse(card, course, { session });
  }

  /**
   * The check under way goes on from what the card holds of it now, which another window may have changed. Where that
   * window handed it in, or began another, nothing happens.
   * @param {Card} card @param {string} course @param {string} seed of the check that is meant
   * @param {(session: SessionState) => SessionState} step
   */
  function stepSession(card, course, seed, step) {
    const { session } = of(card, course);
    return session?.seed === seed ? withSession(card, course, step(session)) : card;
  }

  /** The check under way is over; its attempt stays on the card. @param {Card} card @param {string} course @param {CheckEntry} entry */
  function handIn(card, course, entry) {
    return withCourse(card, course, { checks: [...of(card, course).checks, entry], session: null });
  }

  /** @param {Card} card @param {string} course @param {CheckEntry[]} checks in place of those handed in so far */
  function withChecks(card, course, checks) {
    return withCourse(card, course, { checks });
  }

  /** Every question this card has met in the checks of a course, so that the next form can avoid them. @param {Card} card @param {string} course */
  function seenQuestions(card, course) {
    return [...new Set(of(card, course).checks.flatMap((check) => check.questions))].sort();
  }

  /** @param {Card} card @returns {string} */
  function toFile(card) {
    return `${JSON.stringify({ format: FILE_FORMAT, card }, null, 1)}\n`;
  }

  /** The card in a file, or null where the file holds no card. @param {string} text @returns {Card | null} */
  function fromFile(text) {
    if (text.length > LARGEST_FILE) return null;
    try {
      const file = JSON.parse(text);
      return file?.format === FILE_FORMAT && isCard(file.card) && isTrue(file.card) ? withTidyNames(file.card) : null;
    } catch {
      return null;
    }
  }

  /** @param {Card} card */
  function withTidyNames(card) {
    return { ...card, name: tidy(card.name), workplace: tidy(card.workplace) };
  }

  /** Whether each line of a card says what its attempt says, so far as that needs no marking. @param {Card} card */
  function isTrue(card) {
    return tidy(card.name) !== ""
      && Object.entries(card.courses).every(([course, { checks }]) => checks.every((line) => HandedIn.agrees(line, course)));
  }

  /** @param {any} value @returns {value is Card} */
  function isCard(value) {
    return isMapping(value)
      && ["id", "name", "workplace", "made"].every((name) => typeof value[name] === "string")
      && /^[a-z0-9-]{1,60}$/.test(value.id)
      && isMapping(value.courses)
      && Object.values(value.courses).every(isCourseEntry);
  }

  /** @param {any} value */
  function isCourseEntry(value) {
    return isMapping(value)
      && isMapping(value.read) && Object.values(value.read).every(Dates.isDay)
      && Array.isArray(value.checks) && value.checks.every(isCheckEntry)
      && (value.session === null || CheckSession.isSession(value.session));
  }

  /** @param {any} value */
  function isCheckEntry(value) {
    return isMapping(value) && typeof value.passed === "boolean" && Dates.isDay(value.day)
      && ["ended", "version", "digest", "fingerprint", "attempt"].every((name) => typeof value[name] === "string")
      && ["marks", "of", "percent"].every((name) => Number.isSafeInteger(value[name]))
      && Array.isArray(value.questions) && value.questions.every((/** @type {unknown} */ id) => typeof id === "string")
      && HandedIn.isRecord(value.attempt);
  }

  /** @param {any} value @returns {value is Record<string, any>} */
  function isMapping(value) {
    return typeof value === "object" && value !== null && !Array.isArray(value);
  }

  return { LARGEST_FILE, dayOf, blank, of, readLesson, withSession, stepSession, handIn, withChecks, seenQuestions, toFile, fromFile, isCard };
})();
