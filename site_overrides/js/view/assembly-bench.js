/** A bench of kind assembly: put the parts on in any order that keeps the rules; what comes too early is refused, with the reason. */
const AssemblyBench = (() => {
  "use strict";

  /** A second tap sooner than this is taken for a bounce of the glove. */
  const BOUNCE = 300;

  /** @param {HTMLElement} section @param {BenchHost} host @returns {LiveBench} nothing on it is set for a question */
  function mount(section, { data, changed }) {
    const key = /** @type {AssemblyKey} */ (data.key);
    const list = Dom.one(section, "[data-still]");
    const rows = Dom.all(list, "[data-step]");
    const names = new Map(rows.map((row) => [row.dataset.step || "", Dom.text(Dom.one(row, ".assembly-name"))]));
    const order = Dom.one(section, "[data-order]");
    const drawing = AssemblyDrawing.mount(Dom.one(section, ".assembly-drawing"), data, (step) => act(step, null));
    /** @type {string[]} */
    let done = [];
    let refusals = 0;
    let lastTap = -BOUNCE;

    const hint = Dom.make("p", { class: "hint" }, Words.say("Tap what comes next, here or in the drawing. Any order is right that keeps the rules."));
    const said = Dom.make("p", { class: "unseen", role: "status" });
    const remark = Dom.make("div", { class: "assembly-remark" });
    const back = Dom.button(Words.say("Take the last one back"), takeBack);
    const again = Dom.button(Words.say("Start again"), startAgain, "quiet");
    const doneHeading = Dom.make("p", { class: "label assembly-heading" }, Words.say("Done"));
    const doneList = Dom.make("ol", { class: "assembly-done" });
    const end = Dom.make("div", { class: "assembly-end", tabindex: "-1" });
    const heading = Dom.one(section, ".assembly-hands > .assembly-heading");

    for (const row of rows) furnish(row);
    heading.before(hint);
    Dom.one(section, ".assembly-sheet").append(Dom.make("div", { class: "assembly-foot" }, back, again));
    Dom.one(section, ".assembly-hands").append(end, doneHeading, doneList, said);
    const rulesSheet = Dom.one(section, "[data-rules]");
    rulesSheet.removeAttribute("open");
    // On paper nobody can unfold them.
    addEventListener("beforeprint", () => rulesSheet.setAttribute("open", ""));
    show();
    return { read: () => ({}), write: () => {}, lock: () => {} };

    /** @param {HTMLElement} row */
    function furnish(row) {
      const press = Dom.make("button", { type: "button", class: "assembly-step", click: (event) => pressed(row, event) });
      press.append(...row.childNodes);
      row.append(press);
    }

    /** @param {HTMLElement} row @param {MouseEvent} event */
    function pressed(row, event) {
      if (event.detail > 0 && event.timeStamp - lastTap < BOUNCE) return;
      lastTap = event.timeStamp;
      act(row.dataset.step || "", row);
    }

    /** @param {string} step @param {HTMLElement | null} row where it was pressed; null for the drawing */
    function act(step, row) {
      if (done.includes(step) || !names.has(step)) return;
      const { waits, rules } = Assembly.refused(key, done, step);
      if (waits.length > 0) return refuse(step, rules, row);
      clear();
      const next = row ? nextAfter(row) : null;
      done = [...done, step];
      show();
      said.textContent = Words.say("{step}: number {place} of {total}.", { step: name(step), place: done.length, total: key.steps.length });
      changed();
      if (done.length === key.steps.length) return finish();
      if (next) Dom.one(next, "button").focus({ preventScroll: true });
    }

    /** The step below, or the one above the last. @param {HTMLElement} row */
    function nextAfter(row) {
      const left = rows.filter((each) => !each.hidden);
      const at = left.indexOf(row);
      return left[at + 1] ?? left[at - 1] ?? null;
    }

    /** @param {string} step @param {number[]} rules broken, critical ones first @param {HTMLElement | null} row */
    function refuse(step, rules, row) {
      refusals += 1;
      const critical = rules.some((index) => key.rules[index].critical);
      const parts = rules.map((index) => brokenRule(index));
      const label = critical ? Words.say("Critical") : Words.say("Too early");
      const words = Words.say("Not yet: {step}.", { step: name(step) });
      remark.replaceChildren(Dom.make("div", { class: "tag tag-hold" },
        Dom.make("span", { class: "tag-shape", "aria-hidden": "true" }),
        Dom.make("div", { class: "tag-body" },
          Dom.make("p", { class: "label tag-label" }, label), Dom.make("p", { class: "broken-what" }, words), ...parts)));
      // Beside what was pressed, so that nobody has to look for it.
      if (row) row.append(remark);
      else Dom.one(section, ".assembly-foot").before(remark);
      drawing.refuse(step);
      remark.scrollIntoView({ block: "nearest" });
      said.textContent = [label + ".", words, ...parts.flatMap((part) => [...part.children].map(Dom.text))].join(" ");
    }

    /** @param {number} index */
    function brokenRule(index) {
      const rule = Dom.one(section, `[data-rule="${index}"]`);
      return Dom.make("div", { class: "broken-rule" },
        Dom.make("p", {}, Dom.contents(rule.querySelector(".reason-of"))),
        Dom.make("p", { class: "tag-why" }, Dom.contents(rule.querySelector(".reason"))));
    }

    function clear() {
      remark.replaceChildren();
      drawing.refuse("");
    }

    function takeBack() {
      const last = done[done.length - 1];
      if (last === undefined) return;
      clear();
      done = done.slice(0, -1);
      show();
      said.textContent = Words.say("{step}: taken back.", { step: name(last) });
      changed();
    }

    function startAgain() {
      if (done.length === 0) return;
      clear();
      done = [];
      refusals = 0;
      show();
      said.textContent = Words.say("Everything lies there again.");
      changed();
    }

    function finish() {
      const told = refusals === 0 ? Words.say("No step was refused.")
        : refusals === 1 ? Words.say("1 step was refused.") : Words.say("{n} steps were refused.", { n: refusals });
      end.replaceChildren(
        Dom.make("div", { class: "tag tag-right" },
          Dom.make("span", { class: "tag-shape", "aria-hidden": "true" }),
          Dom.make("div", { class: "tag-body" },
            Dom.make("p", { class: "label tag-label" }, Words.say("Everything is done, in a right order.")),
            Dom.make("p", {}, told))));
      said.textContent = "";
      Dom.focus(end);
    }

    /** @param {string} step */
    function name(step) {
      return names.get(step) ?? "";
    }

    function show() {
      const isOver = done.length === key.steps.length;
      drawing.show(done);
      for (const row of rows) row.hidden = done.includes(row.dataset.step || "");
      list.hidden = heading.hidden = hint.hidden = isOver;
      doneList.replaceChildren(...done.map((step) => Dom.make("li", {}, name(step))));
      doneHeading.hidden = doneList.hidden = done.length === 0;
      // Never hidden, so that nothing moves under the finger.
      for (const press of [back, again]) press.setAttribute("aria-disabled", String(done.length === 0));
      order.hidden = !isOver;
      if (!isOver) end.replaceChildren();
      end.hidden = !isOver;
    }
  }

  return { mount };
})();
