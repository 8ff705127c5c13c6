/**
 * Data Integrity proofs `eddsa-jcs-2022` (W3C Recommendation 15 May 2025) of a did:key. Twin of builder/proof/data_integrity.py.
 * What a signature covers is worked out here; who says whether the signature is right is given.
 */
const DataIntegrity = (() => {
  'use strict';

  const HEADER = [0xed, 0x01];
  const PRIME = 2n ** 255n - 19n;
  const EIGHTH = 0x7a03ac9277fdc74ec6cc392cfa53202a0f67100d760b3cba4fd84d3d706a17c7n;
  /** The heights (y) of the points of small order on edwards25519 (RFC 8032, 5.1): the keys of nobody, under which browsers take forged signatures. */
  const WEAK = [0n, 1n, PRIME - 1n, EIGHTH, PRIME - EIGHTH];
  const MEMBERS = ['@context', 'cryptosuite', 'proofPurpose', 'proofValue', 'type', 'verificationMethod', 'created'];

  /** A document whose proof does not hold. */
  class NotGenuine extends Error {}

  /** The 32 bytes of a did:key of Ed25519; throws NotGenuine. @param {string} did @returns {Uint8Array} */
  function keyOf(did) {
    if (!did.startsWith('did:key:z')) throw new NotGenuine('The signer is not a did:key.');
    const bytes = base58(did.slice('did:key:z'.length));
    if (bytes.length !== 34 || bytes[0] !== HEADER[0] || bytes[1] !== HEADER[1]) {
      throw new NotGenuine('The signer is not a key of Ed25519.');
    }
    const key = bytes.slice(2);
    const height = key.reduceRight((sum, byte, index) => (sum << 8n) | BigInt(index === 31 ? byte & 0x7f : byte), 0n);
    if (height >= PRIME || WEAK.includes(height)) throw new NotGenuine('The signer is a key of nobody.');
    return key;
  }

  /** @param {string} text */
  function base58(text) {
    if (text.length > 128) throw new NotGenuine('A key or signature is too long.');
    try {
      return Base58.decode(text);
    } catch {
      throw new NotGenuine('A key or signature is not base58.');
    }
  }

  /**
   * The did that signed the document with this proof. Rejects with NotGenuine.
   * @param {Record<string, unknown>} document without `proof`
   * @param {unknown} proof
   * @param {SignatureCheck} signed
   * @returns {Promise<string>}
   */
  async function verifyOne(document, proof, signed) {
    if (typeof proof !== 'object' || proof === null || Array.isArray(proof)) throw new NotGenuine('There is no proof.');
    const { proofValue, ...options } = /** @type {Record<string, unknown>} */ (proof);
    if (Object.keys(proof).some((name) => !MEMBERS.includes(name))) throw new NotGenuine('The proof holds something unknown.');
    if (options.type !== 'DataIntegrityProof' || options.cryptosuite !== 'eddsa-jcs-2022') {
      throw new NotGenuine('The proof is of an unknown kind.');
    }
    if (options.proofPurpose !== 'assertionMethod') throw new NotGenuine('The proof has another purpose.');
    if (typeof proofValue !== 'string' || !proofValue.startsWith('z')) throw new NotGenuine('The signature is missing.');
    if (typeof options.verificationMethod !== 'string') throw new NotGenuine('The signer is missing.');
    const [did, fragment, ...rest] = options.verificationMethod.split('#');
    if (rest.length || fragment !== did.slice('did:key:'.length)) throw new NotGenuine('The signer is not named as a did:key is.');
    const key = keyOf(did);
    const secured = { ...document };
    if ('@context' in options) {
      const given = list(options['@context']);
      const held = list(document['@context'] ?? null).slice(0, given.length);
      if (Canonical.write(given) !== Canonical.write(held)) throw new NotGenuine('The proof has another context.');
      secured['@context'] = options['@context'];
    }
    const signature = base58(proofValue.slice(1));
    if (signature.length !== 64) throw new NotGenuine('The signature has another length.');
    const message = new Uint8Array(64);
    message.set(digest(options));
    message.set(digest(secured), 32);
    if (!(await signed(signature, message, key))) throw new NotGenuine('The signature is not that of this document.');
    return did;
  }

  /** SHA-256 of the canonical bytes. @param {unknown} value @returns {Uint8Array} */
  function digest(value) {
    const bytes = new Uint8Array(32);
    const words = new DataView(bytes.buffer);
    Sha256.words(Sha256.utf8(Canonical.write(value))).forEach((word, index) => words.setUint32(index * 4, word));
    return bytes;
  }

  /** @param {unknown} value @returns {unknown[]} */
  function list(value) {
    return Array.isArray(value) ? value : [value];
  }

  /**
   * The dids that signed the document: one, or all of its proofs; each proof has to hold. Rejects with NotGenuine.
   * @param {Record<string, unknown>} document
   * @param {SignatureCheck} signed
   * @returns {Promise<string[]>}
   */
  async function verify(document, signed) {
    const { proof, ...unsigned } = document;
    const proofs = list(proof);
    if (proofs.length < 1 || proofs.length > 4) throw new NotGenuine('There is no proof.');
    const dids = [];
    for (const each of proofs) dids.push(await verifyOne(unsigned, each, signed));
    return dids;
  }

  return Object.freeze({ NotGenuine, keyOf, verify });
})();
