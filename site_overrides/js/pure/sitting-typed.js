/** What somebody types from a slip or by ear: the passphrase and the ticket, read forgivingly, what cannot be right named. */
const SittingTyped = (() => {
  'use strict';

  const TICKET_LETTERS = 10;
  /** As many as the tool generates. */
  const PASSPHRASE_WORDS = 6;
  const LETTERS = /^[ABCDEFGHJKMNPQRSTVWXYZ23456789]$/u;
  /** What no ticket holds, because it is taken for something else. */
  const LOOKS_ALIKE = '01ILOU';

  /**
   * The words that were typed, as they enter the key: the first four letters of each. `unknown` counts from 1; 0 where
   * each word is one of the list.
   * @param {string} text @param {ReadonlySet<string>} beginnings
   * @returns {{ form: string, count: number, unknown: number, word: string }}
   */
  function passphrase(text, beginnings) {
    const words = text.normalize('NFKC').toLowerCase().split(/[^\p{L}]+/u).filter((word) => word !== '');
    const short = words.map((word) => word.slice(0, 4));
    const at = short.findIndex((word) => !beginnings.has(word));
    return { form: short.join(' '), count: words.length, unknown: at + 1, word: at < 0 ? '' : words[at] };
  }

  /**
   * A ticket as it stands on the slip: ABCDE-FGHJK. `problem` is '', 'looks-alike', 'odd' or 'length'; `sign` is what
   * cannot be in one.
   * @param {string} text
   * @returns {{ ticket: string, problem: string, sign: string, length: number }}
   */
  function ticket(text) {
    const signs = Array.from(text.normalize('NFKC').toUpperCase().replace(/[\s\-‐-―_.]/gu, ''));
    const odd = signs.find((sign) => !LETTERS.test(sign)) ?? '';
    const problem = odd !== '' ? (LOOKS_ALIKE.includes(odd) ? 'looks-alike' : 'odd') : signs.length === TICKET_LETTERS ? '' : 'length';
    const joined = signs.join('');
    return { ticket: problem === '' ? `${joined.slice(0, 5)}-${joined.slice(5)}` : '', problem, sign: odd, length: signs.length };
  }

  return Object.freeze({ passphrase, ticket, TICKET_LETTERS, PASSPHRASE_WORDS });
})();
