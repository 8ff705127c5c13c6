/** order: tap the steps one after the other; then arrows move them; undo takes the last change back. */
const ControlOrder = (() => {
  "use strict";

  /** A second tap sooner than this is taken for a bounce of the glove. */
  const BOUNCE = 300;

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const list = Dom.one(section, ".order");
    const rows = new Map(Dom.all(list, "[data-step]").map((row) => [row.dataset.step || "", row]));
    let state = Sequence.begin([...rows.keys()]);
    let lastTap = -BOUNCE;

    const hint = Dom.make("p", { class: "hint" },
      Words.say("Tap the first step, then the next, to the last. Then the arrows can move them."));
    const undo = Dom.button(Words.say("Undo"), () => {
      change(Sequence.undo(state), undoneWords());
      // With nothing left to undo the button goes; the focus must not go with it.
      if (undo.hidden) Dom.focus(Dom.one(list, ".step"));
    });
    const said = Dom.make("p", { class: "unseen", role: "status" });
    list.before(hint);
    list.after(Dom.make("div", { class: "order-foot" }, undo), said);
    for (const [id, row] of rows) furnish(id, row);
    show();

    /** @param {string} id */
    function words(id) {
      return Dom.text(Dom.one(/** @type {HTMLElement} */ (rows.get(id)), ".step-text"));
    }

    /** @param {string} id @param {HTMLElement} row */
    function furnish(id, row) {
      const text = Dom.one(row, ".step-text");
      const press = Dom.make("button", { type: "button", class: "step", click: (event) => tapped(id, event) });
      text.before(press);
      press.append(Dom.make("span", { class: "step-number" }), text);
      row.append(Dom.make("span", { class: "step-moves" }, arrow(id, -1), arrow(id, 1)));
    }

    /** @param {string} id @param {-1 | 1} by */
    function arrow(id, by) {
      const name = by < 0 ? Words.say("Move up: {step}", { step: words(id) }) : Words.say("Move down: {step}", { step: words(id) });
      const press = Dom.make("button", {
        type: "button", class: "arrow", "aria-label": name,
        click: () => {
          if (press.getAttribute("aria-disabled") === "true") return;
          const next = Sequence.move(state, id, by);
          change(next, placeWords(next, id), press);
        },
      }, by < 0 ? "↑" : "↓");
      return press;
    }

    /** @param {string} id @param {MouseEvent} event */
    function tapped(id, event) {
      if (event.detail > 0 && event.timeStamp - lastTap < BOUNCE) return;
      lastTap = event.timeStamp;
      const next = Sequence.tap(state, id);
      change(next, placeWords(next, id), /** @type {HTMLElement} */ (event.currentTarget));
    }

    /** @param {SequenceState} next @param {string} id */
    function placeWords(next, id) {
      const at = next.now.order.indexOf(id);
      const left = next.now.order.length - next.now.placed;
      if (at >= next.now.placed) return Words.say("{step}: taken out again.", { step: words(id) });
      const place = Words.say("{step}: number {place} of {total}.", { step: words(id), place: at + 1, total: next.now.order.length });
      return left > 0 ? `${place} ${Words.say("Still to place: {left}.", { left })}` : place;
    }

    function undoneWords() {
      const before = Sequence.undo(state);
      return Words.say("Undone. Placed: {placed} of {total}.", { placed: before.now.placed, total: before.now.order.length });
    }

    /** @param {SequenceState} next @param {string} announcement @param {HTMLElement} [held] keeps the focus */
    function change(next, announcement, held) {
      if (next === state) return;
      state = next;
      host.changed();
      show();
      said.textContent = announcement;
      if (held) held.focus({ preventScroll: true });
    }

    function show() {
      const { order, placed } = state.now;
      order.forEach((id, at) => {
        const row = /** @type {HTMLElement} */ (rows.get(id));
        const isPlaced = at < placed;
        if (list.children[at] !== row) list.insertBefore(row, list.children[at] || null);
        row.classList.toggle("placed", isPlaced);
        Dom.one(row, ".step-number").textContent = isPlaced ? String(at + 1) : "";
        Dom.one(row, ".step").setAttribute("aria-pressed", String(isPlaced));
        const [up, down] = Dom.all(row, ".arrow");
        // Only when all are placed, so that nothing grows under the finger while it taps.
        up.hidden = down.hidden = placed < order.length;
        up.setAttribute("aria-disabled", String(at === 0));
        down.setAttribute("aria-disabled", String(at >= placed - 1));
      });
      undo.hidden = state.past.length === 0;
    }

    /** Whether something kept is an order of these very steps. @param {unknown} order @returns {order is string[]} */
    function isWhole(order) {
      return Array.isArray(order) && order.length === rows.size && new Set(order).size === rows.size && order.every((id) => rows.has(id));
    }

    return {
      arrange(ids) {
        state = Sequence.begin(ids);
        show();
      },
      read: () => Sequence.complete(state),
      write(raw) {
        if (!isWhole(raw)) return;
        state = Sequence.begin(raw, raw.length);
        show();
      },
      draft: () => state.now.placed > 0 && !Sequence.complete(state) ? { order: state.now.order, placed: state.now.placed } : null,
      restore(draft) {
        if (!draft || !isWhole(draft.order)) return;
        state = Sequence.begin(draft.order, draft.placed);
        show();
      },
      missing: () => Words.say("Place every step first. Still to place: {left}.", { left: state.now.order.length - state.now.placed }),
      judge(marked) {
        const early = new Set((marked.remarks.broken || []).map((/** @type {string[]} */ pair) => pair[1]));
        const critical = new Set((marked.remarks.critical || []).map((/** @type {string[]} */ pair) => pair[1]));
        const named = critical.size > 0 ? critical : early;
        for (const [id, row] of rows) {
          if (!named.has(id)) continue;
          row.dataset.verdict = "hold";
          row.append(Dom.make("span", { class: "step-verdict" }, Words.say("Too early")));
        }
      },
      unjudge() {
        for (const row of rows.values()) {
          delete row.dataset.verdict;
          for (const note of Dom.all(row, ".step-verdict")) note.remove();
        }
      },
    };
  }

  return { mount };
})();
