/** number: what was typed stays as typed; what cannot be read is asked for again beside the box. */
const ControlNumber = (() => {
  "use strict";

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const box = /** @type {HTMLInputElement} */ (Dom.one(section, ".number-box"));
    const again = Dom.one(section, ".ask-again");
    const units = Dom.all(section, ".units input").map((input) => /** @type {HTMLInputElement} */ (input));
    again.setAttribute("role", "status");
    Dom.one(section, ".number").addEventListener("input", () => {
      ask("");
      host.changed();
    });

    /** @param {string} words */
    function ask(words) {
      again.textContent = words;
      box.toggleAttribute("aria-invalid", words !== "");
      if (words !== "") box.setAttribute("aria-invalid", "true");
    }

    function unit() {
      return units.find((input) => input.checked)?.value || "";
    }

    return {
      arrange() {},
      read: () => box.value.trim() === "" && unit() === "" ? null : { value: box.value, unit: unit() },
      write(raw) {
        const given = raw && typeof raw === "object" ? /** @type {{value?: string, unit?: string}} */ (raw) : {};
        box.value = given.value || "";
        for (const input of units) input.checked = input.value === given.unit;
        ask("");
      },
      draft: () => null,
      missing: () => Words.say("Write a number first."),
      askAgain(problem, takeFocus = true) {
        ask(problemWords(problem));
        if (takeFocus) (problem.startsWith("unit") && units.length > 0 ? units[0] : box).focus();
      },
      judge() {},
      unjudge() {},
    };
  }

  /** What to ask for, in words, for each problem that marking reports. @param {string} problem */
  function problemWords(problem) {
    switch (problem) {
      case "empty": return Words.say("Write a number first.");
      case "ambiguous": return Words.say("This can be read in two ways. Write it without a mark for thousands: 1000, or 1.0 where you mean one.");
      case "unit-missing": return Words.say("Say in which unit: tap one of the units.");
      case "unit-unknown": return Words.say("That unit does not fit here: tap one of the units.");
      case "too-long": return Words.say("That is longer than any number needed here. Write it shorter.");
      default: return Words.say("That cannot be read as a number. Write digits, with one comma or point: 12.5.");
    }
  }

  return { mount, problemWords };
})();
