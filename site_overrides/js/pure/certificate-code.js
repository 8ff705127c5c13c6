/**
 * A certificate as the signs of its QR code: `JB1:`, then base45 of the packed certificate. Twin of builder/proof/certificate_code.py.
 */
const CertificateCode = (() => {
  'use strict';

  const PREFIX = 'JB1:';
  const LONGEST = 4000;

  /** A text that is no code of a certificate, or one that is damaged. */
  class NoCode extends Error {}

  /** Whether a text begins as a code does, after what a pasting may have put around it. @param {string} text */
  function begins(text) {
    return text.trim().slice(0, PREFIX.length).toUpperCase() === PREFIX;
  }

  /**
   * The bytes of the certificate. Line breaks are left out, for a mail may have broken the code; a space is a sign of base45 and stays.
   * @param {string} text
   * @returns {Uint8Array}
   */
  function read(text) {
    const code = text.trim().replace(/[\r\n\t]+/g, '');
    if (!begins(code) || code.length > LONGEST) throw new NoCode('This is not the code of a certificate.');
    try {
      return CertificatePack.unpack(Base45.decode(code.slice(PREFIX.length)));
    } catch {
      throw new NoCode('The code is damaged or cut short.');
    }
  }

  return Object.freeze({ NoCode, begins, read });
})();
