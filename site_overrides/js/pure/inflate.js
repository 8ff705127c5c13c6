/**
 * Deflated bytes (RFC 1951) opened within a cap.
 */
const Inflate = (() => {
  'use strict';

  /** Bytes opened at a time: deflate packs at most a thousandfold, so that a piece never swells to more than 64 kB. */
  const PIECE = 64;

  /**
   * The bytes that were deflated, opened piece by piece, so that nothing swells beyond the cap; what follows them is left out. Throws
   * for more than the cap, and for what is damaged or cut short.
   * @param {Uint8Array} data @param {number} cap @param {Uint8Array} [dictionary]
   * @returns {Uint8Array}
   */
  function first(data, cap, dictionary) {
    /** @type {Uint8Array[]} */
    const pieces = [];
    let size = 0;
    const stream = new Fflate.Inflate(dictionary ? { dictionary } : {}, (piece) => {
      size += piece.length;
      if (size > cap) throw new RangeError('more than the cap');
      pieces.push(piece);
    });
    if (!data.length) throw new RangeError('nothing to inflate');
    for (let at = 0; at < data.length; at += PIECE) {
      stream.push(data.subarray(at, at + PIECE), at + PIECE >= data.length);
    }
    const whole = new Uint8Array(size);
    let at = 0;
    for (const piece of pieces) {
      whole.set(piece, at);
      at += piece.length;
    }
    return whole;
  }

  /** The same, where nothing may follow. @param {Uint8Array} data @param {number} cap @param {Uint8Array} [dictionary] @returns {Uint8Array} */
  function all(data, cap, dictionary) {
    const whole = first(data, cap, dictionary);
    try {
      first(data.subarray(0, -1), cap, dictionary);
    } catch {
      return whole;
    }
    throw new RangeError('something follows');
  }

  return Object.freeze({ first, all });
})();
