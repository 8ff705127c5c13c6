/**
 * Where the controls of a bench stand: plain data and functions that return new data.
 * @typedef {{ places: number[], start: number[], touched: boolean }} BenchPlaces places counted from 0, in the order of the controls
 */
const BenchState = (() => {
  'use strict';

  /** @param {number[]} start @returns {BenchPlaces} */
  function begin(start) {
    return { places: start, start, touched: false };
  }

  /**
   * @param {BenchPlaces} state @param {number} control @param {number} place outside its ends it stays at them
   * @param {number} count how many places the control has @returns {BenchPlaces}
   */
  function move(state, control, place, count) {
    const within = Math.max(0, Math.min(place, count - 1));
    return { ...state, places: state.places.map((each, index) => (index === control ? within : each)), touched: true };
  }

  /** Back to the start; whoever has set it so by hand has still answered. @param {BenchPlaces} state @returns {BenchPlaces} */
  function reset(state) {
    return { ...state, places: state.start };
  }

  /** A place between two, for what glides from one to the other. @param {number[]} from @param {number[]} to @param {number} share */
  function between(from, to, share) {
    return to.map((place, index) => from[index] + (place - from[index]) * share);
  }

  return Object.freeze({ begin, move, reset, between });
})();
