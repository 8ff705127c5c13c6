/**
 * A certificate as the letters of its QR code: `JB1:`, then base45 of the canonical certificate, deflated with dictionary 1.
 */
const CertificateCode = (() => {
  'use strict';

  const PREFIX = 'JB1:';
  const LONGEST = 4000;
  const SIZE_CAP = 16_384;
  const PIECE = 1024;

  /** A text that is no code of a certificate, or one that was cut short. */
  class NoCode extends Error {}

  /** Whether a text begins as a code does, after what a pasting may have put around it. @param {string} text */
  function begins(text) {
    return text.trim().toUpperCase().startsWith(PREFIX);
  }

  /**
   * The bytes of the certificate. A line break is left out: a mail may have broken the code. A space is a letter of base45 and stays.
   * @param {string} text
   * @returns {Uint8Array}
   */
  function read(text) {
    const code = text.trim().replace(/[\r\n\t]+/g, '');
    if (!begins(code) || code.length > LONGEST) throw new NoCode('This is not the code of a certificate.');
    try {
      return inflated(Base45.decode(code.slice(PREFIX.length)), SIZE_CAP, Dictionary1.bytes());
    } catch {
      throw new NoCode('The code is damaged or cut short.');
    }
  }

  /**
   * Deflated bytes opened, piece by piece, so that nothing swells beyond the cap. Throws for more, and for what is damaged.
   * @param {Uint8Array} data @param {number} cap @param {Uint8Array} [dictionary]
   * @returns {Uint8Array}
   */
  function inflated(data, cap, dictionary) {
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

  return Object.freeze({ NoCode, begins, read, inflated });
})();
