/**
 * One person's raw answers at one check, as a record: format 1, and the fingerprint by which people compare it.
 * Twin of builder/marking/attempt.py and fingerprint.py.
 */
const Attempt = (() => {
  'use strict';

  const FORMAT = 'journeybook attempt 1';
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

  return Object.freeze({ FORMAT, build, bytes, fingerprint });
})();
