/** match: each item has a row of letter boxes. A letter serves one item; taken elsewhere, it moves, and that is said. */
const ControlMatch = (() => {
  "use strict";

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const answers = Dom.one(section, ".match-answers");
    const items = Dom.all(section, ".match-item");
    const said = Dom.make("p", { class: "unseen", role: "status" });
    answers.before(
      Dom.make("p", { class: "hint" }, Words.say("Give each line the letter of its partner. A letter may be left over.")));
    answers.after(Dom.make("p", { class: "hint key-hint" }, Words.say("Arrow keys move, Space chooses.")));
    answers.before(said);
    for (const item of items) {
      item.addEventListener("change", (event) => chose(item, /** @type {HTMLInputElement} */ (event.target)));
      item.addEventListener("keydown", (event) => step(item, event));
    }

    /** @param {HTMLElement} item */
    function picked(item) {
      return /** @type {HTMLInputElement | null} */ (item.querySelector("input:checked"));
    }

    /** @param {string} answer */
    function words(answer) {
      return Dom.text(Dom.one(answers, `[data-answer="${answer}"] .answer-text`));
    }

    /**
     * Arrow keys move the focus and choose nothing: passing over a letter would take it away from its item.
     * Space chooses. (ARIA Authoring Practices, radio group in a toolbar.)
     * @param {HTMLElement} item @param {KeyboardEvent} event
     */
    function step(item, event) {
      const by = ["ArrowRight", "ArrowDown"].includes(event.key) ? 1 : ["ArrowLeft", "ArrowUp"].includes(event.key) ? -1 : 0;
      if (by === 0) return;
      event.preventDefault();
      const boxes = Dom.all(item, "input");
      const from = boxes.findIndex((box) => box === document.activeElement);
      boxes[(from + by + boxes.length) % boxes.length].focus();
    }

    /** @param {HTMLElement} item @param {HTMLInputElement} input */
    function chose(item, input) {
      said.textContent = "";
      for (const other of items) {
        const theirs = picked(other);
        if (other === item || theirs?.value !== input.value) continue;
        theirs.checked = false;
        said.textContent = Words.say("{answer}: moved here from {item}.", { answer: words(input.value), item: Dom.text(Dom.one(other, "legend")) });
      }
      show();
      host.changed();
    }

    function show() {
      const used = new Map(items.map((item) => [picked(item)?.value, item]));
      for (const item of items) {
        const mine = picked(item)?.value;
        Dom.one(item, ".chosen").textContent = mine ? words(mine) : "";
        for (const box of Dom.all(item, ".letter-box")) {
          const holder = used.get(box.dataset.answer);
          box.classList.toggle("used", holder !== undefined && holder !== item);
        }
      }
    }

    function pairs() {
      /** @type {Record<string, string>} */
      const given = {};
      for (const item of items) {
        const input = picked(item);
        if (input) given[item.dataset.item || ""] = input.value;
      }
      return given;
    }

    return {
      arrange(ids) {
        ids.forEach((id, at) => {
          const letter = String.fromCharCode(65 + at);
          answers.append(relettered(Dom.one(answers, `[data-answer="${id}"]`), letter));
          for (const item of items) {
            Dom.one(item, ".chosen").before(relettered(Dom.one(item, `.letter-box[data-answer="${id}"]`), letter));
          }
        });
      },
      read: () => Object.keys(pairs()).length > 0 ? pairs() : null,
      write(raw) {
        const given = raw && typeof raw === "object" ? /** @type {Record<string, string>} */ (raw) : {};
        for (const item of items) {
          for (const input of Dom.all(item, "input").map((each) => /** @type {HTMLInputElement} */ (each))) {
            input.checked = given[item.dataset.item || ""] === input.value;
          }
        }
        show();
      },
      draft: () => null,
      missing: () => Words.say("Give each line a letter first."),
      partial: () => Object.keys(pairs()).length < items.length,
      judge(marked, key) {
        for (const item of items) {
          const id = item.dataset.item || "";
          const right = key.pairs[id];
          const isRight = picked(item)?.value === right;
          const reason = section.querySelector(`.reasons [data-reason="${id}"] .reason`);
          item.dataset.verdict = isRight ? "right" : "hold";
          item.append(Dom.make("p", { class: "option-reason" },
            Dom.make("strong", { class: "verdict" }, isRight ? Words.say("Right.") : Words.say("Goes with: {answer}.", { answer: words(right) })),
            reason && " ", reason && Dom.contents(reason)));
        }
      },
      unjudge() {
        for (const item of items) {
          delete item.dataset.verdict;
          for (const note of Dom.all(item, ".option-reason")) note.remove();
        }
      },
    };
  }

  /** @param {HTMLElement} element @param {string} letter */
  function relettered(element, letter) {
    Dom.one(element, ".letter").textContent = letter;
    return element;
  }

  return { mount };
})();
