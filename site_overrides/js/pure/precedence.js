/**
 * What it means that one step comes before another: broken pairs, and the fewest steps to move.
 * Twin of builder/marking/precedence.py, which gives the sources.
 */
const Precedence = (() => {
  'use strict';

  /**
   * The pairs that an order reverses, in the order of `before`.
   * @param {readonly (readonly string[])[]} before
   * @param {readonly string[]} order
   * @returns {string[][]}
   */
  function broken(before, order) {
    const position = new Map(order.map((step, index) => [step, index]));
    /** @param {string} step */
    const place = (step) => /** @type {number} */ (position.get(step));
    return before.filter(([first, then]) => place(first) > place(then)).map((pair) => pair.slice());
  }

  /**
   * How many steps must be taken out and put elsewhere to mend all of the broken pairs: a maximum matching.
   * @param {readonly (readonly string[])[]} pairs every reversed pair of a transitive relation
   * @returns {number}
   */
  function fewestMoves(pairs) {
    /** @type {Map<string, string[]>} */
    const follows = new Map();
    for (const [first, then] of pairs) {
      const list = follows.get(first) ?? [];
      list.push(then);
      follows.set(first, list);
    }
    /** @type {Map<string, string>} */
    const partner = new Map();

    /** @param {string} first @param {Set<string>} tried @returns {boolean} */
    function augment(first, tried) {
      for (const then of follows.get(first) ?? []) {
        if (tried.has(then)) continue;
        tried.add(then);
        const taken = partner.get(then);
        if (taken === undefined || augment(taken, tried)) {
          partner.set(then, first);
          return true;
        }
      }
      return false;
    }

    let moves = 0;
    for (const first of follows.keys()) if (augment(first, new Set())) moves += 1;
    return moves;
  }

  return Object.freeze({ broken, fewestMoves });
})();
