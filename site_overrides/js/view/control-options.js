/** choice and choices: rows with a radio button or a box. */
const ControlOptions = (() => {
  "use strict";

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const several = section.dataset.kind === "choices";
    const list = Dom.one(section, ".options");
    const inputs = () => Dom.all(list, "input").map((input) => /** @type {HTMLInputElement} */ (input));
    list.addEventListener("change", () => host.changed());

    function chosen() {
      return inputs().filter((input) => input.checked).map((input) => input.value);
    }

    return {
      arrange(ids) {
        for (const id of ids) list.append(Dom.one(list, `[data-option="${id}"]`));
      },
      read() {
        const ids = chosen();
        if (ids.length === 0) return null;
        return several ? host.keyOrder(ids) : ids[0];
      },
      write(raw) {
        const ids = Array.isArray(raw) ? raw : [raw];
        for (const input of inputs()) input.checked = ids.includes(input.value);
      },
      draft: () => null,
      missing: () => several ? Words.say("Choose at least one first.") : Words.say("Choose one first."),
      judge(marked, key) {
        const right = several ? key.right : [key.right];
        const mine = chosen();
        for (const row of Dom.all(list, ".option")) {
          const id = row.dataset.option || "";
          row.append(verdict(section, id, right.includes(id), mine.includes(id), several));
          row.dataset.verdict = verdictName(right.includes(id), mine.includes(id));
        }
      },
      unjudge() {
        for (const note of Dom.all(list, ".option-reason")) note.remove();
        for (const row of Dom.all(list, ".option")) delete row.dataset.verdict;
      },
    };
  }

  /** @param {boolean} right @param {boolean} mine */
  function verdictName(right, mine) {
    if (mine) return right ? "right" : "hold";
    return right ? "missed" : "left";
  }

  /** @param {HTMLElement} section @param {string} id @param {boolean} right @param {boolean} mine @param {boolean} several */
  function verdict(section, id, right, mine, several) {
    const words = mine
      ? (right ? Words.say("Your answer: right.") : Words.say("Your answer: not this."))
      : right
        ? (several ? Words.say("Missed: this belongs to it.") : Words.say("This is the right one."))
        : (several ? Words.say("Rightly left out.") : Words.say("Not this."));
    const reason = section.querySelector(`.reasons [data-reason="${id}"] .reason`);
    return Dom.make("p", { class: "option-reason" },
      Dom.make("strong", { class: "verdict" }, words), reason && " ", reason && Dom.contents(reason));
  }

  return { mount };
})();
