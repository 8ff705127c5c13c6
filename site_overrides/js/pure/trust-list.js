/**
 * The signed list of the keys a site trusts, and of the certificates withdrawn. Twin of builder/proof/trust_list.py.
 */
const TrustList = (() => {
  'use strict';

  const FORMAT = 'journeybook trust list 1';
  const DID = /^did:key:z6Mk[1-9A-HJ-NP-Za-km-z]{40,50}$/;
  /** @param {unknown} value */
  const isDid = (value) => typeof value === 'string' && DID.test(value);
  const DAY = /^\d{4}-\d\d-\d\d$/;
  const STAMP = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;

  /** A text that is no trust list, or one whose signature does not hold; or one that may not replace the list in use. */
  class Refused extends Error {
    /** @param {'unreadable' | 'altered' | 'older' | 'stranger' | 'none-before'} reason */
    constructor(reason) {
      super(reason);
      this.reason = reason;
    }
  }

  /**
   * The list that a text holds, its signatures checked. Rejects with Refused.
   * @param {string} text canonical JSON
   * @param {SignatureCheck} signed
   * @returns {Promise<TrustListFacts>}
   */
  async function read(text, signed) {
    const document = shaped(text);
    /** @type {string[]} */
    let signers;
    try {
      signers = await DataIntegrity.verify(document, signed);
    } catch {
      throw new Refused('altered');
    }
    const subject = document.credentialSubject;
    if (!signers.includes(document.issuer)) throw new Refused('altered');
    return {
      issuer: document.issuer,
      signers,
      date: document.validFrom.slice(0, 10),
      holder: subject.holder,
      number: subject.number,
      keys: subject.keys,
      withdrawn: subject.withdrawn,
    };
  }

  /** @param {string} text @returns {any} */
  function shaped(text) {
    /** @type {any} */
    let document;
    try {
      document = Canonical.read(text.trim());
    } catch {
      throw new Refused('unreadable');
    }
    const subject = document?.credentialSubject;
    const right = subject?.format === FORMAT && isDid(document.issuer) && STAMP.test(document.validFrom) &&
      typeof subject.holder === 'string' && Number.isSafeInteger(subject.number) &&
      Array.isArray(subject.keys) && subject.keys.every(isKey) &&
      Array.isArray(subject.withdrawn) && subject.withdrawn.every(isWithdrawn);
    if (!right) throw new Refused('unreadable');
    return document;
  }

  /** @param {any} key */
  function isKey(key) {
    return typeof key === 'object' && key !== null && isDid(key.did) && typeof key.holder === 'string' && DAY.test(key.from) &&
      DAY.test(key.until) && typeof key.demo === 'boolean' &&
      (key.withdrawn === null || (typeof key.withdrawn === 'object' && DAY.test(key.withdrawn.on)));
  }

  /** @param {any} entry */
  function isWithdrawn(entry) {
    return typeof entry === 'object' && entry !== null && typeof entry.id === 'string' && DAY.test(entry.on);
  }

  /**
   * Throws Refused unless the newer list may replace the current one: a higher number, no earlier day (which would let a key that
   * has run out vouch for what is new), and signed by a key that the current one trusts. That is its issuer's, or another that may sign on the day of the newer list; none that is withdrawn, and no demo key
   * beside the issuer's. Where no list is known, nothing can vouch for one that somebody brings along.
   * @param {TrustListFacts} newer @param {TrustListFacts | null} current
   */
  function accept(newer, current) {
    if (!current) throw new Refused('none-before');
    if (newer.number <= current.number || newer.date < current.date) throw new Refused('older');
    if (!newer.signers.some((did) => vouches(current, did, newer.date))) throw new Refused('stranger');
  }

  /** @param {TrustListFacts} current @param {string} did @param {string} day @returns {boolean} */
  function vouches(current, did, day) {
    const known = current.keys.filter((key) => key.did === did);
    if (known.some((key) => key.withdrawn)) return false;
    // The issuer's key vouches beyond its dates as well: a list that was renewed late is not a stranger's.
    return did === current.issuer || known.some((key) => key.from <= day && day <= key.until && !key.demo);
  }

  return Object.freeze({ Refused, read, accept });
})();
