/** Fills the completion certificate with what the attempt and its result say. Nothing else may enter it. */
const CertificateView = (() => {
  /**
   * @param {HTMLTemplateElement} template
   * @param {{entry: CheckEntry, number: number, facts: any, language: string}} given
   * @returns {HTMLElement | null} null where the check was not passed, or belongs to another state of the course
   */
  function make(template, { entry, number, facts, language }) {
    const attempt = /** @type {AttemptRecord} */ (JSON.parse(entry.attempt));
    if (!entry.passed || attempt.digest !== facts.digest) return null;
    const sheet = Dom.one(/** @type {DocumentFragment} */ (template.content.cloneNode(true)), ".certificate");
    const result = Result.check({
      plan: facts.plan, percent: facts.percent, outcomes: facts.outcomes, keys: facts.keys, form: attempt.form, answers: attempt.answers,
    });
    const slots = {
      day: Dates.long(entry.day, language),
      name: attempt.card.name,
      workplace: attempt.card.workplace,
      language: languageName(attempt.language, language),
      retrain: Dates.long(Dates.addMonths(entry.day, facts.months), language),
      passed: Words.say("Passed"),
      marks: CheckResultView.marksWords(entry),
      "must-pass": Words.say("Must-pass: {right} of {total} right.", {
        right: result["must-pass"].filter((gate) => gate.mark === Mark.WEIGHT).length, total: result["must-pass"].length,
      }),
      attempt: Words.say("Attempt {number}, as this device remembers.", { number }),
      fingerprint: entry.fingerprint.replaceAll("-", " "),
      "digest-short": (facts.digest.slice(0, 16).match(/.{4}/g) || []).join(" "),
      digest: facts.digest,
    };
    for (const [name, words] of Object.entries(slots)) {
      for (const place of Dom.all(sheet, `[data-slot="${name}"]`)) place.textContent = words;
    }
    // An outcome that this form did not ask about is not claimed.
    for (const line of Dom.all(sheet, "[data-outcome]")) {
      if (!Object.hasOwn(result.outcomes, line.dataset.outcome || "")) line.remove();
    }
    return sheet;
  }

  /** @param {string} tag @param {string} inLanguage */
  function languageName(tag, inLanguage) {
    return new Intl.DisplayNames([inLanguage], { type: "language" }).of(tag) || tag;
  }

  return { make };
})();
