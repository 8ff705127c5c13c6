/** How far it has come, ending it at once, the result in the assessor's word, and why a word is not there to choose. */
const PracticalResult = (() => {
  "use strict";

  const LONGEST_NOTE = "900";

  /** How far it has come, always in sight, and ending it at once. @param {{stop: () => void, goOn: () => void, clock: (instant: string) => string}} host */
  function bar(host) {
    const said = Dom.make("p", { class: "watch-count", role: "status" });
    const stop = Dom.button(Words.say("End it at once"), host.stop, "second");
    stop.classList.add("button-hold");
    const goOn = Dom.button(Words.say("Go on after all"), host.goOn, "second");
    const part = Dom.make("div", { class: "watch-bar screen-only" }, said, stop, goOn);

    return {
      part,
      /** @param {Sheet} sheet @param {PracticalFacts} facts @param {boolean} isLocked */
      show(sheet, facts, isLocked) {
        const isEnded = sheet.stopped !== "";
        const had = document.activeElement;
        stop.hidden = isEnded || isLocked;
        goOn.hidden = !isEnded || isLocked;
        if (had === stop && stop.hidden) goOn.focus();
        if (had === goOn && goOn.hidden) stop.focus();
        const words = [isEnded && Words.say("Ended at {time}.", { time: host.clock(sheet.stopped) }), countWords(sheet, facts)].filter(Boolean).join(" ");
        if (said.textContent !== words) said.textContent = words;
      },
    };
  }

  /** @param {Sheet} sheet @param {PracticalFacts} facts */
  function countWords(sheet, facts) {
    const { marked, total, waiting, missed } = ObservationSheet.count(sheet, facts);
    if (waiting > 0 && missed > 0) return Words.say("{marked} of {total} steps marked, {waiting} critical not yet, {missed} critical not shown", { marked, total, waiting, missed });
    if (waiting > 0) return Words.say("{marked} of {total} steps marked, {waiting} critical not yet", { marked, total, waiting });
    if (missed > 0) return Words.say("{marked} of {total} steps marked, {missed} critical not shown", { marked, total, missed });
    return Words.say("{marked} of {total} steps marked, each critical one shown", { marked, total });
  }

  /** What is said once it was ended: nobody is marked down for stopping. */
  function ended() {
    const part = Dom.make("p", { class: "watch-ended screen-only" },
      Words.say("It was ended. That is never a mark against anybody, least of all against whoever stopped for their own safety: the steps are shown again on another day. Until then the record can only say “not yet competent”."));
    /** @param {Sheet} sheet */
    function show(sheet) {
      part.hidden = sheet.stopped === "";
    }

    return { part, show };
  }

  /**
   * @param {HTMLElement} root @param {string} slug @param {PracticalFacts} facts
   * @param {{choose: (result: string) => void, write: (name: string, text: string) => void}} host
   */
  function make(root, slug, facts, host) {
    const names = Dom.all(root, ".result-word").map((each) => Dom.text(each));
    const whyNot = Dom.make("div", { class: "why-not", id: `${slug}-why-not` });
    const radios = Observation.RESULTS.map((value, index) => {
      const input = Dom.make("input", { type: "radio", name: `${slug}-result`, value, change: () => host.choose(value) });
      return { input, label: Dom.make("label", { class: "mark-choice result-choice" }, input, Dom.make("span", {}, names[index])) };
    });
    const note = Dom.make("textarea", { id: `${slug}-note`, rows: "4", maxlength: LONGEST_NOTE, input: () => host.write("note", note.value) });
    const choice = Dom.make("fieldset", { class: "result-choices", "aria-describedby": whyNot.id },
      Dom.make("legend", { class: "unseen" }, Words.say("Result")), ...radios.map(({ label }) => label));
    const noteLabel = Dom.make("label", { class: "label", for: note.id }, Dom.text(Dom.one(root, ".practical-result h3")));
    const part = Dom.make("div", { class: "watch-result screen-only" }, choice, whyNot,
      Dom.make("div", { class: "watch-line" }, noteLabel, note));
    let known = "";

    return {
      part,
      focus: () => (radios.find(({ input }) => !input.disabled)?.input)?.focus(),
      /** @param {Sheet} sheet @param {boolean} isLocked */
      show(sheet, isLocked) {
        const against = ObservationSheet.against(sheet, facts);
        choice.disabled = isLocked;
        note.disabled = isLocked;
        if (note.value !== sheet.note) note.value = sheet.note;
        for (const { input } of radios) {
          input.disabled = input.value === "competent" && against.length > 0;
          input.checked = sheet.result === input.value;
        }
        const state = JSON.stringify([against, against.map(([, id]) => sheet.steps[id]?.seen)]);
        if (state === known) return;
        known = state;
        whyNot.replaceChildren(...(against.length === 0 ? [] : [
          Dom.make("p", {}, Words.say("“Competent” cannot be chosen:")),
          Dom.make("ul", {}, ...reasons(against, sheet, facts, root, slug))]));
      },
    };
  }

  /**
   * One line each; steps without a mark share one, because at the beginning that is all of them.
   * @param {[string, string][]} against @param {Sheet} sheet @param {PracticalFacts} facts @param {HTMLElement} root @param {string} slug
   */
  function reasons(against, sheet, facts, root, slug) {
    const number = (/** @type {string} */ id) => facts.steps.findIndex(([each]) => each === id) + 1;
    const waiting = against.filter(([why]) => why === "unmarked").map(([, id]) => id);
    const lines = against.filter(([why]) => why !== "unmarked").map(([why, id]) => {
      if (why === "safety") return Dom.make("li", {}, Words.say("Not every line of “confirm first” is confirmed."));
      if (why === "stopped") return Dom.make("li", {}, Words.say("It was ended before its last step."));
      const row = Dom.one(root, `#${CSS.escape(`${slug}-${id}`)}`);
      const words = stepWords(sheet.steps[id], { number: number(id), text: Dom.text(Dom.one(row, ".observed-text")) });
      return Dom.make("li", {}, Dom.make("a", { href: `#${row.id}` }, words));
    });
    if (waiting.length > 0) {
      const critical = new Map(facts.steps);
      lines.push(Dom.make("li", {}, Words.say("Not marked yet:"), " ", ...waiting.flatMap((id, index) => [
        index > 0 ? ", " : null,
        Dom.make("a", { href: `#${slug}-${id}` }, critical.get(id) ? Words.say("step {number} (critical)", { number: number(id) }) : Words.say("step {number}", { number: number(id) })),
      ])));
    }
    return lines;
  }

  /** @param {StepMark} step @param {{number: number, text: string}} values */
  function stepWords(step, values) {
    if (step.seen === "no") return Words.say("Step {number}, critical, is marked “no”: {text}", values);
    if (step.seen === "not-seen") return Words.say("Step {number}, critical, is marked “not seen”: {text}", values);
    return Words.say("Step {number}, critical, needed a hint: {text}", values);
  }

  return { bar, ended, make };
})();
