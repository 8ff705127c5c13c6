/**
 * A certificate in few bytes, as its QR code holds it: what all certificates share is left out, the rest stands in one order.
 * Twin of builder/proof/certificate_pack.py, which says what stands where.
 */
const CertificatePack = (() => {
  'use strict';

  const CONTEXT = ['https://www.w3.org/ns/credentials/v2', 'https://www.w3.org/ns/credentials/undefined-terms/v2'];
  const LINES = [
    'trainer', 'assessor', 'identity', 'name', 'person', 'employer', 'workplace', 'equipment', 'title', 'course', 'profile', 'language',
    'version', 'example', 'check', 'practical', 'attempt', 'cut', 'of', 'mustPass', 'marks', 'checked', 'observed', 'trained',
    'validFrom', 'retrainBy',
  ];
  const COUNTS = ['attempt', 'cut', 'of', 'mustPass', 'marks'];
  const COUNT = /^(?:0|[1-9]\d{0,14})$/;
  const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';
  const SIZE_CAP = 16_384;
  const MOST_OBSERVATIONS = 8;

  /** The canonical bytes of what was packed; throws for what is damaged or too large. @param {Uint8Array} data @returns {Uint8Array} */
  function unpack(data) {
    const observations = data[0] ?? MOST_OBSERVATIONS + 1;
    if (observations > MOST_OBSERVATIONS) throw new RangeError('It begins as no packed certificate does.');
    let at = 1;
    const next = (/** @type {number} */ size) => data.subarray(at, (at += size));
    const [signature, key, digest, id] = [64, 32, 32, 16].map(next);
    const [fingerprint, ...others] = Array.from({ length: 1 + observations }, () => next(10)).map(inFours);
    if (data.length <= at) throw new RangeError('It begins as no packed certificate does.');
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
      .decode(Inflate.all(data.subarray(at), SIZE_CAP, Dictionary1.bytes()));
    const lines = text.split('\n');
    if (lines.length !== LINES.length) throw new RangeError('It has not the lines of a certificate.');
    /** @type {Record<string, unknown>} */
    const said = Object.fromEntries(LINES.map((name, index) => [name, value(name, lines[index])]));
    const { validFrom, ...subject } = said;
    const multikey = `z${Base58.encode(Uint8Array.from([0xed, 0x01, ...key]))}`;
    const issuer = `did:key:${multikey}`;
    return Sha256.utf8(Canonical.write({
      '@context': CONTEXT, type: ['VerifiableCredential'], id: `urn:uuid:${uuid(hex(id))}`, issuer, validFrom,
      validUntil: `${said.retrainBy}T23:59:59Z`,
      credentialSubject: {
        ...subject, format: 'journeybook certificate 1', mustPass: [said.mustPass, said.mustPass], digest: hex(digest), fingerprint,
        observations: others,
      },
      proof: {
        '@context': CONTEXT, type: 'DataIntegrityProof', cryptosuite: 'eddsa-jcs-2022', verificationMethod: `${issuer}#${multikey}`,
        proofPurpose: 'assertionMethod', proofValue: `z${Base58.encode(signature)}`,
      },
    }));
  }

  /** @param {string} name @param {string} line @returns {unknown} */
  function value(name, line) {
    if (name === 'example') {
      if (line !== 'true' && line !== 'false') throw new RangeError('A flag is neither true nor false.');
      return line === 'true';
    }
    if (!COUNTS.includes(name)) return line;
    if (!COUNT.test(line)) throw new RangeError('A count is no number.');
    return Number(line);
  }

  /** @param {Uint8Array} bytes */
  function hex(bytes) {
    return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  }

  /** @param {string} digits */
  function uuid(digits) {
    return digits.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
  }

  /** Ten bytes as a fingerprint is written: base32 (RFC 4648, 6) in groups of four. @param {Uint8Array} bytes */
  function inFours(bytes) {
    const bits = Array.from(bytes, (byte) => byte.toString(2).padStart(8, '0')).join('');
    const letters = (bits.match(/.{5}/g) ?? []).map((five) => LETTERS[Number.parseInt(five, 2)]).join('');
    return (letters.match(/.{4}/g) ?? []).join('-');
  }

  return Object.freeze({ unpack });
})();
