/** Base45 (RFC 9285): bytes in the letters that a QR code packs most tightly. Twin of builder/proof/base45.py. */
const Base45 = (() => {
  'use strict';

  const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

  /** @param {Uint8Array} bytes @returns {string} */
  function encode(bytes) {
    let text = '';
    for (let at = 0; at < bytes.length; at += 2) {
      const pair = at + 1 < bytes.length;
      const value = pair ? bytes[at] * 256 + bytes[at + 1] : bytes[at];
      text += ALPHABET[value % 45] + ALPHABET[Math.floor(value / 45) % 45];
      if (pair) text += ALPHABET[Math.floor(value / 2025)];
    }
    return text;
  }

  /** The bytes of a text; throws RangeError for a strange letter, a strange length, or a group too large. @param {string} text */
  function decode(text) {
    if (text.length % 3 === 1) throw new RangeError('This is not base45: its length is not one of base45.');
    const bytes = [];
    for (let at = 0; at < text.length; at += 3) {
      const digits = Array.from(text.slice(at, at + 3), (letter) => ALPHABET.indexOf(letter));
      if (digits.includes(-1)) throw new RangeError('This is not base45: it holds a letter that base45 has not.');
      const value = digits[0] + digits[1] * 45 + (digits[2] ?? 0) * 2025;
      if (value > (digits.length === 3 ? 0xffff : 0xff)) throw new RangeError('This is not base45: a group is too large.');
      if (digits.length === 3) bytes.push(value >> 8);
      bytes.push(value & 0xff);
    }
    return Uint8Array.from(bytes);
  }

  return Object.freeze({ encode, decode });
})();
