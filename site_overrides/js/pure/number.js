/**
 * How a typed number is read, exactly or not at all, and compared as integers.
 * Twin of builder/marking/typed_number.py and number.py.
 */
const Numbers = (() => {
  'use strict';

  // Listed, because languages differ in what they call a space.
  const END_SPACES = ' \t\n\r\u00a0\u2007\u2009\u200a\u202f';
  const MOST_DIGITS = 15;
  const NUMBER = /^([+\-\u2212]?)([0-9]*)(?:([.,])([0-9]*))?$/u;
  const MAYBE_THOUSANDS = /^[1-9][0-9]{0,2}$/u;

  /**
   * What a text says. `problem` is '', 'empty', 'not-a-number', 'too-long' or 'ambiguous'.
   * @param {string} text
   * @returns {{ problem: string, read: string, digits: bigint, scale: bigint }}
   */
  function readTyped(text) {
    const trimmed = trim(text);
    if (trimmed === '') return refused('empty');
    const found = NUMBER.exec(trimmed);
    if (found === null) return refused('not-a-number');
    const [, sign = '', whole = '', separator = '', decimals = ''] = found;
    if (whole === '' && decimals === '') return refused('not-a-number');
    if (whole.length + decimals.length > MOST_DIGITS) return refused('too-long');
    if (separator !== '' && decimals.length === 3 && MAYBE_THOUSANDS.test(whole)) return refused('ambiguous');
    const minus = sign === '-' || sign === '\u2212';
    const digits = BigInt(whole + decimals);
    const shown = (whole.replace(/^0+/u, '') || '0') + (decimals === '' ? '' : `.${decimals}`);
    return {
      problem: '',
      read: (minus ? '-' : '') + shown,
      digits: minus ? -digits : digits,
      scale: 10n ** BigInt(decimals.length),
    };
  }

  /** @param {string} problem */
  function refused(problem) {
    return { problem, read: '', digits: 0n, scale: 1n };
  }

  /** @param {string} text @returns {string} */
  function trim(text) {
    let start = 0;
    let end = text.length;
    while (start < end && END_SPACES.includes(text.charAt(start))) start += 1;
    while (end > start && END_SPACES.includes(text.charAt(end - 1))) end -= 1;
    return text.slice(start, end);
  }

  /**
   * Numerator and denominator of a key's `n` or `n/d`; the denominator is positive.
   * @param {string} text
   * @returns {[bigint, bigint]}
   */
  function ratio(text) {
    const [numerator = '', denominator = '1'] = text.split('/');
    return [BigInt(numerator), BigInt(denominator)];
  }

  /**
   * Whether low <= digits / scale * factor <= high, both ends included.
   * @param {{ digits: bigint, scale: bigint }} typed
   * @param {string} factor
   * @param {Interval} interval
   * @returns {boolean}
   */
  function within(typed, factor, interval) {
    const [up, down] = ratio(factor);
    const numerator = typed.digits * up;
    const denominator = typed.scale * down;
    const [low, lowPart] = ratio(interval.low);
    const [high, highPart] = ratio(interval.high);
    return low * denominator <= numerator * lowPart && numerator * highPart <= high * denominator;
  }

  return Object.freeze({ readTyped, within });
})();
