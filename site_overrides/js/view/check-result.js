/** What a handed-in check came to: the result in words, what to revisit, the questions with their reasons. */
const CheckResultView = (() => {
  "use strict";

  /**
   * @param {HTMLElement} root the leaf, for texts that stand in the page
   * @param {HandedInCheck} check
   * @param {{
   *   facts: CheckFacts,
   *   question: (id: string) => HTMLElement,
   *   save: () => void, retake: () => void, back: () => void,
   *   certificate: HTMLElement | null,
   * }} given
   * @returns {HTMLElement}
   */
  function make(root, check, { facts, question, save, retake, back, certificate }) {
    const { attempt, result } = check;
    if (!result) return earlierState(check, save, back);
    const heading = Dom.make("h2", { class: "result-title", tabindex: "-1" },
      result.passed ? Words.say("Knowledge check passed") : Words.say("Knowledge check: not yet passed"));
    return Dom.make("section", { class: result.passed ? "check-result is-passed" : "check-result is-hold" },
      Dom.make("div", { class: "result-head" },
        Dom.make("span", { class: "tag-shape", "aria-hidden": "true" }),
        Dom.make("div", {}, heading,
          Dom.make("p", { class: "result-share" }, shareWords(result)),
          Dom.make("p", { class: "result-marks" }, marksWords(result)),
          !result.passed && result.marks >= result.cut && result["must-pass"].some((gate) => gate.mark < Mark.WEIGHT)
            && Dom.make("p", {}, Words.say("The marks are enough. But a must-pass question is not yet right, and each of them has to be.")),
          result.critical.length > 0 && Dom.make("p", {}, Words.say("A critical error in a drill fails the check, whatever the marks.")),
          !result.passed && Dom.make("p", { class: "result-next" }, Words.say("Read the lessons named below again. Then take the check again.")),
          Dom.make("p", {}, Words.say("Self-recorded: nobody confirmed who answered. The practical was not observed.")))),
      Dom.make("div", { class: "buttons result-buttons" },
        certificate && Dom.button(Words.say("Print the certificate"), () => print(), "first"),
        Dom.button(Words.say("Take the check again"), retake, result.passed ? "second" : "first"),
        Dom.button(Words.say("Back to the start of the check"), back, "second")),
      criticalErrors(attempt, facts, question, result),
      mustPass(root, result),
      outcomes(root, result),
      record(check, save),
      certificate && Dom.make("div", { class: "certificate-desk" }, certificate),
      afterwards(attempt, facts, question));
  }

  /** @param {HandedInCheck} check @param {() => void} save @param {() => void} back */
  function earlierState(check, save, back) {
    return Dom.make("section", { class: "check-result" },
      Dom.make("div", { class: "check-confirm" },
        Dom.make("h2", { class: "result-title", tabindex: "-1" }, Words.say("A check of an earlier state of the course")),
        Dom.make("p", {}, Words.say("The course was changed after this check was handed in. Its questions are no longer in this page, so it is not marked again here. The file of the attempt holds everything that was answered."))),
      record(check, save),
      Dom.make("div", { class: "buttons result-buttons" }, Dom.button(Words.say("Back to the start of the check"), back, "first")));
  }

  /** Rounded down, so that nothing below the cut reads as if it had reached it. @param {CheckResult} result */
  function shareWords({ marks, of, percent }) {
    return Words.say("You have {share}. Needed: {cut}.", { share: `${Math.floor((marks * 100) / of)}\u00a0%`, cut: `${percent}\u00a0%` });
  }

  /** Marks as questions, to the thousandth that is recorded: 2500 of 3000 reads 2.5 of 3. @param {number} marks @param {number} of */
  function inQuestions(marks, of) {
    return Words.say("{marks} of {of}", { marks: marks / Mark.WEIGHT, of: of / Mark.WEIGHT });
  }

  /** @param {CheckResult} result */
  function marksWords({ marks, of, percent, cut }) {
    return Words.say("{marks} of {of} marks. The cut is {cut}, which is {percent} %.", {
      marks: marks / Mark.WEIGHT, of: of / Mark.WEIGHT, percent, cut: cut / Mark.WEIGHT,
    });
  }

  /**
   * The drills that a critical error ended: which deed it was, and what it does to people.
   * @param {AttemptRecord} attempt @param {CheckFacts} facts @param {(id: string) => HTMLElement} question @param {CheckResult} result
   */
  function criticalErrors(attempt, facts, question, result) {
    if (result.critical.length === 0) return null;
    return Dom.make("section", { class: "result-part" }, Dom.make("h3", {}, Words.say("Critical errors")),
      Dom.make("ul", { class: "result-lines" }, ...result.critical.map((id) => {
        const marked = /** @type {any} */ (Mark.mark(facts.keys[id], 0, attempt.answers[id]));
        const section = question(id);
        const deed = section.querySelector(`.answer [data-deed="${marked.remarks.critical}"]`);
        return Dom.make("li", { class: "line-hold" },
          Dom.make("span", { class: "line-text" },
            Dom.make("span", { class: "label" }, Dom.contents(section.querySelector(".drill-title"))),
            Dom.make("strong", { class: "line-deed" }, Dom.contents(deed && deed.querySelector(".reason-of"))),
            Dom.make("span", {}, Dom.contents(deed && deed.querySelector(".reason")))),
          Dom.make("span", { class: "line-word" }, Words.say("Critical")));
      })));
  }

  /** @param {HTMLElement} root @param {CheckResult} result */
  function mustPass(root, result) {
    if (result["must-pass"].length === 0) return null;
    return Dom.make("section", { class: "result-part" }, Dom.make("h3", {}, Words.say("Must-pass")),
      Dom.make("ul", { class: "result-lines" }, ...result["must-pass"].map(({ fact, mark }) => {
        const right = mark === Mark.WEIGHT;
        return Dom.make("li", { class: right ? "line-right" : "line-hold" },
          Dom.make("span", { class: "line-text" }, Dom.contents(root.querySelector(`[data-fact="${fact}"]`))),
          Dom.make("span", { class: "line-word" }, right ? Words.say("Right") : Words.say("Not yet")));
      })));
  }

  /** @param {HTMLElement} root @param {CheckResult} result */
  function outcomes(root, result) {
    return Dom.make("section", { class: "result-part" }, Dom.make("h3", {}, Words.say("By outcome, and what to revisit")),
      Dom.make("ul", { class: "result-lines" }, ...Dom.all(root, "[data-check-parts] [data-outcome]").map((source) => {
        const share = Object.hasOwn(result.outcomes, source.dataset.outcome || "") ? result.outcomes[source.dataset.outcome || ""] : null;
        if (!share) return null;
        const whole = share.marks === share.of;
        const lessons = whole ? null : source.querySelector("ul");
        return Dom.make("li", { class: whole ? "line-right" : "line-hold" },
          Dom.make("span", { class: "line-text" }, Dom.contents(source.querySelector(".outcome-text")),
            lessons && lessons.children.length > 0 && Dom.make("span", { class: "line-again" },
              Dom.make("span", { class: "label" }, Words.say("Revisit")), Dom.make("ul", {}, Dom.contents(lessons)))),
          Dom.make("span", { class: "line-word" }, inQuestions(share.marks, share.of)));
      })));
  }

  /** @param {HandedInCheck} check @param {() => void} save */
  function record({ number, fingerprint }, save) {
    return Dom.make("section", { class: "result-part" }, Dom.make("h3", {}, Words.say("For the class sheet")),
      Dom.make("p", {}, Words.say("Attempt {number}, as this device remembers. Fingerprint of the answers:", { number })),
      Dom.make("p", { class: "fingerprint" }, ...fingerprint.split("-").map((group) => Dom.make("span", {}, group))),
      Dom.make("p", {}, Words.say("Write these four groups on the paper sheet. Whoever has the file can compare them later.")),
      Dom.button(Words.say("Save the attempt to a file"), save, "second"));
  }

  /** @param {AttemptRecord} attempt @param {CheckFacts} facts @param {(id: string) => HTMLElement} question */
  function afterwards(attempt, facts, question) {
    return Dom.make("details", { class: "result-questions" },
      Dom.make("summary", {}, Words.say("The questions, your answers and the reasons")),
      ...attempt.form.map((line, index) => answered(line, index, attempt, facts, question(line.q))));
  }

  /**
   * A question as it was answered, with nothing left to press.
   * @param {FormLine} line @param {number} index @param {AttemptRecord} attempt @param {CheckFacts} facts @param {HTMLElement} section
   */
  function answered(line, index, attempt, facts, section) {
    const key = facts.keys[line.q];
    const raw = Object.hasOwn(attempt.answers, line.q) ? attempt.answers[line.q] : null;
    const shown = QuestionView.mount(section, key, () => {});
    shown.control.arrange(line.options);
    shown.useVariant(line.variant);
    shown.control.write(raw);
    const marked = Mark.mark(key, line.variant, raw);
    const remark = Dom.one(section, ".remark");
    remark.removeAttribute("role");
    if (raw === null) remark.append(Dom.make("p", { class: "check-note" }, Words.say("Not answered.")));
    shown.judge(marked);
    remark.append(RemarkView.make(section, key, marked));
    for (const each of Dom.all(section, "form input, form button")) each.setAttribute("disabled", "");
    for (const hint of Dom.all(section, ".hint, .order-foot")) hint.remove();
    section.classList.add("done");
    section.prepend(Dom.make("div", { class: "question-tab" },
      Dom.make("h3", { class: "label" }, Words.say("Question {number} of {total}", { number: index + 1, total: attempt.form.length })),
      Dom.make("p", { class: "label" }, inQuestions(marked.mark, Mark.WEIGHT))));
    return section;
  }

  return { make, marksWords, inQuestions };
})();
