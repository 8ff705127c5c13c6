/**
 * A record as codes that a phone can read from the screen: raw deflate, base45 (RFC 9285), cut into pieces.
 * Twin of builder/proof/record_codes.py.
 */
const RecordCodes = (() => {
  'use strict';

  const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';
  /** Signs of a piece: a multiple of three, so that a cut never parts the three signs of two bytes. */
  const LONGEST = 480;

  /** @param {Uint8Array} bytes @returns {string} */
  function base45(bytes) {
    let text = '';
    for (let at = 0; at < bytes.length; at += 2) {
      const isPair = at + 1 < bytes.length;
      const value = isPair ? bytes[at] * 256 + bytes[at + 1] : bytes[at];
      text += ALPHABET.charAt(value % 45) + ALPHABET.charAt(Math.floor(value / 45) % 45);
      if (isPair) text += ALPHABET.charAt(Math.floor(value / 2025));
    }
    return text;
  }

  /**
   * The texts of the codes: `JB2:1/3:ABCDEFGH:…`, the letters being the first eight of the record's fingerprint.
   * @param {Uint8Array} record @param {string} fingerprint
   * @param {(bytes: Uint8Array) => Uint8Array} deflate raw deflate, without a dictionary
   * @returns {string[]}
   */
  function texts(record, fingerprint, deflate) {
    const whole = base45(deflate(record));
    const total = Math.max(1, Math.ceil(whole.length / LONGEST));
    const name = fingerprint.replaceAll('-', '').slice(0, 8);
    return Array.from({ length: total }, (_, index) =>
      `JB2:${index + 1}/${total}:${name}:${whole.slice(index * LONGEST, (index + 1) * LONGEST)}`);
  }

  return Object.freeze({ base45, texts });
})();
