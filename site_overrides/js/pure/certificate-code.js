/**
 * A certificate as the signs of its QR code: `JB1:`, then base45 of the packed certificate. Twin of builder/proof/certificate_code.py.
 */
const CertificateCode = (() => {
  'use strict';

  const PREFIX = 'JB1:';
  const LONGEST = 4000;
  /** A line break, and the marks with which a mail quotes the line after it. */
  const BROKEN = /[\r\n\t]+(?:>+ ?)*/g;
  /** What stands around a quoted code; none of it is a sign of base45. */
  const BEFORE = /^[\s>"'“”„«»‘’(<]+/;
  const AFTER = /[\s>"'“”„«»‘’)]+$/;

  /** A text that is no code of a certificate, or one that is damaged. */
  class NoCode extends Error {}

  /** Whether a text begins as a code does, after what a pasting may have put around it. @param {string} text */
  function begins(text) {
    return bare(text).slice(0, PREFIX.length).toUpperCase() === PREFIX;
  }

  /** @param {string} text */
  function bare(text) {
    return text.replace(BEFORE, '').replace(AFTER, '');
  }

  /**
   * The bytes of the certificate. Line breaks and a mail's marks of quoting are left out, for it may have broken the code; a space is a sign of base45 and stays.
   * @param {string} text
   * @returns {Uint8Array}
   */
  function read(text) {
    const code = bare(text).replace(BROKEN, '');
    if (!begins(code) || code.length > LONGEST) throw new NoCode('This is not the code of a certificate.');
    try {
      return CertificatePack.unpack(Base45.decode(code.slice(PREFIX.length)));
    } catch {
      throw new NoCode('The code is damaged or cut short.');
    }
  }

  return Object.freeze({ NoCode, begins, read });
})();
