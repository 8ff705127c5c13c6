/**
 * Where the deeds done so far have led in a drill. Plain functions over the marking key, so that a way that was kept can be
 * gone on with, and one that no page of ours could have kept is not.
 * @typedef {{moments: string[], here: string, isOver: boolean}} Way
 *   `moments`: where each deed was done; `here`: where things stand now, empty after a critical error
 */
const DrillWay = (() => {
  "use strict";

  /** @param {DrillKey} key @param {unknown} deeds @returns {Way | null} null where one of them was not possible */
  function follow(key, deeds) {
    if (!Array.isArray(deeds)) return null;
    /** @type {string[]} */
    const moments = [];
    let here = key.start;
    for (const deed of deeds) {
      const possible = Object.hasOwn(key.moments, here) ? key.moments[here] : {};
      if (typeof deed !== "string" || !Object.hasOwn(possible, deed)) return null;
      const done = possible[deed];
      moments.push(here);
      here = "critical" in done ? "" : done.to;
    }
    return { moments, here, isOver: here === "" || Object.hasOwn(key.ends, here) };
  }

  return { follow };
})();
