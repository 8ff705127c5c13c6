/**
 * Seeded streams: the same seed gives the same draws in every language and for ever.
 * xoshiro128** version 1.1 (Blackman and Vigna, ACM Trans. Math. Software 47, 2021, art. 36).
 * Twin of builder/marking/stream.py.
 */
const Stream = (() => {
  'use strict';

  /** A run of 32-bit numbers. */
  class Run {
    /** @param {ArrayLike<number>} state four words, not all zero */
    constructor(state) {
      this.state = Uint32Array.from(Array.from(state).slice(0, 4));
      if (this.state.length < 4 || this.state.every((word) => word === 0)) {
        throw new RangeError('xoshiro128** starts from four words that are not all zero');
      }
    }

    /** The next number, 0 to 2^32 - 1. @returns {number} */
    next() {
      const s = this.state;
      let [s0, s1, s2, s3] = s;
      const scrambled = Math.imul(turned(Math.imul(s1, 5), 7), 9) >>> 0;
      const t = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= t;
      s[0] = s0;
      s[1] = s1;
      s[2] = s2;
      s[3] = turned(s3, 11);
      return scrambled;
    }

    /**
     * A number from 0 to bound - 1, each equally likely. Numbers below 2^32 mod bound are thrown away,
     * so that the rest divides evenly.
     * @param {number} bound 1 to 2^32
     * @returns {number}
     */
    below(bound) {
      if (!(Number.isInteger(bound) && bound >= 1 && bound <= 0x100000000)) {
        throw new RangeError('a bound is from 1 to 2^32');
      }
      const threshold = 0x100000000 % bound;
      for (;;) {
        const number = this.next();
        if (number >= threshold) return number % bound;
      }
    }

    /**
     * The things in a drawn order: Fisher-Yates, from the last place down.
     * @param {readonly string[]} things
     * @returns {string[]}
     */
    shuffled(things) {
      const order = things.slice();
      for (let last = order.length - 1; last > 0; last -= 1) {
        const other = this.below(last + 1);
        [order[last], order[other]] = [order[other], order[last]];
      }
      return order;
    }
  }

  /** @param {number} word @param {number} left @returns {number} */
  function turned(word, left) {
    return (word << left) | (word >>> (32 - left));
  }

  /**
   * The stream of one question for one purpose.
   * @param {string} seed
   * @param {string} question
   * @param {'options' | 'variant' | 'position'} purpose
   */
  function of(seed, question, purpose) {
    return new Run(Sha256.words(Sha256.utf8(`${seed}\n${question}\n${purpose}`)));
  }

  /**
   * Where a question stands among its like for this seed; sorts as text, the id breaking a tie.
   * @param {string} seed
   * @param {string} question
   * @returns {string}
   */
  function rank(seed, question) {
    return `${Sha256.hex(`${seed}\n${question}`)} ${question}`;
  }

  return Object.freeze({ Run, of, rank });
})();
