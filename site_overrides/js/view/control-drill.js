/**
 * drill: one moment at a time, its deeds as buttons, what they lead to, and the way so far above. In practice what each deed
 * came to is told at the end; in the check the drill can be gone through once, and then says only that it is done.
 */
const ControlDrill = (() => {
  "use strict";

  /** A second tap sooner than this is taken for a bounce of the glove: the next deeds stand where the last ones stood. */
  const BOUNCE = 400;

  /** @type {Pace[]} */
  const PACES = ["set", "slower", "none"];

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const drill = Dom.one(section, ".drill");
    const key = /** @type {DrillKey} */ (host.key);
    /** @type {PacePlace} */
    const place = section.closest(".practice") ? "practice" : "check";
    const moments = new Map(Dom.all(drill, "[data-moment]").map((row) => [row.dataset.moment || "", row]));
    const texts = new Map(Dom.all(drill, "[data-deed]").map((row) => [row.dataset.deed || "", Dom.one(row, ".deed-text")]));
    // The check takes the answers off the page; what follows a deed is told from here.
    const told = new Map(Dom.all(section, ".answer [data-deed]").map((row) => [row.dataset.deed || "", row.querySelector(".reason")]));
    const isTimed = [...moments.values()].some((row) => row.dataset.seconds);

    let order = key.deeds;
    /** @type {string[]} */
    let deeds = [];
    /** How many of the deeds happened because time was up, by their place. @type {Set<number>} */
    let late = new Set();
    let isGoing = false;
    let isJudged = false;
    let lastTap = -BOUNCE;
    /** @type {{element: HTMLElement, stop: () => void} | null} */
    let clock = null;

    const stage = Dom.make("div", { class: "drill-stage" });
    const said = Dom.make("p", { class: "unseen", role: "status" });
    drill.append(stage, said);
    show();

    function way() {
      return /** @type {Way} */ (DrillWay.follow(key, deeds));
    }

    function show() {
      clock?.stop();
      clock = null;
      const { isOver } = way();
      if (isJudged) stage.replaceChildren(...(deeds.length > 0 ? [log(), ending()] : []));
      else if (isOver) stage.replaceChildren(...(place === "practice" ? [log(), ending()] : [done()]));
      else stage.replaceChildren(...(deeds.length > 0 ? [log()] : []), isGoing ? now() : beginning());
    }

    /** The way so far: each moment, what was done, what came of it. */
    function log() {
      const steps = way().moments.map((moment, index) => {
        const deed = deeds[index];
        const reason = told.get(deed);
        const isCritical = "critical" in key.moments[moment][deed];
        return Dom.make("li", { class: "way-step", "data-verdict": isJudged && verdictName(moment, deed) },
          Dom.make("div", { class: "way-moment" }, Dom.contents(momentText(moment))),
          Dom.make("p", { class: "way-deed" },
            late.has(index) && Dom.make("span", { class: "label way-late" }, Words.say("Time was up")), late.has(index) && " ",
            Dom.make("span", {}, Dom.contents(text(deed)))),
          reason && !isCritical && Dom.make("p", { class: "way-told" }, Dom.contents(reason)),
          isJudged && cost(moment, deed));
      });
      return Dom.make("ol", { class: "way", "aria-label": Words.say("The way so far") }, ...steps);
    }

    /** @param {string} moment @param {string} deed */
    function verdictName(moment, deed) {
      const done = key.moments[moment][deed];
      if ("critical" in done) return "critical";
      return done.penalty > 0 ? "hold" : "right";
    }

    /** What a deed costs; what a critical error does to people is said below, in the remark. @param {string} moment @param {string} deed */
    function cost(moment, deed) {
      const done = key.moments[moment][deed];
      const words = "critical" in done ? Words.say("Critical")
        : done.penalty > 0 ? Words.say("Costs {share} of the mark", { share: `${done.penalty / 10}\u00a0%` }) : "";
      return words && Dom.make("p", { class: "way-cost label" }, words);
    }

    /** How it ended, and what that is worth. */
    function ending() {
      const { here } = way();
      if (here === "") return Dom.make("p", { class: "drill-over label" }, Words.say("The drill ends here"));
      return Dom.make("div", { class: "drill-end" },
        Dom.make("p", { class: "label" }, Words.say("The end")),
        Dom.make("div", { class: "moment-text" }, Dom.contents(momentText(here))),
        isJudged && Dom.make("p", { class: "drill-marks" }, Words.say("{share} of the mark", { share: `${Mark.mark(key, 0, deeds).mark / 10}\u00a0%` })));
    }

    /** All that the check says of a drill that was gone through. */
    function done() {
      return Dom.make("p", { class: "drill-done", tabindex: "-1" },
        late.has(deeds.length - 1) && Dom.make("strong", {}, Words.say("Time was up")), late.has(deeds.length - 1) && " · ",
        Dom.make("strong", {}, Words.say("Done.")), " ", Words.say("A drill of the check is gone through once. What came of it is told when the check is handed in."));
    }

    function beginning() {
      return Dom.make("div", { class: "drill-begin" },
        isTimed && paces(),
        Dom.button(deeds.length > 0 ? Words.say("Go on with it") : Words.say("Begin"), () => {
          isGoing = true;
          next();
        }, "first"));
    }

    function paces() {
      const name = `${section.dataset.question}-time`;
      const words = { set: Words.say("As set"), slower: Words.say("Slower"), none: Words.say("No limit") };
      return Dom.make("fieldset", { class: "pace" }, Dom.make("legend", { class: "label" }, Words.say("Time to act")),
        Dom.make("div", { class: "pace-row" }, ...PACES.map((pace) => Dom.make("label", { class: "unit-box" },
          Dom.make("input", { type: "radio", name, value: pace, checked: DrillPace.read(place) === pace, change: () => DrillPace.choose(place, pace) }),
          words[pace]))));
    }

    /** The moment that it has come to. */
    function now() {
      const { here } = way();
      const row = /** @type {HTMLElement} */ (moments.get(here));
      const limit = DrillPace.limit(Number(row.dataset.seconds || 0), DrillPace.read(place));
      if (limit > 0) clock = DrillClock.start(limit, { tell, up: () => act(row.dataset.late || "", true) });
      const words = Words.say("Moment {number}", { number: deeds.length + 1 });
      return Dom.make("div", { class: "drill-now" },
        Dom.make("div", { class: "moment-now", tabindex: "-1", role: "group", "aria-label": words },
          Dom.make("p", { class: "label", "aria-hidden": "true" }, words),
          Dom.make("div", { class: "moment-text" }, Dom.contents(momentText(here)))),
        clock && clock.element,
        Dom.make("div", { class: "deed-buttons", role: "group", "aria-label": Words.say("What do you do?") },
          ...order.filter((deed) => Object.hasOwn(key.moments[here], deed)).map((deed) =>
            Dom.make("button", { type: "button", class: "deed", "data-do": deed, click: (event) => pressed(deed, event) }, Dom.contents(text(deed))))));
    }

    /** @param {string} deed @param {MouseEvent} event */
    function pressed(deed, event) {
      if (event.detail > 0 && event.timeStamp - lastTap < BOUNCE) return;
      lastTap = event.timeStamp;
      act(deed, false);
    }

    /** @param {string} deed @param {boolean} isLate because time was up */
    function act(deed, isLate) {
      const from = way().here;
      const isCritical = "critical" in key.moments[from][deed];
      if (isLate) late.add(deeds.length);
      deeds = [...deeds, deed];
      // What the last deed of the check came to is told with the others, when it is handed in.
      const reason = isCritical || (place === "check" && way().isOver) ? null : told.get(deed);
      next([isLate && Words.say("Time is up. This happens: {deed}", { deed: Dom.text(text(deed)) }), reason && Dom.text(reason)]);
      host.changed();
      if (!way().isOver) return;
      isGoing = false;
      if (place === "check") Dom.focus(Dom.one(stage, ".drill-done"));
    }

    /** Shows where things stand and says it. @param {(string | false | null | undefined)[]} before what came of the last deed */
    function next(before = []) {
      show();
      const { here, isOver } = way();
      if (isOver) return tell(before.filter(Boolean).join(" "));
      const last = stage.querySelector(".way-step:last-child");
      if (last) last.scrollIntoView({ block: "nearest" });
      Dom.one(stage, ".drill-now").scrollIntoView({ block: "nearest" });
      Dom.focus(Dom.one(stage, ".moment-now"));
      return tell([...before, Dom.text(momentText(here)), clock && Dom.text(clock.element)].filter(Boolean).join(" "));
    }

    /** @param {string} words */
    function tell(words) {
      said.textContent = words;
    }

    /** @param {string} moment */
    function momentText(moment) {
      return Dom.one(/** @type {HTMLElement} */ (moments.get(moment)), ".moment-text");
    }

    /** @param {string} deed */
    function text(deed) {
      return /** @type {HTMLElement} */ (texts.get(deed));
    }

    /** @param {unknown} kept */
    function take(kept) {
      const found = kept === null || kept === undefined ? [] : kept;
      deeds = DrillWay.follow(key, found) ? /** @type {string[]} */ (found) : [];
      late = new Set();
      isGoing = false;
      show();
    }

    return {
      arrange(ids) {
        order = ids;
        show();
      },
      read: () => way().isOver ? deeds.slice() : null,
      write: take,
      draft: () => deeds.length > 0 && !way().isOver ? { deeds: deeds.slice() } : null,
      restore: (draft) => take(draft?.deeds),
      missing: () => Words.say("Go through it to the end first."),
      settles: Words.say("Go through it again"),
      judge() {
        isJudged = true;
        show();
      },
      unjudge() {
        isJudged = false;
        show();
      },
    };
  }

  return { mount };
})();
