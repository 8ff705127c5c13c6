/**
 * What an answer is worth that was given with the hands: a place on a drawing, a drill, units sorted, a bench set.
 * Twin of builder/marking/spot.py, drill.py, triage.py and setting.py.
 */
const MarkByHand = (() => {
  'use strict';

  const { WEIGHT, thousandths, malformed, isMapping } = Marks;

  /** @param {SpotKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function spot(key, _variant, answer) {
    if (typeof answer !== 'string' || !key.spots.includes(answer)) return malformed('spot');
    return { mark: answer === key.right ? WEIGHT : 0, remarks: { kind: 'spot' } };
  }

  /** @param {DrillKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function drill(key, _variant, answer) {
    if (!Array.isArray(answer) || answer.length > Object.keys(key.moments).length) return malformed('drill');
    let here = key.start;
    let penalty = 0;
    for (const [index, deed] of answer.entries()) {
      const possible = Object.hasOwn(key.moments, here) ? key.moments[here] : {};
      if (typeof deed !== 'string' || !Object.hasOwn(possible, deed)) return malformed('drill');
      const done = possible[deed];
      if ('critical' in done) {
        return index === answer.length - 1 ? { mark: 0, remarks: drillRemarks({ critical: deed }) } : malformed('drill');
      }
      penalty += done.penalty;
      here = done.to;
    }
    if (!Object.hasOwn(key.ends, here)) return { mark: 0, remarks: { kind: 'drill', problem: 'unfinished' } };
    return { mark: Math.max(0, key.ends[here] - penalty), remarks: drillRemarks({ end: here, penalty }) };
  }

  /** @param {{ critical?: string, end?: string, penalty?: number }} facts @returns {Remarks} */
  function drillRemarks({ critical = '', end = '', penalty = 0 }) {
    return { kind: 'drill', critical, end, penalty };
  }

  /** @param {TriageKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function triage(key, _variant, answer) {
    if (!isMapping(answer)) return malformed('triage');
    const given = Object.entries(answer);
    if (!given.every(([unit, place]) => key.units.includes(unit) && typeof place === 'string' && key.places.includes(place))) {
      return malformed('triage');
    }
    /** How much stricter than right; null where the unit was left out. @param {string} unit */
    const stricter = (unit) =>
      Object.hasOwn(answer, unit) ? key.places.indexOf(String(answer[unit])) - key.places.indexOf(key.right[unit]) : null;
    const missed = key.units.filter((unit) => (stricter(unit) ?? 0) < 0);
    const needless = key.units.filter((unit) => (stricter(unit) ?? 0) > 0);
    const left = key.units.filter((unit) => stricter(unit) === null);
    const dangerous = key.dangerous.filter((unit) => missed.includes(unit));
    const good = key.units.length - missed.length - needless.length - left.length;
    const costs = 2 * missed.length + needless.length * (key.places.length === 2 ? 2 : 1);
    const share = thousandths(Math.max(0, 2 * good - costs), 2 * key.units.length);
    const nothing = dangerous.length > 0 || (key.whole && good < key.units.length);
    return { mark: nothing ? 0 : share, remarks: { kind: 'triage', missed, needless, left, dangerous } };
  }

  /** @param {SettingKey} key @param {number} _variant @param {unknown} answer @returns {Marked} */
  function setting(key, _variant, answer) {
    if (!isMapping(answer) || Object.keys(answer).length !== key.controls.length) return malformed('setting');
    const places = key.controls.map((control) => (Object.hasOwn(answer, control) ? answer[control] : null));
    const fits = places.every((place, index) => Number.isInteger(place) && Number(place) >= 0 && Number(place) < key.counts[index]);
    if (!fits) return malformed('setting');
    const right = key.accepted.some((accepted) => accepted.every((place, index) => place === places[index]));
    return { mark: right ? WEIGHT : 0, remarks: { kind: 'setting' } };
  }

  return Object.freeze({ spot, drill, triage, setting });
})();
