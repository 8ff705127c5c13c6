/** triage: a card for each unit with a row of places; how many are sorted is said, and afterwards where each belongs. */
const ControlTriage = (() => {
  "use strict";

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const desk = Dom.one(section, ".triage");
    const cards = () => Dom.all(desk, ".triage-unit");
    const total = cards().length;
    const count = Dom.make("p", { class: "label triage-count", role: "status" });
    desk.after(count);
    desk.addEventListener("change", () => {
      show();
      host.changed();
    });
    show();

    /** @param {HTMLElement} card */
    function picked(card) {
      return /** @type {HTMLInputElement | null} */ (card.querySelector("input:checked"))?.value;
    }

    function given() {
      /** @type {Record<string, string>} */
      const places = {};
      for (const card of cards()) {
        const place = picked(card);
        if (place !== undefined) places[card.dataset.unit || ""] = place;
      }
      return places;
    }

    function done() {
      return Object.keys(given()).length;
    }

    function show() {
      for (const card of cards()) card.classList.toggle("sorted", picked(card) !== undefined);
      count.textContent = Words.say("{done} of {total} sorted", { done: done(), total });
    }

    return {
      arrange(ids) {
        for (const id of ids) desk.append(Dom.one(desk, `[data-unit="${id}"]`));
      },
      read: () => done() > 0 ? given() : null,
      write(raw) {
        const places = raw && typeof raw === "object" ? /** @type {Record<string, string>} */ (raw) : {};
        for (const card of cards()) {
          for (const input of Dom.all(card, "input").map((each) => /** @type {HTMLInputElement} */ (each))) {
            input.checked = places[card.dataset.unit || ""] === input.value;
          }
        }
        show();
      },
      draft: () => null,
      missing: () => Words.say("Sort each one first. Still to sort: {left}.", { left: total - done() }),
      partial: () => done() < total,
      judge(marked, key) {
        for (const card of cards()) {
          const unit = card.dataset.unit || "";
          const reason = section.querySelector(`.reasons [data-reason="${unit}"] .reason`);
          card.dataset.verdict = isRight(card, key) ? "right" : "hold";
          const place = card.querySelector(`.place-box[data-place="${key.right[unit]}"]`);
          if (place) place.classList.add("belongs");
          card.append(Dom.make("p", { class: "option-reason" },
            Dom.make("strong", { class: "verdict" }, verdictWords(unit, marked.remarks, placeWords(desk, key.right[unit]))),
            reason && " ", reason && Dom.contents(reason)));
        }
      },
      unjudge() {
        for (const card of cards()) {
          delete card.dataset.verdict;
          for (const note of Dom.all(card, ".option-reason")) note.remove();
          for (const place of Dom.all(card, ".belongs")) place.classList.remove("belongs");
        }
      },
    };

    /** @param {HTMLElement} card @param {any} key */
    function isRight(card, key) {
      return picked(card) === key.right[card.dataset.unit || ""];
    }
  }

  /** What a place is called. @param {ParentNode} within @param {string} place */
  function placeWords(within, place) {
    return Dom.text(Dom.one(within, `.place-box[data-place="${place}"] .place-text`));
  }

  /** What became of one unit, and where it belongs. @param {string} unit @param {any} remarks @param {string} place */
  function verdictWords(unit, remarks, place) {
    const is = (/** @type {string} */ name) => (remarks[name] || []).includes(unit);
    if (is("dangerous")) return Words.say("Dangerous, and missed. It belongs here: {place}.", { place });
    if (is("missed")) return Words.say("Missed. It belongs here: {place}.", { place });
    if (is("needless")) return Words.say("Condemned needlessly. It belongs here: {place}.", { place });
    if (is("left") || remarks.problem) return Words.say("Not sorted. It belongs here: {place}.", { place });
    return Words.say("Right.");
  }

  /**
   * What was missed, dangerous units first, for the tag that sums up.
   * @param {HTMLElement} section @param {any} key @param {any} remarks
   * @returns {Node[]}
   */
  function missed(section, key, remarks) {
    const dangerous = remarks.dangerous || [];
    const others = (remarks.missed || []).filter((/** @type {string} */ unit) => !dangerous.includes(unit));
    return [
      ...dangerous.map((/** @type {string} */ unit) => missedUnit(section, key, unit, Words.say("Dangerous, and missed"))),
      ...others.map((/** @type {string} */ unit) => missedUnit(section, key, unit, Words.say("Missed"))),
    ];
  }

  /** @param {HTMLElement} section @param {any} key @param {string} unit @param {string} words */
  function missedUnit(section, key, unit, words) {
    return Dom.make("div", { class: "broken-rule" },
      Dom.make("p", { class: "label" }, words),
      Dom.make("p", { class: "broken-what" }, Dom.contents(section.querySelector(`.triage-unit[data-unit="${unit}"] .unit-text`))),
      Dom.make("p", {}, `→ ${placeWords(section, key.right[unit])}`));
  }

  return { mount, missed };
})();
