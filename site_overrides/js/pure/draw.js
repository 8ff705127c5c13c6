/**
 * Which questions a form holds and in which order everything stands: form-algorithm 1.
 * Twin of builder/marking/draw.py.
 */
const Draw = (() => {
  'use strict';

  const ALGORITHM = 1;

  /**
   * The form for a seed, in the order of asking.
   * @param {Plan} plan
   * @param {string} seed
   * @param {readonly string[]} avoid taken only where the others do not suffice
   * @returns {Asked[]}
   */
  function form(plan, seed, avoid) {
    const drawn = [
      ...plan.gates.flatMap((gate) => taken(gate.questions, 1, seed, avoid)),
      ...plan.cells.flatMap((cell) => taken(cell.questions, cell.draw, seed, avoid)),
    ];
    return drawn
      .map((id) => ({ id, position: Stream.of(seed, id, 'position').next() }))
      .sort((a, b) => a.position - b.position || compare(a.id, b.id))
      .map(({ id }) => {
        const shape = plan.questions[id];
        return {
          q: id,
          variant: Stream.of(seed, id, 'variant').below(shape.variants),
          options: arranged(shape, seed, id),
        };
      });
  }

  /**
   * @param {readonly string[]} questions
   * @param {number} count
   * @param {string} seed
   * @param {readonly string[]} avoid
   * @returns {string[]}
   */
  function taken(questions, count, seed, avoid) {
    const ranked = questions
      .map((id) => ({ id, rank: Stream.rank(seed, id) }))
      .sort((a, b) => compare(a.rank, b.rank))
      .map(({ id }) => id);
    const fresh = ranked.filter((id) => !avoid.includes(id));
    const seen = ranked.filter((id) => avoid.includes(id));
    return [...fresh, ...seen].slice(0, count);
  }

  /** @param {string} a @param {string} b @returns {number} */
  function compare(a, b) {
    return a < b ? -1 : a > b ? 1 : 0;
  }

  /**
   * The options in the order in which they are shown first. Steps to put in order never start in a right order:
   * they are shuffled again from the order of the key, in the same stream, until a rule is broken.
   * @param {Shape} shape
   * @param {string} seed
   * @param {string} question
   * @returns {string[]}
   */
  function arranged(shape, seed, question) {
    if (!shape.shuffle) return shape.options.slice();
    const stream = Stream.of(seed, question, 'options');
    const before = shape.before ?? [];
    let order = stream.shuffled(shape.options);
    while (before.length > 0 && Precedence.broken(before, order).length === 0) {
      order = stream.shuffled(shape.options);
    }
    return order;
  }

  return Object.freeze({ ALGORITHM, form, arranged });
})();
