/**
 * Base58 with Bitcoin's alphabet, as multibase `z` and did:key use it (W3C Controlled Identifiers 1.0, 2.4).
 * Twin of builder/proof/base58.py.
 */
const Base58 = (() => {
  'use strict';

  const ALPHABET = '123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz';

  /** @param {Uint8Array} bytes @returns {string} */
  function encode(bytes) {
    return zeros(bytes, (each) => each === 0, '1') + converted([...bytes], 256, 58).map((digit) => ALPHABET[digit]).join('');
  }

  /** The bytes of a text; throws RangeError for a letter that is not in the alphabet. @param {string} text */
  function decode(text) {
    const digits = Array.from(text, (letter) => {
      const digit = ALPHABET.indexOf(letter);
      if (digit < 0) throw new RangeError('This is not base58.');
      return digit;
    });
    const leading = zeros(digits, (digit) => digit === 0, '0').length;
    return Uint8Array.from([...new Array(leading).fill(0), ...converted(digits, 58, 256)]);
  }

  /** @param {ArrayLike<number>} all @param {(each: number) => boolean} zero @param {string} sign */
  function zeros(all, zero, sign) {
    let count = 0;
    while (count < all.length && zero(all[count])) count += 1;
    return sign.repeat(count);
  }

  /** Digits of one base in another, highest first, without zeros in front. @param {number[]} digits @param {number} from @param {number} to */
  function converted(digits, from, to) {
    /** @type {number[]} */
    const result = [];
    for (const digit of digits) {
      let carry = digit;
      for (let at = 0; at < result.length; at += 1) {
        carry += result[at] * from;
        result[at] = carry % to;
        carry = Math.floor(carry / to);
      }
      for (; carry > 0; carry = Math.floor(carry / to)) result.push(carry % to);
    }
    return result.reverse();
  }

  return Object.freeze({ encode, decode });
})();
