/** Fills the completion certificate with what the attempt and its result say. Nothing else may enter it. */
const CertificateView = (() => {
  "use strict";

  const SIZES = ["certificate-roomy", "certificate-plain", "certificate-snug", "certificate-close", "certificate-tight"];
  /** Height of Letter less its margins, 254 mm in CSS pixels, and a little for another machine's rounding. */
  const PAPER = (254 * 96) / 25.4 - 8;

  /**
   * @param {HTMLTemplateElement} template
   * @param {HandedInCheck} check
   * @param {CheckFacts} facts
   * @param {string} language
   * @returns {HTMLElement | null} null where the check was not passed, or belongs to another state of the course
   */
  function make(template, check, facts, language) {
    const { attempt, result } = check;
    if (!result?.passed) return null;
    const sheet = Dom.one(/** @type {DocumentFragment} */ (template.content.cloneNode(true)), ".certificate");
    const slots = {
      day: Dates.long(check.day, language),
      name: attempt.card.name,
      workplace: attempt.card.workplace,
      language: languageName(attempt.language, language),
      retrain: Dates.long(Dates.addMonths(check.day, facts.months), language),
      passed: Words.say("Passed"),
      marks: CheckResultView.marksWords(result),
      "must-pass": Words.say("Must-pass: {right} of {total} right.", {
        right: result["must-pass"].filter((gate) => gate.mark === Mark.WEIGHT).length, total: result["must-pass"].length,
      }),
      attempt: Words.say("Attempt {number}, as this device remembers.", { number: check.number }),
      fingerprint: check.fingerprint.replaceAll("-", " "),
      "digest-short": (facts.digest.slice(0, 16).match(/.{4}/g) || []).join(" "),
      digest: facts.digest,
    };
    for (const [name, words] of Object.entries(slots)) {
      for (const place of Dom.all(sheet, `[data-slot="${name}"]`)) place.textContent = words;
    }
    // An outcome that this form did not ask about is not claimed.
    for (const line of Dom.all(sheet, "[data-outcome]")) {
      const share = Object.hasOwn(result.outcomes, line.dataset.outcome || "") ? result.outcomes[line.dataset.outcome || ""] : null;
      if (share) Dom.one(line, ".certificate-share").textContent = CheckResultView.inQuestions(share.marks, share.of);
      else line.remove();
    }
    return sheet;
  }

  /** Sets a certificate that stands in the page in the largest sizes that keep it on one page. @param {HTMLElement} sheet */
  function fit(sheet) {
    sheet.classList.add("measuring");
    for (const size of SIZES) {
      sheet.classList.remove(...SIZES);
      sheet.classList.add(size);
      if (sheet.offsetHeight <= PAPER) break;
    }
    sheet.classList.remove("measuring");
  }

  /** @param {string} tag @param {string} inLanguage */
  function languageName(tag, inLanguage) {
    return new Intl.DisplayNames([inLanguage], { type: "language" }).of(tag) || tag;
  }

  return { make, fit };
})();
