/**
 * A bench of kind `fan` on the page: controls, readings, alarms, and a drawing that moves.
 *
 * Readings glide from place to place; where less motion is asked for they jump. The drawing moves on its own only while it is in
 * sight, and can be held still (WCAG 2.2, 2.2.2).
 */
const FanBench = (() => {
  "use strict";

  const GLIDE = 350;
  /** A reader is told what has become of it when nothing has changed for so long. */
  const TOLD_AFTER = 600;
  /** Turns a second at full speed, in the drawing: far fewer than in truth, so that it never flickers. */
  const TURNS = 0.8;

  /** @param {HTMLElement} section @param {BenchHost} host @returns {LiveBench} */
  function mount(section, { data, changed }) {
    /** @type {FanControlData[]} */
    const controls = data.controls;
    const trial = section.dataset.trial ? JSON.parse(section.dataset.trial) : null;
    /** @type {string[]} */
    const hides = trial?.hides ?? [];
    /** @type {number[]} the controls that can be moved */
    const moved = controls.map((_, index) => index).filter((index) => trial === null || trial.moves.includes(controls[index].of));
    const counts = controls.map((each) => each.places.length);
    /** @type {Record<string, BenchColumn>} */
    const columns = Object.fromEntries(Object.entries(data.columns).map(([of, each]) =>
      [of, BenchTable.column(counts, /** @type {{ along: number[], steps: number[] }} */ (each))]));
    const place = Dom.one(section, ".fan-bench");
    const drawing = FanDrawing.make(place, data.scale, hides);
    const said = Dom.make("p", { class: "unseen", role: "status" });
    const calm = window.matchMedia("(prefers-reduced-motion: reduce)");
    const start = controls.map((each) => trial?.start[each.of] ?? each.start);
    let state = BenchState.begin(start);
    /** What is drawn just now, perhaps between two places. */
    let drawn = start;
    let glide = { from: start, began: 0 };
    let still = false;
    let inSight = true;
    let sound = false;
    let frame = 0;
    let before = 0;
    let turns = 0;
    let way = 0;
    let telling = 0;

    const made = moved.map((index) => FanControls.make(controls[index], `${section.id}-${controls[index].of}`, (to) => {
      if (to < 0 || to >= counts[index]) return;
      set(BenchState.move(state, index, to, counts[index]));
      changed();
    }));
    const buttons = Dom.make("div", { class: "fan-buttons" }, ...buttonsOf());
    place.append(Dom.make("div", { class: "fan-controls" }, ...made.map((each) => each.element)), buttons, said);
    if (typeof IntersectionObserver === "function") {
      new IntersectionObserver((entries) => {
        inSight = entries.some((entry) => entry.isIntersecting);
        noise();
        ask();
      }).observe(place);
    }
    showPlaces();
    showReadings(start);
    ask();

    function buttonsOf() {
      /** @type {(HTMLElement | false)[]} */
      const found = [
        moved.length > 0 && Dom.button(Words.say("Back to the start"), () => { set(BenchState.reset(state)); changed(); }, "quiet"),
        !calm.matches && toggle(Words.say("Hold the picture still"), (on) => { still = on; ask(); }),
        "low-flow" in columns && AlarmSound.possible() && toggle(Words.say("Alarm sound"), (on) => {
          sound = on;
          document[on ? "addEventListener" : "removeEventListener"]("visibilitychange", noise);
          noise();
        }),
      ];
      return found;
    }

    /** @param {string} words @param {(on: boolean) => void} switched */
    function toggle(words, switched) {
      const button = Dom.button(words, () => {
        const on = button.getAttribute("aria-pressed") !== "true";
        button.setAttribute("aria-pressed", String(on));
        switched(on);
      }, "quiet");
      button.setAttribute("aria-pressed", "false");
      return button;
    }

    /** @param {BenchPlaces} next */
    function set(next) {
      state = next;
      showPlaces();
      noise();
      glide = { from: drawn, began: performance.now() };
      if (calm.matches) showReadings(state.places);
      else ask();
      clearTimeout(telling);
      telling = setTimeout(tell, TOLD_AFTER);
    }

    function showPlaces() {
      made.forEach((each, index) => each.show(state.places[moved[index]]));
    }

    /** @param {string} of @param {number[]} at */
    function value(of, at) {
      return columns[of] ? BenchTable.at(columns[of], at) : 0;
    }

    /** @param {string} alarm */
    function sounds(alarm) {
      return value(alarm, state.places) > 0;
    }

    /** @param {number[]} at */
    function showReadings(at) {
      drawn = at;
      for (const { of, places } of data.readings) {
        Dom.one(place, `[data-reading="${of}"] .fan-number`).textContent = BenchTable.words(value(of, at), places);
      }
      /** A control's share in percent, between its places as well. @param {string} of @param {number} without */
      const share = (of, without) => {
        const index = controls.findIndex((each) => each.of === of);
        return index < 0 ? without : BenchTable.at({ along: [index], counts: [counts[index]], values: controls[index].share }, at);
      };
      drawing.draw(
        { flow: value("flow", at), shown: value("shown", at), speed: value("speed", at) / 10 ** data.decimals.speed },
        { load: share("load", 0), opening: share("opening", 100), charge: share("charge", 100) });
      for (const line of Dom.all(place, ".fan-alarm")) {
        const on = sounds(line.dataset.alarm || "");
        line.toggleAttribute("data-sounds", on);
        Dom.one(line, ".fan-alarm-state").textContent = on ? Words.say("sounds") : Words.say("silent");
      }
    }

    function tell() {
      const readings = data.readings.map((/** @type {any} */ each) =>
        `${each.label} ${BenchTable.words(value(each.of, state.places), each.places)} ${each.unit}`);
      const alarms = Dom.all(place, ".fan-alarm").filter((line) => sounds(line.dataset.alarm || ""))
        .map((line) => Words.say("{alarm} sounds", { alarm: Dom.text(Dom.one(line, ".fan-alarm-name")) }));
      said.textContent = `${[...readings, ...alarms].join(". ")}.`;
    }

    function noise() {
      const heard = sound && inSight && !document.hidden;
      const alarm = !heard ? "" : sounds("low-flow") ? "low-flow" : sounds("low-battery") ? "low-battery" : "";
      AlarmSound.play(section, alarm);
    }

    function ask() {
      if (frame === 0 && !calm.matches) frame = requestAnimationFrame(step);
    }

    /** @param {number} time */
    function step(time) {
      frame = 0;
      const passed = Math.min(100, time - before) / 1000;
      before = time;
      const share = Math.min(1, Math.max(0, (time - glide.began) / GLIDE));
      const gliding = drawn.some((each, index) => each !== state.places[index]);
      if (gliding) showReadings(share >= 1 ? state.places : BenchState.between(glide.from, state.places, share));
      if (!still) {
        turns += (passed * TURNS * value("speed", drawn)) / 10 ** data.decimals.speed / 100;
        way += (passed * 2 * value("flow", drawn)) / data.scale.flow;
        drawing.turn(turns, way);
      }
      if (gliding || (!still && inSight)) ask();
    }

    return {
      read: () => state.touched ? Object.fromEntries(moved.map((index) => [controls[index].of, state.places[index]])) : null,
      write(places) {
        const whole = controls.map((each, index) => places?.[each.of] ?? start[index]);
        state = { ...BenchState.begin(start), places: whole, touched: places !== null };
        showPlaces();
        showReadings(whole);
        noise();
      },
      lock() {
        for (const each of made) each.lock();
        buttons.remove();
      },
    };
  }

  return Object.freeze({ mount });
})();
