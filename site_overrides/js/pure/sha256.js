/**
 * SHA-256 (FIPS 180-4) in plain JavaScript, for pages opened over plain http or from a folder, where the
 * browser may keep its own back. Checked against published values in tests/js.
 */
const Sha256 = (() => {
  'use strict';

  const ROUND = new Uint32Array([
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
  ]);
  const START = [
    0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
  ];

  /**
   * The UTF-8 bytes of a text. Half a surrogate pair is refused: it has no bytes, and a replacement
   * would make two different texts look alike.
   * @param {string} text
   * @returns {Uint8Array}
   */
  function utf8(text) {
    const bytes = [];
    for (const character of text) {
      const point = /** @type {number} */ (character.codePointAt(0));
      if (point >= 0xd800 && point <= 0xdfff) throw new RangeError('half of a surrogate pair');
      if (point < 0x80) bytes.push(point);
      else if (point < 0x800) bytes.push(0xc0 | (point >> 6), 0x80 | (point & 63));
      else if (point < 0x10000) {
        bytes.push(0xe0 | (point >> 12), 0x80 | ((point >> 6) & 63), 0x80 | (point & 63));
      } else {
        bytes.push(
          0xf0 | (point >> 18), 0x80 | ((point >> 12) & 63), 0x80 | ((point >> 6) & 63), 0x80 | (point & 63),
        );
      }
    }
    return Uint8Array.from(bytes);
  }

  /**
   * The message with the padding of FIPS 180-4, 5.1.1: a one bit, zeros, and the length in bits.
   * @param {Uint8Array} message
   * @returns {DataView<ArrayBuffer>}
   */
  function padded(message) {
    const blocks = Math.ceil((message.length + 9) / 64);
    const bytes = new Uint8Array(blocks * 64);
    bytes.set(message);
    bytes[message.length] = 0x80;
    const view = new DataView(bytes.buffer);
    view.setUint32(bytes.length - 8, Math.floor(message.length / 0x20000000));
    view.setUint32(bytes.length - 4, (message.length << 3) >>> 0);
    return view;
  }

  /**
   * The eight words of the digest.
   * @param {Uint8Array} message
   * @returns {Uint32Array}
   */
  function words(message) {
    const view = padded(message);
    const hash = Uint32Array.from(START);
    const w = new Uint32Array(64);
    for (let offset = 0; offset < view.byteLength; offset += 64) {
      for (let t = 0; t < 16; t += 1) w[t] = view.getUint32(offset + 4 * t);
      for (let t = 16; t < 64; t += 1) {
        const x = w[t - 15];
        const y = w[t - 2];
        const small0 = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3);
        const small1 = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10);
        w[t] = small1 + w[t - 7] + small0 + w[t - 16];
      }
      let [a, b, c, d, e, f, g, h] = hash;
      for (let t = 0; t < 64; t += 1) {
        const big1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
        const t1 = (h + big1 + ((e & f) ^ (~e & g)) + ROUND[t] + w[t]) | 0;
        const big0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
        const t2 = (big0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
        h = g;
        g = f;
        f = e;
        e = (d + t1) | 0;
        d = c;
        c = b;
        b = a;
        a = (t1 + t2) | 0;
      }
      [a, b, c, d, e, f, g, h].forEach((word, index) => {
        hash[index] = hash[index] + word;
      });
    }
    return hash;
  }

  /** @param {number} word @param {number} right @returns {number} */
  function turn(word, right) {
    return (word >>> right) | (word << (32 - right));
  }

  /**
   * The digest of a text's UTF-8 bytes, or of bytes, as 64 hexadecimal digits.
   * @param {string | Uint8Array} message
   * @returns {string}
   */
  function hex(message) {
    return Array.from(words(typeof message === 'string' ? utf8(message) : message))
      .map((word) => word.toString(16).padStart(8, '0'))
      .join('');
  }

  return Object.freeze({ utf8, words, hex });
})();
