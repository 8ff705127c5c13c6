/**
 * How much time a drill gives: as set, three times as long, or no limit. What was chosen is remembered on this device, for
 * practice and for the check apart. Until then the check has no limit, nor has anything for readers who want less motion.
 * @typedef {"set" | "slower" | "none"} Pace
 * @typedef {"practice" | "check"} PacePlace
 */
const DrillPace = (() => {
  "use strict";

  const KEY = "journeybook.drill-time";
  /** @type {Record<Pace, number>} So many times the seconds of the drill; 0 is no limit. */
  const TIMES = { set: 1, slower: 3, none: 0 };

  /** @type {() => TextStorage | null} */
  let findStorage = () => null;
  let isQuiet = () => false;
  /** What was chosen in this window, where the browser keeps nothing. @type {Partial<Record<PacePlace, Pace>>} */
  let chosen = {};

  /**
   * @param {() => TextStorage | null} storage may throw, as browsers do where storage is forbidden
   * @param {() => boolean} quiet whether the reader has asked for less motion
   */
  function keepIn(storage, quiet) {
    findStorage = storage;
    isQuiet = quiet;
    chosen = {};
  }

  /** @param {PacePlace} place @returns {Pace} */
  function read(place) {
    return chosen[place] ?? kept()[place] ?? (place === "check" || isQuiet() ? "none" : "set");
  }

  /** @param {PacePlace} place @param {Pace} pace */
  function choose(place, pace) {
    chosen = { ...chosen, [place]: pace };
    try {
      findStorage()?.setItem(KEY, JSON.stringify({ ...kept(), ...chosen }));
    } catch {
      // Then it is remembered for as long as the page is open.
    }
  }

  /** The choices in the storage that are choices. @returns {Partial<Record<PacePlace, Pace>>} */
  function kept() {
    try {
      const found = JSON.parse(findStorage()?.getItem(KEY) || "{}");
      return Object.fromEntries(Object.entries(found).filter(([, pace]) => typeof pace === "string" && Object.hasOwn(TIMES, pace)));
    } catch {
      return {};
    }
  }

  /** How many seconds there are; 0 where nothing hurries. @param {number} seconds of the drill @param {Pace} pace */
  function limit(seconds, pace) {
    return seconds * TIMES[pace];
  }

  return { keepIn, read, choose, limit };
})();
