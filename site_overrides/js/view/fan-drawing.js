/**
 * The drawing and the instruments of a fan bench: moves what is there already, and makes nothing new.
 * @typedef {{ flow: number, shown: number, alarm: number }} FanScale the largest flow and reading of the table, and the alarm's
 */
const FanDrawing = (() => {
  "use strict";

  const BLADES = { x: 156, y: 86 };
  /** Top and bottom of the duct, and where its gate stands. */
  const DUCT = { top: 70, low: 102 };
  const GAP = 18;
  const TUBE = { top: 6, low: 60 };
  const BAR = 86;
  const LEVEL = 64;
  /** Where the float's scale begins, as a share of the least flow. */
  const LOWEST = 0.6;

  /**
   * @param {HTMLElement} within the bench
   * @param {FanScale} scale
   * @param {readonly string[]} hides controls whose place must not be seen
   */
  function make(within, scale, hides) {
    /** @param {string} name @returns {Element[]} */
    const parts = (name) => Dom.all(within, `.fan-${name}`);
    /** @param {string} name @param {string} attribute @param {string} value */
    const put = (name, attribute, value) => { for (const part of parts(name)) part.setAttribute(attribute, value); };
    /** @param {Element} part @param {boolean} seen */
    const see = (part, seen) => part.setAttribute("visibility", seen ? "visible" : "hidden");
    const dust = parts("dust").flatMap((group) => [...group.children]);
    const arrows = parts("arrows").flatMap((group) => [...group.children]);
    for (const control of ["load", "opening", "charge"]) {
      for (const sign of parts(`unknown-${control}`)) see(sign, hides.includes(control));
    }
    for (const mark of parts("least")) mark.setAttribute("transform", `translate(${5 + (BAR * scale.alarm) / scale.flow} 0)`);
    for (const mark of parts("least-shown")) mark.setAttribute("transform", `translate(0 ${height(scale.alarm)})`);
    for (const mark of [...parts("least"), ...parts("least-shown")]) see(mark, scale.alarm > 0);
    for (const part of hides.includes("opening") ? parts("gate") : []) see(part, false);

    /** The scale of the tube begins a little below the least flow, as on a real one. @param {number} shown */
    function height(shown) {
      const from = LOWEST * scale.alarm;
      return TUBE.low - ((TUBE.low - TUBE.top) * Math.max(0, shown - from)) / (scale.shown - from);
    }

    /**
     * @param {{ flow: number, shown: number, speed: number }} readings the table's integers, speed in percent
     * @param {{ load: number, opening: number, charge: number }} shares in percent
     */
    function draw({ flow, shown, speed }, { load, opening, charge }) {
      const share = flow / scale.flow;
      const seen = flow <= 0 ? 0 : Math.max(1, Math.round(share * arrows.length));
      arrows.forEach((arrow, index) => see(arrow, index < seen));
      for (const part of [...parts("in"), ...parts("out")]) see(part, seen > 0);
      put("bar", "d", `M5 21h${(BAR * share).toFixed(1)}v18H5z`);
      put("float", "transform", `translate(0 ${(height(shown) - 9).toFixed(1)})`);
      put("needle", "transform", `rotate(${((180 * speed) / 100).toFixed(1)} 48 54)`);
      dust.forEach((cloud, index) => see(cloud, !hides.includes("load") && load > (100 * index) / dust.length));
      const closed = ((DUCT.low - DUCT.top) / 2) * (1 - opening / 100);
      put("gate-top", "d", `M334 ${DUCT.top}h8v${closed.toFixed(1)}h-8z`);
      put("gate-low", "d", `M334 ${DUCT.low}h8v${(-closed).toFixed(1)}h-8z`);
      put("level", "d", `M12 22h${hides.includes("charge") ? 0 : ((LEVEL * charge) / 100).toFixed(1)}v22H12z`);
    }

    /** Blades and arrows a little further on. @param {number} turns of the fan @param {number} way how far the air went, in gaps between arrows */
    function turn(turns, way) {
      put("blades", "transform", `rotate(${((turns % 1) * 360).toFixed(1)} ${BLADES.x} ${BLADES.y})`);
      put("arrows", "transform", `translate(${((way % 1) * GAP).toFixed(1)} 0)`);
    }

    return { draw, turn };
  }

  return Object.freeze({ make });
})();
