// What we sign, in the hands of a verifier that shares no line with ours: the libraries of the npm registry for Verifiable Credentials 2.0 and
// Data Integrity eddsa-jcs-2022 (@digitalbazaar/vc, data-integrity, eddsa-jcs-2022-cryptosuite, ed25519-multikey, jsonld-signatures; BSD-3-Clause), which have
// their own canonicaliser and their own rules of what a credential is. Nothing is fetched: contexts and keys come from the document loader.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { DataIntegrityProof } from '@digitalbazaar/data-integrity';
import * as Ed25519Multikey from '@digitalbazaar/ed25519-multikey';
import { createVerifyCryptosuite } from '@digitalbazaar/eddsa-jcs-2022-cryptosuite';
import * as credentials from '@digitalbazaar/vc';
import jsigs from 'jsonld-signatures';

const MAKER = fileURLToPath(new URL('sign_some.py', import.meta.url));
const NOW = new Date('2026-06-01T12:00:00Z');
/** @type {string[]} */
const texts = JSON.parse(execFileSync(process.env.PYTHON ?? 'python3', [MAKER], { encoding: 'utf8', maxBuffer: 1 << 20 }));
const [plain, watched, list, handedOver] = texts.map((text) => JSON.parse(text));
const { documentLoader } = credentials;

/** A did:key and its one key, as the method's text says; contexts from the library. @param {string} url */
async function loader(url) {
  if (!url.startsWith('did:key:')) return documentLoader(url);
  const [did, key] = url.split('#');
  const publicKeyMultibase = did.slice('did:key:'.length);
  const method = { '@context': 'https://w3id.org/security/multikey/v1', id: `${did}#${publicKeyMultibase}`, type: 'Multikey', controller: did, publicKeyMultibase };
  const document = key
    ? method
    : { '@context': ['https://www.w3.org/ns/did/v1', 'https://w3id.org/security/multikey/v1'], id: did, assertionMethod: [method.id], verificationMethod: [method] };
  return { contextUrl: null, documentUrl: url, document };
}

/** Whether the libraries take the credential, its issuer's signature included. @param {any} credential @param {Date} [now] */
async function taken(credential, now = NOW) {
  const suite = new DataIntegrityProof({ cryptosuite: createVerifyCryptosuite() });
  const result = await credentials.verifyCredential({ credential, suite, documentLoader: loader, now, maxClockSkew: 0 });
  return result.verified === true;
}

/** Of each signature whether it holds, whoever's it is. @param {any} document @returns {Promise<boolean[]>} */
async function signatures(document) {
  const suite = new DataIntegrityProof({ cryptosuite: createVerifyCryptosuite() });
  const purpose = new jsigs.purposes.AssertionProofPurpose();
  const result = await jsigs.verify(document, { suite, purpose, documentLoader: loader });
  return (result.results ?? []).map((/** @type {any} */ one) => one.verified);
}

/** Every place in a document where a plain value stands, as a list of names. @param {any} value @param {string[]} way @returns {string[][]} */
function places(value, way = []) {
  if (typeof value !== 'object' || value === null) return [way];
  return Object.entries(value).flatMap(([name, inner]) => places(inner, [...way, name]));
}

/** The document with the value at one place changed. @param {any} document @param {string[]} way */
function changed(document, way) {
  const copy = structuredClone(document);
  const last = /** @type {string} */ (way.at(-1));
  const home = way.slice(0, -1).reduce((value, name) => value[name], copy);
  const value = home[last];
  if (typeof value === 'number') home[last] = value + 1;
  else if (typeof value === 'boolean') home[last] = !value;
  else if (value === null) home[last] = 'x';
  else if (value === '') home[last] = 'x';
  else home[last] = value.slice(0, -1) + (value.endsWith('1') ? '2' : '1');
  return copy;
}

test('the key that the libraries read is the key that we name', async () => {
  const key = await Ed25519Multikey.from((await loader(plain.proof.verificationMethod)).document);
  assert.equal(key.id, plain.proof.verificationMethod);
});

for (const [name, document] of /** @type {[string, any][]} */ ([['a certificate of the knowledge check only', plain], ['a certificate of check and practical', watched], ['a trust list', list]])) {
  test(`${name} is accepted by an independent verifier`, async () => {
    assert.equal(await taken(document), true);
  });

  test(`${name}: no value in it can be changed without the independent verifier refusing it`, async () => {
    const all = places(document);
    assert.ok(all.length > 20);
    for (const way of all) assert.equal(await taken(changed(document, way)), false, way.join('.'));
  });

  test(`${name}: nothing can be taken out of it or put into it`, async () => {
    for (const way of places(document).filter((each) => each[0] === 'credentialSubject' && each.length === 2)) {
      const without = structuredClone(document);
      delete without.credentialSubject[way[1]];
      assert.equal(await taken(without), false, way.join('.'));
    }
    assert.equal(await taken({ ...document, credentialSubject: { ...document.credentialSubject, more: 'x' } }), false);
    assert.equal(await taken({ ...document, name: 'x' }), false);
  });
}

test('of a list that two keys sign both signatures hold, and another one in the place of the second does not', async () => {
  assert.deepEqual(await signatures(handedOver), [true, true]);
  const other = structuredClone(handedOver);
  other.proof[1].proofValue = plain.proof.proofValue;
  assert.deepEqual(await signatures(other), [true, false]);
});

test('the independent verifier finds a certificate out of date where we do', async () => {
  assert.equal(await taken(plain, new Date('2027-03-01T23:59:58Z')), true);
  assert.equal(await taken(plain, new Date('2027-03-02T00:00:00Z')), false);
  assert.equal(await taken(plain, new Date('2026-03-02T07:59:59Z')), false);
});
