/** Practice in a lesson: answer, read why, try again, with other numbers where there are some. Nothing is kept. */
const PracticeView = (() => {
  "use strict";

  /**
   * @param {ParentNode} within
   * @param {() => string} newSeed random text, for the order of options
   * @param {(step: () => void) => void} attempt runs what may fail
   */
  function mountAll(within, newSeed, attempt) {
    for (const section of Dom.all(within, ".practice .question")) {
      QuestionsLater.add(section, (held) => attempt(() => {
        const data = PageData.of(section).practice?.[section.dataset.question || ""];
        if (data) mount(section, data, newSeed, held);
      }));
    }
  }

  /**
   * @param {HTMLElement} section @param {{key: any, shape: any}} data @param {() => string} newSeed
   * @param {boolean} held whether somebody has begun to answer the form of the page
   */
  function mount(section, { key, shape }, newSeed, held) {
    const remark = Dom.one(section, ".remark");
    const foot = Dom.one(section, ".question-foot");
    let variant = 0;
    const question = QuestionView.mount(section, key, changed);
    const { settles } = question.control;
    const check = Dom.button(Words.say("Check this answer"), answer, "first");
    const again = Dom.button(settles || Words.say("Try again"), () => start(variant), "first");
    const other = Dom.button(Words.say("Other numbers"), () => start((variant + 1) % shape.variants));
    foot.append(check, again, other);
    Dom.one(section, "form").addEventListener("submit", answer);
    prepare(held ? question.control.read() : null);

    /** @param {unknown} given what is chosen already; its options then stay where they are */
    function prepare(given) {
      if (given === null) question.control.arrange(Draw.arranged(shape, newSeed(), question.id));
      question.useVariant(variant);
      question.control.write(given);
      clear();
      question.answer.open = false;
      question.answer.hidden = true;
    }

    /** @param {number} next */
    function start(next) {
      variant = next;
      prepare(null);
      Dom.focus(Dom.one(section, "legend"));
    }

    function changed() {
      clear();
      if (settles && question.control.read() !== null) answer();
    }

    /** A changed answer is a new try: what was said about the last one goes. */
    function clear() {
      question.unjudge();
      remark.replaceChildren();
      check.hidden = Boolean(settles);
      again.hidden = other.hidden = true;
    }

    function answer() {
      if (check.hidden && !settles) return;
      const raw = question.control.read();
      if (raw === null || question.control.partial?.()) return tell(question.control.missing());
      const marked = Mark.mark(key, variant, raw);
      const problem = /** @type {any} */ (marked.remarks).problem;
      if (problem && question.control.askAgain) return question.control.askAgain(problem);
      question.judge(marked);
      const tag = RemarkView.make(section, key, marked);
      remark.replaceChildren(tag);
      check.hidden = true;
      again.hidden = marked.mark === Mark.WEIGHT && !settles;
      other.hidden = shape.variants < 2;
      question.answer.hidden = false;
      // What to press next comes into sight first, then what was said: where both do not fit, the words win.
      foot.scrollIntoView({ block: "nearest" });
      Dom.focus(tag);
    }

    /** @param {string} words */
    function tell(words) {
      remark.replaceChildren(Dom.make("p", { class: "ask-again" }, words));
    }
  }

  return { mountAll };
})();
