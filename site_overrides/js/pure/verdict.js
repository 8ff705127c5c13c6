/**
 * What can be said of a certificate: one of seven verdicts. Twin of builder/proof/verdict.py and builder/proof/certificate_shape.py;
 * tests/vectors/proof/verdicts.json holds both to the same.
 */
const Verdict = (() => {
  'use strict';

  const FORMAT = 'journeybook certificate 1';
  const CONTEXT = ['https://www.w3.org/ns/credentials/v2', 'https://www.w3.org/ns/credentials/undefined-terms/v2'];
  const SIZE_CAP = 16_384;
  const LONGEST_TEXT = 200;
  const MOST_OBSERVATIONS = 8;
  const MEMBERS = ['@context', 'credentialSubject', 'id', 'issuer', 'proof', 'type', 'validFrom', 'validUntil'];
  const ID = /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
  const DID = /^did:key:z6Mk[1-9A-HJ-NP-Za-km-z]{40,50}$/;
  const STAMP = /^(\d{4}-\d\d-\d\d)T(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\dZ$/;
  const DAY = /^(\d{4})-(\d\d)-(\d\d)$/;
  const DIGEST = /^[0-9a-f]{64}$/;
  const FINGERPRINT = /^[A-Z2-7]{4}(?:-[A-Z2-7]{4}){3}$/;
  /** C0, C1, line separators, the signs that turn the direction of writing around, the byte order mark. */
  const CONTROLS = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufeff]/;

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
    const day = certificate.validFrom.slice(0, 10);
    const known = trust?.keys.filter((each) => each.did === certificate.issuer) ?? [];
    // A key may stand in the list more than once, as for two years; what is said against it holds for all of them.
    const key = known.find((each) => each.from <= day && day <= each.until) ?? null;
    if (trust && known.length) {
      const lost = known.find((each) => each.withdrawn);
      const withdrawn = trust.withdrawn.find((entry) => entry.id === certificate.id) ?? lost?.withdrawn;
      if (withdrawn) return { kind: 'withdrawn', key: key ?? lost ?? known[0], withdrawn };
    }
    if (!key) return { kind: 'unknown-signer', key: null, withdrawn: null };
    // The first day is one of UTC, which is tomorrow where it is still the evening before.
    const first = new Date(Date.parse(day) - 86_400_000).toISOString().slice(0, 10);
    if (today < first || today > certificate.validUntil.slice(0, 10)) return { kind: 'out-of-date', key, withdrawn: null };
    const example = certificate.credentialSubject.example || known.some((each) => each.demo);
    return { kind: example ? 'example' : 'genuine', key, withdrawn: null };
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
    if (!isObject(certificate) || !isSame(Object.keys(certificate).sort(), MEMBERS)) return false;
    const subject = certificate.credentialSubject;
    return isSame(certificate['@context'], CONTEXT) && isSame(certificate.type, ['VerifiableCredential']) &&
      isObject(certificate.proof) && isObject(subject) && isSame(Object.keys(subject).sort(), Object.keys(SUBJECT).sort()) &&
      Object.entries(SUBJECT).every(([name, right]) => right(subject[name])) &&
      matches(ID, certificate.id) && matches(DID, certificate.issuer) &&
      matches(STAMP, certificate.validFrom) && isDay(certificate.validFrom.slice(0, 10)) &&
      certificate.validUntil === `${subject.retrainBy}T23:59:59Z` && holdsTogether(subject);
  }

  /** Whether no member contradicts another. @param {any} subject */
  function holdsTogether(subject) {
    const supervised = subject.check === 'supervised';
    const observed = subject.practical === 'observed';
    return subject.marks <= subject.of &&
      // As big integers: a hundred times the largest number is beyond what a script counts exactly.
      BigInt(subject.marks) * 100n >= BigInt(subject.cut) * BigInt(subject.of) &&
      subject.mustPass[0] === subject.mustPass[1] && supervised === (subject.identity !== '') &&
      (supervised || observed) === (subject.assessor !== '') &&
      observed === (subject.observed !== '') && observed === (subject.observations.length > 0);
  }

  /** @param {unknown} value @returns {boolean} */
  const isObject = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

  /** @param {unknown} list @param {string[]} expected */
  const isSame = (list, expected) =>
    Array.isArray(list) && list.length === expected.length && list.every((each, index) => each === expected[index]);

  /** @param {RegExp} pattern @param {unknown} value @returns {boolean} */
  const matches = (pattern, value) => typeof value === 'string' && pattern.test(value);

  /** @param {unknown} value @returns {boolean} */
  function isText(value) {
    return typeof value === 'string' && value !== '' && value.trim() === value && !CONTROLS.test(value) &&
      value.length <= 2 * LONGEST_TEXT && Array.from(value).length <= LONGEST_TEXT && value.normalize('NFC') === value;
  }

  /** A day that the calendar has. @param {unknown} value @returns {boolean} */
  function isDay(value) {
    const found = typeof value === 'string' ? DAY.exec(value) : null;
    if (!found) return false;
    const [year, month, day] = found.slice(1).map(Number);
    const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
    const last = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
    return year > 0 && day > 0 && day <= last;
  }

  /** @param {unknown} value @param {number} least @param {number} [most] */
  const isCount = (value, least, most = Number.MAX_SAFE_INTEGER) =>
    typeof value === 'number' && Number.isSafeInteger(value) && value >= least && value <= most;

  /** @param {unknown} value */
  const isBlankOrText = (value) => value === '' || isText(value);
  /** @param {unknown} value */
  const isBlankOrDay = (value) => value === '' || isDay(value);
  /** @param {unknown} value */
  const isMarks = (value) => isCount(value, 0);
  /** @param {unknown} value */
  const isFingerprint = (value) => matches(FINGERPRINT, value);

  /** @type {Record<string, (value: any) => boolean>} */
  const SUBJECT = {
    format: (value) => value === FORMAT,
    name: isText,
    person: isText,
    employer: isText,
    workplace: isBlankOrText,
    equipment: isText,
    title: isText,
    course: isText,
    version: isText,
    digest: (value) => matches(DIGEST, value),
    profile: isText,
    language: isText,
    marks: isMarks,
    of: (value) => isCount(value, 1000) && value % 1000 === 0,
    cut: (value) => isCount(value, 1, 100),
    mustPass: (value) => Array.isArray(value) && value.length === 2 && value.every(isMarks),
    check: (value) => value === 'self-recorded' || value === 'supervised',
    practical: (value) => value === 'observed' || value === 'not observed',
    identity: isBlankOrText,
    trainer: isBlankOrText,
    assessor: isBlankOrText,
    trained: isBlankOrDay,
    checked: isDay,
    observed: isBlankOrDay,
    retrainBy: isDay,
    attempt: (value) => isCount(value, 1),
    fingerprint: isFingerprint,
    observations: (value) => Array.isArray(value) && value.length <= MOST_OBSERVATIONS && value.every(isFingerprint),
    example: (value) => typeof value === 'boolean',
  };

  return Object.freeze({ of });
})();
