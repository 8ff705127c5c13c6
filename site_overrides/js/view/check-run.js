/** The check while it runs: one question at a time, the list of all, and handing in. */
const CheckRun = (() => {
  "use strict";

  /**
   * @param {HTMLElement} desk where everything is shown
   * @param {{
   *   facts: CheckFacts,
   *   read: () => SessionState,
   *   write: (step: (state: SessionState) => SessionState) => void,
   *   question: (id: string) => HTMLElement,
   *   handIn: () => void,
   *   leave: () => void,
   *   owner: string,
   * }} host
   */
  function make(desk, { facts, read, write, question, handIn, leave, owner }) {
    /** @type {QuestionOnPage | null} */
    let open = null;

    /** @param {number} index */
    function show(index) {
      write((now) => CheckSession.goTo(now, index));
      const state = read();
      const line = state.form[state.at];
      const last = state.at === state.form.length - 1;
      const section = question(line.q);
      open = QuestionView.mount(section, facts.keys[line.q], keep);
      open.control.arrange(line.options);
      open.useVariant(line.variant);
      open.answer.remove();
      restore(state, line.q);
      Dom.one(section, ".question-foot").append(
        ...(state.at > 0 ? [Dom.button(Words.say("Back"), () => show(state.at - 1), "second")] : []),
        last ? Dom.button(Words.say("To handing in"), confirm, "first") : Dom.button(Words.say("Next"), () => show(state.at + 1), "first"));
      Dom.one(section, "form").addEventListener("submit", () => last ? confirm() : show(state.at + 1));
      const heading = Dom.make("h2", { class: "check-place", tabindex: "-1" },
        Words.say("Question {number} of {total}", { number: state.at + 1, total: state.form.length }));
      desk.replaceChildren(Dom.make("section", { class: "check-run" },
        Dom.make("div", { class: "check-head" }, heading, Dom.make("p", { class: "label" }, owner)), section, overview()));
      watchNumber(section);
      Bounce.turned();
      Dom.focus(heading);
      heading.scrollIntoView({ block: "start" });
    }

    /** @param {SessionState} state @param {string} id */
    function restore(state, id) {
      if (!open) return;
      open.control.write(Object.hasOwn(state.answers, id) ? state.answers[id] : null);
      if (Object.hasOwn(state.working, id)) open.control.restore?.(state.working[id]);
    }

    /** Every change goes to the card at once. */
    function keep() {
      if (!open) return;
      const raw = open.control.read();
      const isPart = raw !== null && open.control.partial?.();
      // A begun match counts as given: its pairs are marked as they stand. A begun order has no mark, so it waits.
      const { id, control } = open;
      write((now) => CheckSession.answer(now, id, raw, isPart ? true : control.draft()));
      const list = desk.querySelector(".check-overview");
      if (list) list.replaceWith(overview());
    }

    /** What cannot be read is asked for as soon as the box is left; the entry stays. @param {HTMLElement} section */
    function watchNumber(section) {
      const shown = open;
      if (!shown?.control.askAgain) return;
      Dom.one(section, ".number").addEventListener("focusout", (event) => {
        const to = /** @type {FocusEvent} */ (event).relatedTarget;
        if (to instanceof Element && Dom.one(section, ".number").contains(to)) return;
        const problem = problemOf(shown.id);
        if (problem) shown.control.askAgain?.(problem, false);
      });
    }

    /** Why a given number cannot be marked, or nothing. @param {string} id */
    function problemOf(id) {
      const state = read();
      const key = facts.keys[id];
      if (key.kind !== "number" || !Object.hasOwn(state.answers, id)) return "";
      const line = state.form.find((each) => each.q === id);
      const remarks = /** @type {any} */ (Mark.mark(key, line?.variant || 0, state.answers[id]).remarks);
      return remarks.problem || "";
    }

    /** @param {string} id */
    function standingWords(id) {
      if (problemOf(id)) return Words.say("cannot be read yet");
      switch (CheckSession.standing(read(), id)) {
        case "answered": return Words.say("answered");
        case "begun": return Words.say("begun");
        default: return Words.say("not answered");
      }
    }

    function overview() {
      const state = read();
      const done = state.form.length - CheckSession.unanswered(state).length;
      return Dom.make("nav", { class: "check-overview", "aria-label": Words.say("All questions") },
        Dom.make("div", { class: "check-overview-head" },
          Dom.make("p", { class: "label" }, Words.say("{done} of {total} answered", { done, total: state.form.length })),
          Dom.button(Words.say("Stop here, go on later"), leave, "quiet")),
        Dom.make("ol", {}, ...state.form.map((line, index) => Dom.make("li", {}, box(line.q, index, state.at)))),
        Dom.button(Words.say("Hand in"), confirm, "second"));
    }

    /** @param {string} id @param {number} index @param {number} at */
    function box(id, index, at) {
      return Dom.make("button", {
        type: "button", class: "check-box", "data-standing": problemOf(id) ? "unread" : CheckSession.standing(read(), id),
        "aria-current": index === at && "step", click: () => show(index),
      }, Dom.make("span", { class: "check-number" }, String(index + 1)), Dom.make("span", { class: "check-standing" }, standingWords(id)));
    }

    function confirm() {
      const state = read();
      const open = state.form.map((line, index) => ({ id: line.q, index }))
        .filter(({ id }) => CheckSession.standing(state, id) !== "answered" || problemOf(id));
      const heading = Dom.make("h2", { tabindex: "-1" }, Words.say("Hand in the check?"));
      const list = open.length > 0 && Dom.make("ul", { class: "check-open" }, ...open.map(({ id, index }) =>
        Dom.make("li", {}, Dom.button(Words.say("Question {number}: {standing}", { number: index + 1, standing: standingWords(id) }), () => show(index), "second"))));
      desk.replaceChildren(Dom.make("section", { class: "check-confirm" }, heading,
        Dom.make("p", {}, open.length > 0
          ? Words.say("These are not answered in full. What is missing counts nothing.")
          : Words.say("Every question is answered. After handing in, nothing can be changed.")),
        Dom.make("div", { class: "buttons" }, ...(open.length > 0
          ? [Dom.button(Words.say("Back to the questions"), () => show(open[0].index), "first"), Dom.button(Words.say("Hand in as it is"), handIn, "second")]
          : [Dom.button(Words.say("Hand in"), handIn, "first"), Dom.button(Words.say("Back to the questions"), () => show(state.at), "second")])),
        list || null));
      Bounce.turned();
      Dom.focus(heading);
      heading.scrollIntoView({ block: "start" });
    }

    return { show, confirm };
  }

  return { make };
})();
