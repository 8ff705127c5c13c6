/**
 * Which text stands for plain data: the one form of RFC 8785, restricted to what evidence may hold.
 * Twin of builder/marking/canonical.py.
 */
const Canonical = (() => {
  'use strict';

  const DEPTH_CAP = 32;
  const SIZE_CAP = 1 << 20;

  /** Data or text that is not canonical; `reason` is one word, the same as in Python. */
  class Refused extends Error {
    /** @param {string} reason @param {string} detail */
    constructor(reason, detail) {
      super(detail);
      this.name = 'Refused';
      this.reason = reason;
    }
  }

  /**
   * The canonical text of a value. Throws Refused for floats, large integers, half surrogate pairs,
   * and whatever JSON has no word for.
   * @param {unknown} value
   * @returns {string}
   */
  function write(value) {
    return text(value, 0);
  }

  /** @param {unknown} value @param {number} depth @returns {string} */
  function text(value, depth) {
    if (typeof value === 'string') return quoted(value);
    if (typeof value === 'boolean' || value === null) return String(value);
    if (typeof value === 'number') {
      if (!Number.isSafeInteger(value)) throw new Refused('number', `${value} is not an exact integer.`);
      return String(value);
    }
    if (typeof value !== 'object') throw new Refused('type', `A ${typeof value} cannot stand in evidence.`);
    if (depth >= DEPTH_CAP) throw new Refused('depth', `Lists and objects are nested more than ${DEPTH_CAP} deep.`);
    if (Array.isArray(value)) return `[${Array.from(value, (each) => text(each, depth + 1)).join(',')}]`;
    // The default order of sort() is by UTF-16 code units, as RFC 8785, 3.2.3 asks.
    const members = Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, each]) => `${quoted(key)}:${text(each, depth + 1)}`);
    return `{${members.join(',')}}`;
  }

  /** @param {string} value @returns {string} */
  function quoted(value) {
    if (!isWellFormed(value)) throw new Refused('surrogate', 'A text holds half of a surrogate pair.');
    return JSON.stringify(value);
  }

  /** @param {string} value @returns {boolean} */
  function isWellFormed(value) {
    for (const character of value) {
      const point = /** @type {number} */ (character.codePointAt(0));
      if (point >= 0xd800 && point <= 0xdfff) return false;
    }
    return true;
  }

  /**
   * The contents of a canonical text; throws Refused for anything else. What JSON.parse forgives (a key given
   * twice, spaces, `1.0`) comes out different when written again, and is refused by that.
   * @param {string} source
   * @returns {unknown}
   */
  function read(source) {
    if (!isWellFormed(source)) throw new Refused('utf-8', 'The text holds half of a surrogate pair, which has no UTF-8.');
    if (Sha256.utf8(source).length > SIZE_CAP) throw new Refused('size', `The file is larger than ${SIZE_CAP} bytes.`);
    /** @type {unknown} */
    let value;
    try {
      value = JSON.parse(source);
    } catch (error) {
      throw new Refused('json', error instanceof Error ? error.message : 'This is not JSON.');
    }
    if (write(value) !== source) throw new Refused('form', 'The text differs from the canonical form of its contents.');
    return value;
  }

  return Object.freeze({ Refused, write, read });
})();
