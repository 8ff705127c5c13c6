/**
 * Steps that are put in order one after the other. The placed ones stand first; every change can be undone.
 * @typedef {{order: string[], placed: number}} Arrangement  the first `placed` of `order` have their place
 * @typedef {{now: Arrangement, past: Arrangement[]}} SequenceState
 */
const Sequence = (() => {
  "use strict";

  /** @param {string[]} order @param {number} [placed] @returns {SequenceState} */
  function begin(order, placed = 0) {
    return { now: { order: [...order], placed }, past: [] };
  }

  /** @param {SequenceState} state @param {Arrangement} now @returns {SequenceState} */
  function changed(state, now) {
    return { now, past: [...state.past, state.now] };
  }

  /** A waiting step gets the next number; a placed one goes back to waiting. @param {SequenceState} state @param {string} step */
  function tap(state, step) {
    const { order, placed } = state.now;
    const from = order.indexOf(step);
    if (from < 0) return state;
    const others = order.filter((each) => each !== step);
    const into = from < placed ? placed - 1 : placed;
    others.splice(into, 0, step);
    return changed(state, { order: others, placed: from < placed ? placed - 1 : placed + 1 });
  }

  /**
   * Moves a placed step among the placed ones.
   * @param {SequenceState} state @param {string} step @param {-1 | 1} by
   */
  function move(state, step, by) {
    const { order, placed } = state.now;
    const from = order.indexOf(step);
    const into = from + by;
    if (from < 0 || from >= placed || into < 0 || into >= placed) return state;
    const moved = [...order];
    moved[from] = order[into];
    moved[into] = step;
    return changed(state, { order: moved, placed });
  }

  /** @param {SequenceState} state @returns {SequenceState} */
  function undo(state) {
    if (state.past.length === 0) return state;
    return { now: state.past[state.past.length - 1], past: state.past.slice(0, -1) };
  }

  /** All steps in order, or null while some still wait. @param {SequenceState} state */
  function complete(state) {
    return state.now.placed === state.now.order.length ? [...state.now.order] : null;
  }

  return { begin, tap, move, undo, complete };
})();
