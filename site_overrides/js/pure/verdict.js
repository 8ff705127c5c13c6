/**
 * What can be said of a certificate: one of six verdicts.
 */
const Verdict = (() => {
  'use strict';

  const FORMAT = 'journeybook certificate 1';
  const SIZE_CAP = 16_384;
  const STAMP = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;
  const TEXTS = [
    'name', 'person', 'employer', 'workplace', 'equipment', 'title', 'course', 'version', 'digest', 'profile', 'language', 'identity',
    'trainer', 'assessor', 'trained', 'observed', 'retrainBy', 'fingerprint', 'observation',
  ];
  const COUNTS = ['marks', 'of', 'cut', 'attempt'];

  /**
   * The verdict on the bytes of a certificate. `today` is an ISO date; `trust` the list in use, null where the page has none.
   * @param {Uint8Array} bytes
   * @param {TrustListFacts | null} trust
   * @param {string} today
   * @param {SignatureCheck} signed
   * @returns {Promise<VerdictFacts>}
   */
  async function of(bytes, trust, today, signed) {
    const certificate = read(bytes);
    if (!certificate) return { kind: 'unreadable', certificate: null, key: null, withdrawn: null };
    try {
      const [did, ...more] = await DataIntegrity.verify(certificate, signed);
      if (more.length || did !== certificate.issuer) throw new DataIntegrity.NotGenuine('The issuer did not sign.');
    } catch (error) {
      if (!(error instanceof DataIntegrity.NotGenuine)) throw error;
      return { kind: 'altered', certificate, key: null, withdrawn: null };
    }
    return { certificate, ...trusted(certificate, trust, today) };
  }

  /**
   * @param {any} certificate @param {TrustListFacts | null} trust @param {string} today
   * @returns {Omit<VerdictFacts, 'certificate'>}
   */
  function trusted(certificate, trust, today) {
    const signedOn = certificate.validFrom.slice(0, 10);
    const key = trust?.keys.find((each) => each.did === certificate.issuer && each.from <= signedOn && signedOn <= each.until) ?? null;
    if (!trust || !key) return { kind: 'unknown-signer', key: null, withdrawn: null };
    const withdrawn = trust.withdrawn.find((entry) => entry.id === certificate.id) ?? key.withdrawn;
    if (withdrawn) return { kind: 'withdrawn', key, withdrawn };
    const inDate = signedOn <= today && today <= certificate.validUntil.slice(0, 10);
    return { kind: inDate ? 'genuine' : 'out-of-date', key, withdrawn: null };
  }

  /** The certificate that the bytes are, in canonical form and with every member in its shape; null for anything else. @param {Uint8Array} bytes */
  function read(bytes) {
    if (bytes.length > SIZE_CAP) return null;
    /** @type {any} */
    let certificate;
    try {
      certificate = Canonical.read(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
    } catch {
      return null;
    }
    return isCertificate(certificate) ? certificate : null;
  }

  /** @param {any} certificate */
  function isCertificate(certificate) {
    const subject = certificate?.credentialSubject;
    if (typeof subject !== 'object' || subject === null || subject.format !== FORMAT) return false;
    return typeof certificate.id === 'string' && typeof certificate.issuer === 'string' &&
      typeof certificate.proof === 'object' && certificate.proof !== null && !Array.isArray(certificate.proof) &&
      STAMP.test(certificate.validFrom) && STAMP.test(certificate.validUntil) &&
      TEXTS.every((name) => typeof subject[name] === 'string') &&
      COUNTS.every((name) => Number.isSafeInteger(subject[name]) && subject[name] >= 0) &&
      ['self-recorded', 'supervised'].includes(subject.check) && ['observed', 'not observed'].includes(subject.practical) &&
      Array.isArray(subject.mustPass) && subject.mustPass.length === 2 && subject.mustPass.every(Number.isSafeInteger) &&
      typeof subject.example === 'boolean';
  }

  return Object.freeze({ of });
})();
