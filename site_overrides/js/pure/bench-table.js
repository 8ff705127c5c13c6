/**
 * The table behind a bench: what a reading says at and between the places of its controls. Nothing is worked out here that
 * Python has not worked out before. Twin of builder/benches/interpolation.py.
 * @typedef {{ along: number[], counts: number[], values: number[] }} BenchColumn
 */
const BenchTable = (() => {
  'use strict';

  /**
   * @param {readonly number[]} counts how many places each control has
   * @param {{ along: number[], steps: number[] }} data the controls it depends on, and the steps from value to value
   * @returns {BenchColumn}
   */
  function column(counts, { along, steps }) {
    let value = 0;
    return { along, counts: along.map((axis) => counts[axis]), values: steps.map((step) => (value += step)) };
  }

  /**
   * The value at a place of each control, counted from 0; multilinear between the places.
   * @param {BenchColumn} of
   * @param {readonly number[]} places
   * @returns {number}
   */
  function at(of, places) {
    const low = [];
    const share = [];
    for (const [number, axis] of of.along.entries()) {
      const place = Math.min(Math.max(places[axis], 0), of.counts[number] - 1);
      const below = Math.min(Math.floor(place), Math.max(of.counts[number] - 2, 0));
      low.push(below);
      share.push(place - below);
    }
    let found = 0;
    for (let corner = 0; corner < 2 ** low.length; corner += 1) {
      let weight = 1;
      let index = 0;
      for (const [number, below] of low.entries()) {
        const up = (corner >> (low.length - 1 - number)) & 1;
        weight *= up ? share[number] : 1 - share[number];
        index = index * of.counts[number] + Math.min(below + up, of.counts[number] - 1);
      }
      if (weight !== 0) found += weight * of.values[index];
    }
    return found;
  }

  /**
   * An integer of the table in digits, with its decimal places and a real minus.
   * @param {number} value
   * @param {number} places
   * @returns {string}
   */
  function words(value, places) {
    const digits = String(Math.abs(Math.round(value))).padStart(places + 1, '0');
    const whole = digits.slice(0, digits.length - places);
    const sign = Math.round(value) < 0 ? '−' : '';
    return places === 0 ? sign + whole : `${sign}${whole}.${digits.slice(digits.length - places)}`;
  }

  return Object.freeze({ column, at, words });
})();
