/** What has to be so before the first step, and the steps: the boxes of the sheet, as large as a glove needs them. */
const PracticalSteps = (() => {
  "use strict";

  const LONGEST_NOTE = "900";

  /** A box for each condition. @param {HTMLElement} root @param {string} slug @param {(index: number, isSo: boolean) => void} confirm */
  function conditions(root, slug, confirm) {
    const lines = Dom.all(root, ".confirm > li");
    const said = Dom.make("p", { class: "confirm-word screen-only", role: "status" });
    const boxes = lines.map((line, index) => {
      const words = Dom.one(line, "div");
      words.id ||= `${slug}-condition-${index + 1}`;
      const box = Dom.make("input", { type: "checkbox", "aria-labelledby": words.id, change: () => confirm(index, box.checked) });
      line.prepend(Dom.make("label", { class: "confirm-box screen-only" }, box));
      words.addEventListener("click", (event) => {
        if (!(event.target instanceof Element && event.target.closest("a, button"))) box.click();
      });
      return box;
    });
    Dom.one(root, ".confirm").after(said);

    return {
      /** The first that is not confirmed. */
      focus: () => boxes.find((box) => !box.checked)?.focus(),
      /** @param {Sheet} sheet @param {boolean} isLocked */
      show(sheet, isLocked) {
        boxes.forEach((box, index) => {
          box.checked = sheet.safety[index];
          box.disabled = isLocked;
        });
        const left = sheet.safety.filter((each) => !each).length;
        said.textContent = left === 0 ? Words.say("All of it is confirmed. The steps can be marked.") : leftWords(left);
      },
    };
  }

  /** @param {number} left */
  function leftWords(left) {
    return left === 1 ? Words.say("1 is not confirmed. No step can be marked before it is.")
      : Words.say("{count} are not confirmed. No step can be marked before they are.", { count: left });
  }

  /**
   * @param {HTMLElement} root @param {string} slug @param {PracticalFacts} facts
   * @param {{mark: (step: string, change: Partial<StepMark>) => void, toConditions: () => void}} host
   */
  function make(root, slug, facts, host) {
    const rows = facts.steps.map(([id, isCritical], index) => row(root, `${slug}-${id}`, { id, isCritical, number: index + 1 }, host.mark));
    const shut = Dom.make("div", { class: "steps-shut screen-only" },
      Dom.make("p", {}, Words.say("The steps cannot be marked yet. First confirm each line above.")),
      Dom.button(Words.say("To what is not confirmed"), host.toConditions, "second"));
    Dom.one(root, ".practical-watch").append(shut);

    return {
      /** @param {Sheet} sheet @param {boolean} isLocked */
      show(sheet, isLocked) {
        const isSafe = ObservationSheet.isSafe(sheet);
        shut.hidden = isSafe || isLocked;
        for (const each of rows) each.show(sheet.steps[each.id], isLocked || !isSafe);
      },
      shutNotes: () => rows.forEach((each) => each.shut()),
    };
  }

  /**
   * @param {HTMLElement} root @param {string} name
   * @param {{id: string, isCritical: boolean, number: number}} step @param {(step: string, change: Partial<StepMark>) => void} mark
   */
  function row(root, name, { id, isCritical, number }, mark) {
    const line = Dom.one(root, `#${CSS.escape(name)}`);
    const values = { number, text: Dom.text(Dom.one(line, ".observed-text")) };
    const radios = [["yes", Words.say("Yes")], ["no", Words.say("No")], ["not-seen", Words.say("Not seen")]].map(([value, words]) => {
      const input = Dom.make("input", { type: "radio", name: `${name}-seen`, value, change: () => mark(id, { seen: value }) });
      return { input, label: Dom.make("label", { class: "mark-choice" }, input, Dom.make("span", {}, words)) };
    });
    const prompted = Dom.make("input", { type: "checkbox", change: () => mark(id, { prompted: prompted.checked }) });
    const text = Dom.make("textarea", {
      id: `${name}-note`, rows: "2", maxlength: LONGEST_NOTE, "aria-label": Words.say("Note on step {number}", values),
      input: () => mark(id, { note: text.value }),
    });
    const note = Dom.button(Words.say("Note"), () => {
      text.hidden = !text.hidden;
      note.setAttribute("aria-expanded", String(!text.hidden));
      if (!text.hidden) text.focus();
    }, "second");
    note.setAttribute("aria-controls", text.id);
    const word = Dom.make("p", { class: "mark-word" });
    const field = Dom.make("fieldset", { class: "marks" },
      Dom.make("legend", { class: "unseen" }, isCritical ? Words.say("Step {number}, critical: {text}", values) : Words.say("Step {number}: {text}", values)),
      Dom.make("div", { class: "marks-seen" }, ...radios.map(({ label }) => label)),
      Dom.make("div", { class: "marks-more" },
        Dom.make("label", { class: "mark-choice" }, prompted, Dom.make("span", {}, Words.say("Prompted"))), note),
      word, text);
    line.append(Dom.make("td", { class: "marks-cell screen-only" }, field));
    text.hidden = true;
    note.setAttribute("aria-expanded", "false");

    return {
      id,
      /** @param {StepMark} step @param {boolean} isShut */
      show(step, isShut) {
        field.disabled = isShut;
        for (const { input } of radios) input.checked = input.value === step.seen;
        prompted.checked = step.prompted;
        if (text.value !== step.note) text.value = step.note;
        if (step.note !== "" && text.hidden) {
          text.hidden = false;
          note.setAttribute("aria-expanded", "true");
        }
        line.classList.toggle("is-marked", step.seen !== "");
        word.textContent = isCritical && step.seen !== "" && !Observed.isShown({ id, ...step }) ? missedWords(step.seen) : "";
      },
      /** A fresh sheet has its notes shut. */
      shut() {
        text.hidden = true;
        note.setAttribute("aria-expanded", "false");
      },
    };
  }

  /** What a critical step that was not shown comes to; one that was not seen is no fault of anybody's. @param {string} seen */
  function missedWords(seen) {
    if (seen === "not-seen") return Words.say("Critical, and not seen: it is shown on another day. Until then not yet competent.");
    return seen === "no" ? Words.say("Critical, and not shown: not yet competent.") : Words.say("Critical, and a hint was needed: not yet competent.");
  }

  return { conditions, make };
})();
