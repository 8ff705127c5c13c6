/** spot: a list with the same choices as the parts of the drawing, kept in step. The list is for keyboard and screen reader. */
const ControlSpot = (() => {
  "use strict";

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const list = ControlOptions.mount(section, host);
    const rows = Dom.one(section, ".options");
    const drawing = Dom.one(section, ".spot-figure");
    const named = Dom.make("p", { class: "spot-named" });
    drawing.after(named);
    rows.addEventListener("change", show);
    drawing.addEventListener("click", (event) => tapped(spotAt(event)));
    drawing.addEventListener("pointerover", (event) => near(spotAt(event)));
    drawing.addEventListener("pointerleave", () => near(""));
    show();

    /** The spot under a pointer; nothing where there is none. @param {Event} event */
    function spotAt(event) {
      const part = /** @type {Element} */ (event.target).closest("[data-spot]");
      return part instanceof SVGElement ? part.dataset.spot || "" : "";
    }

    /** @param {string} spot */
    function row(spot) {
      return Dom.one(rows, `[data-option="${spot}"]`);
    }

    /** @param {string} spot */
    function input(spot) {
      return /** @type {HTMLInputElement} */ (Dom.one(row(spot), "input"));
    }

    /** @param {string} spot */
    function tapped(spot) {
      if (spot === "" || input(spot).disabled || input(spot).checked) return;
      input(spot).checked = true;
      show();
      host.changed();
    }

    /** @param {string} spot */
    function near(spot) {
      const open = spot !== "" && !input(spot).disabled;
      for (const frame of Dom.all(drawing, "[data-frame]")) frame.classList.toggle("spot-near", open && frame.dataset.frame === spot);
    }

    function show() {
      const chosen = list.read();
      for (const part of Dom.all(drawing, "[data-spot], [data-frame]")) {
        part.classList.toggle("spot-chosen", chosen !== null && (part.dataset.spot || part.dataset.frame) === chosen);
      }
      named.textContent = typeof chosen === "string" ? lettered(chosen) : Words.say("Tap the part in the drawing, or choose it in the list.");
      named.classList.toggle("spot-open", chosen === null);
    }

    /** Its letter and what it is called. @param {string} spot */
    function lettered(spot) {
      return `${Dom.text(Dom.one(row(spot), ".letter"))} · ${Dom.text(Dom.one(row(spot), ".option-text"))}`;
    }

    return {
      ...list,
      arrange(ids) {
        list.arrange(ids);
        ids.forEach((id, at) => {
          const letter = String.fromCharCode(65 + at);
          Dom.one(row(id), ".letter").textContent = letter;
          for (const text of Dom.all(drawing, `.spot-mark[data-spot="${id}"] text`)) text.textContent = letter;
          for (const said of Dom.all(section, `.reasons [data-reason="${id}"] .spot-letter`)) said.textContent = letter;
        });
        show();
      },
      write(raw) {
        list.write(raw);
        show();
      },
      judge(marked, key) {
        list.judge(marked, key);
        near("");
        for (const part of Dom.all(drawing, "[data-spot], [data-frame]")) {
          const spot = part.dataset.spot || part.dataset.frame;
          if (spot === key.right) part.dataset.verdict = "right";
          else if (part.classList.contains("spot-chosen")) part.dataset.verdict = "hold";
        }
        named.classList.remove("spot-open");
        named.textContent = Words.say("Right: {part}", { part: lettered(key.right) });
        drawing.classList.add("spot-judged");
      },
      unjudge() {
        list.unjudge();
        for (const part of Dom.all(drawing, "[data-verdict]")) delete part.dataset.verdict;
        drawing.classList.remove("spot-judged");
        show();
      },
    };
  }

  return { mount };
})();
