/** What a handed-in check came to: the result in words, what to revisit, the questions with their reasons. */
const CheckResultView = (() => {
  /**
   * @param {HTMLElement} root the leaf's check desk, for texts that stand in the page
   * @param {{
   *   facts: any, entry: CheckEntry, number: number,
   *   question: (id: string) => HTMLElement,
   *   save: () => void, retake: () => void, back: () => void,
   *   certificate: HTMLElement | null,
   * }} given `entry` is the card's line; `number` the attempt's number as this device remembers
   * @returns {HTMLElement}
   */
  function make(root, { facts, entry, number, question, save, retake, back, certificate }) {
    const attempt = /** @type {AttemptRecord} */ (JSON.parse(entry.attempt));
    const isSame = attempt.digest === facts.digest;
    const result = isSame ? Result.check({
      plan: facts.plan, percent: facts.percent, outcomes: facts.outcomes, keys: facts.keys, form: attempt.form, answers: attempt.answers,
    }) : null;
    const heading = Dom.make("h2", { class: "result-title", tabindex: "-1" },
      entry.passed ? Words.say("Knowledge check passed") : Words.say("Knowledge check: not yet passed"));
    return Dom.make("section", { class: entry.passed ? "check-result is-passed" : "check-result is-hold" },
      Dom.make("div", { class: "result-head" },
        Dom.make("span", { class: "tag-shape", "aria-hidden": "true" }),
        Dom.make("div", {}, heading,
          Dom.make("p", { class: "result-marks" }, marksWords(entry)),
          Dom.make("p", {}, Words.say("Self-recorded: nobody confirmed who answered. The practical was not observed.")))),
      result && mustPass(root, result),
      result && outcomes(root, result),
      record(entry, number, save),
      Dom.make("div", { class: "buttons result-buttons" },
        certificate && Dom.button(Words.say("Print the certificate"), () => print(), "first"),
        Dom.button(Words.say("Take the check again"), retake, entry.passed ? "second" : "first"),
        Dom.button(Words.say("Back to the start of the check"), back, "second")),
      certificate && Dom.make("div", { class: "certificate-desk" }, certificate),
      isSame ? afterwards(attempt, facts, question)
        : Dom.make("p", { class: "check-note" }, Words.say("The course was changed after this check. Its questions are no longer in this page, so they are not shown.")));
  }

  /** @param {{marks: number, of: number, percent: number}} entry */
  function marksWords({ marks, of, percent }) {
    return Words.say("{marks} of {of} marks. The cut is {cut}, which is {percent} %.",
      { marks, of, percent, cut: Result.leastPassing(percent, of) });
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
      Dom.make("ul", { class: "result-lines" }, ...Object.entries(result.outcomes).map(([id, share]) => {
        const whole = share.marks === share.of;
        const source = root.querySelector(`[data-outcome="${id}"]`);
        const lessons = source && !whole ? source.querySelector("ul") : null;
        return Dom.make("li", { class: whole ? "line-right" : "line-hold" },
          Dom.make("span", { class: "line-text" }, Dom.contents(source && source.querySelector(".outcome-text")),
            lessons && lessons.children.length > 0 && Dom.make("span", { class: "line-again" },
              Dom.make("span", { class: "label" }, Words.say("Revisit")), Dom.make("ul", {}, Dom.contents(lessons)))),
          Dom.make("span", { class: "line-word" }, Words.say("{marks} of {of}", { marks: share.marks, of: share.of })));
      })));
  }

  /** @param {CheckEntry} entry @param {number} number @param {() => void} save */
  function record(entry, number, save) {
    return Dom.make("section", { class: "result-part" }, Dom.make("h3", {}, Words.say("For the class sheet")),
      Dom.make("p", {}, Words.say("Attempt {number}, as this device remembers. Fingerprint of the answers:", { number })),
      Dom.make("p", { class: "fingerprint" }, ...entry.fingerprint.split("-").map((group) => Dom.make("span", {}, group))),
      Dom.make("p", {}, Words.say("Write these four groups on the paper sheet. Whoever has the file can compare them later.")),
      Dom.button(Words.say("Save the attempt to a file"), save, "second"));
  }

  /** @param {AttemptRecord} attempt @param {any} facts @param {(id: string) => HTMLElement} question */
  function afterwards(attempt, facts, question) {
    return Dom.make("details", { class: "result-questions" },
      Dom.make("summary", {}, Words.say("The questions, your answers and the reasons")),
      ...attempt.form.map((line, index) => answered(line, index, attempt, facts, question(line.q))));
  }

  /**
   * A question as it was answered, with nothing left to press.
   * @param {FormLine} line @param {number} index @param {AttemptRecord} attempt @param {any} facts @param {HTMLElement} section
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
      Dom.make("p", { class: "label" }, Words.say("{mark} of {weight}", { mark: marked.mark, weight: Mark.WEIGHT }))));
    return section;
  }

  return { make, marksWords };
})();
