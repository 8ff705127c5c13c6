/**
 * One person's raw answers at one check, as a record: format 1, and the fingerprint by which people compare it.
 * Twin of builder/marking/attempt.py and fingerprint.py.
 */
const Attempt = (() => {
  'use strict';

  const FORMAT = 'journeybook attempt 1';
  /** Characters in any text of the record that is not an answer. */
  const LONGEST_TEXT = 1000;
  const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

  /**
   * The record of an attempt. Names are put into Unicode's composed form (NFC), so that one name has one
   * spelling in bytes; answers stay exactly as given.
   * @param {Omit<AttemptRecord, 'format'>} facts
   * @returns {AttemptRecord}
   */
  function build(facts) {
    return {
      format: FORMAT,
      course: facts.course,
      version: facts.version,
      digest: facts.digest,
      profile: facts.profile,
      language: facts.language,
      seed: facts.seed,
      avoid: facts.avoid,
      form: facts.form,
      answers: facts.answers,
      shown: facts.shown,
      started: facts.started,
      ended: facts.ended,
      card: {
        id: facts.card.id,
        name: facts.card.name.normalize('NFC'),
        workplace: facts.card.workplace.normalize('NFC'),
      },
    };
  }

  /**
   * Whether data have what an attempt and a check under way have in common, each of its shape.
   * @param {any} value
   */
  function hasFacts(value) {
    return isMapping(value)
      && ['course', 'version', 'digest', 'profile', 'language', 'seed', 'started'].every((name) => isText(value[name]) && value[name] !== '')
      && isTexts(value.avoid) && isTexts(value.shown) && isMapping(value.answers)
      && Array.isArray(value.form) && value.form.length > 0
      && value.form.every((/** @type {any} */ line) =>
        isMapping(line) && isText(line.q) && Number.isSafeInteger(line.variant) && isTexts(line.options));
  }

  /**
   * Whether data are a record as `build` makes them, and as the employer's reader takes them.
   * @param {any} value
   * @returns {value is AttemptRecord}
   */
  function isRecord(value) {
    return hasFacts(value) && value.format === FORMAT && isText(value.ended)
      && isMapping(value.card) && ['id', 'name', 'workplace'].every((name) => isText(value.card[name]));
  }

  /** @param {unknown} value */
  function isText(value) {
    return typeof value === 'string' && value.length <= LONGEST_TEXT;
  }

  /** @param {unknown} value */
  function isTexts(value) {
    return Array.isArray(value) && value.every(isText) && new Set(value).size === value.length;
  }

  /** @param {unknown} value @returns {value is Record<string, any>} */
  function isMapping(value) {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
  }

  /**
   * The bytes of the file: canonical, without a line end.
   * @param {AttemptRecord} record
   * @returns {Uint8Array}
   */
  function bytes(record) {
    return Sha256.utf8(Canonical.write(record));
  }

  /**
   * The first 80 bits of the record's SHA-256 in base32 (RFC 4648, 6), in four groups.
   * @param {Uint8Array} record
   * @returns {string} ABCD-EFGH-IJKL-MNOP
   */
  function fingerprint(record) {
    const digest = Sha256.hex(record).slice(0, 20);
    const bits = Array.from(digest, (digit) => parseInt(digit, 16).toString(2).padStart(4, '0')).join('');
    const letters = (bits.match(/.{5}/gu) ?? []).map((five) => ALPHABET.charAt(parseInt(five, 2))).join('');
    return (letters.match(/.{4}/gu) ?? []).join('-');
  }

  return Object.freeze({ FORMAT, build, isRecord, hasFacts, isMapping, bytes, fingerprint });
})();
