/**
 * A check under way: which form, what was answered, where the learner stands. Plain data and functions that return
 * new data, so that it can be kept on the card after every change.
 * @typedef {{q: string, variant: number, options: string[]}} FormLine
 * @typedef {{course: string, version: string, digest: string, profile: string, language: string, seed: string,
 *   avoid: string[], form: FormLine[], answers: Record<string, unknown>, working: Record<string, unknown>,
 *   shown: string[], at: number, started: string}} SessionState
 *   `working` holds answers that are begun but not whole; `at` counts from 0
 */
const CheckSession = (() => {
  "use strict";

  /**
   * @param {{course: string, version: string, digest: string, profile: string, language: string, seed: string,
   *   avoid: string[], form: FormLine[], started: string}} facts
   * @returns {SessionState}
   */
  function begin(facts) {
    return goTo({ ...facts, answers: {}, working: {}, shown: [], at: 0 }, 0);
  }

  /** Turns to a question; an index outside the form stays at its ends. @param {SessionState} state @param {number} index @returns {SessionState} */
  function goTo(state, index) {
    const at = Math.max(0, Math.min(index, state.form.length - 1));
    const question = state.form[at].q;
    const shown = state.shown.includes(question) ? state.shown : [...state.shown, question];
    return { ...state, at, shown };
  }

  /**
   * @param {SessionState} state @param {string} question
   * @param {unknown} raw null takes the answer back
   * @param {unknown} working what is begun but not whole, or null
   * @returns {SessionState}
   */
  function answer(state, question, raw, working = null) {
    return { ...state, answers: put(state.answers, question, raw), working: put(state.working, question, working) };
  }

  /** @param {Record<string, unknown>} mapping @param {string} name @param {unknown} value */
  function put(mapping, name, value) {
    const { [name]: _, ...others } = mapping;
    return value === null ? others : { ...others, [name]: value };
  }

  /** "answered", "begun" or "open". @param {SessionState} state @param {string} question */
  function standing(state, question) {
    if (Object.hasOwn(state.working, question)) return "begun";
    return Object.hasOwn(state.answers, question) ? "answered" : "open";
  }

  /** The places in the form, from 0, that have no whole answer. @param {SessionState} state */
  function unanswered(state) {
    return state.form.map((_, index) => index).filter((index) => standing(state, state.form[index].q) !== "answered");
  }

  /**
   * A session may only go on with the very course it began with, and with the form that its seed draws.
   * @param {SessionState} state @param {string} digest @param {Plan} plan
   */
  function fits(state, digest, plan) {
    return state.digest === digest && hasItsForm(state, plan);
  }

  /** @param {{form: FormLine[], seed: string, avoid: string[]}} drawn @param {Plan} plan */
  function hasItsForm({ form, seed, avoid }, plan) {
    return Canonical.write(form) === Canonical.write(Draw.form(plan, seed, avoid));
  }

  /**
   * The record of what was answered.
   * @param {SessionState} state @param {{id: string, name: string, workplace: string}} card @param {string} ended
   */
  function attempt(state, card, ended) {
    const { course, version, digest, profile, language, seed, avoid, form, answers, shown, started } = state;
    return Attempt.build({
      course, version, digest, profile, language, seed, avoid, form, answers, shown, started, ended,
      card: { id: card.id, name: card.name, workplace: card.workplace },
    });
  }

  /** Whether data from a file can be gone on with, and handed in at the end. @param {any} value @returns {value is SessionState} */
  function isSession(value) {
    return Attempt.hasFacts(value) && Dates.isInstant(value.started)
      && Attempt.isMapping(value.working)
      && Number.isSafeInteger(value.at) && value.at >= 0 && value.at < value.form.length
      && canBeWritten(value.answers);
  }

  /** Whether the record may hold it; an answer that it may not hold could never be handed in. @param {unknown} answers */
  function canBeWritten(answers) {
    try {
      Canonical.write(answers);
      return true;
    } catch {
      return false;
    }
  }

  return { begin, goTo, answer, standing, unanswered, fits, hasItsForm, attempt, isSession };
})();
