/** Loads the unchanged scripts of the checking page, the vendored ones too, as a page would; and makes signed records to check. */
import { createHash, createPrivateKey, createPublicKey, sign } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';

const THEME = new URL('../../site_overrides/js/', import.meta.url);

/** @returns {Record<string, any>} */
export function loadProof() {
  const files = ['vendor/noble-ed25519.js', 'vendor/noble-seal.js', 'vendor/fflate.js', 'vendor/qr-code.js', 'pure/sha256.js', 'pure/canonical.js']
    .concat(readFileSync(new URL('order-checking.txt', THEME), 'utf8').split('\n').filter((name) => name.startsWith('pure/')));
  const sources = files.map((name) => readFileSync(new URL(name, THEME), 'utf8'));
  const names = sources.flatMap((source) => Array.from(source.matchAll(/^const (\w+) ?=/gmu), (found) => found[1]));
  return runInNewContext(`${sources.join('\n')}\n({ ${names.join(', ')} })`, { TextDecoder, TextEncoder, setTimeout });
}

export const scripts = loadProof();

/** @param {string} seed 64 hexadecimal digits */
export function signer(seed) {
  const key = createPrivateKey({ key: Buffer.from(`302e020100300506032b657004220420${seed}`, 'hex'), format: 'der', type: 'pkcs8' });
  const bytes = createPublicKey(key).export({ format: 'der', type: 'spki' }).subarray(-32);
  return { key, bytes, did: `did:key:z${scripts.Base58.encode(Buffer.concat([Buffer.from([0xed, 1]), bytes]))}` };
}

/** The proof of a document by a signer, worked out with node's own cryptography. @param {any} document @param {ReturnType<typeof signer>} by */
export function proofOf(document, by) {
  const options = {
    '@context': document['@context'], type: 'DataIntegrityProof', cryptosuite: 'eddsa-jcs-2022',
    verificationMethod: `${by.did}#${by.did.slice(8)}`, proofPurpose: 'assertionMethod',
  };
  const hash = (/** @type {unknown} */ value) => createHash('sha256').update(scripts.Canonical.write(value)).digest();
  const signature = sign(null, Buffer.concat([hash(options), hash(document)]), by.key);
  return { ...options, proofValue: `z${scripts.Base58.encode(signature)}` };
}

export const V2 = ['https://www.w3.org/ns/credentials/v2', 'https://www.w3.org/ns/credentials/undefined-terms/v2'];

/** A signed certificate as canonical text. @param {ReturnType<typeof signer>} by @param {Record<string, unknown>} [changed] of its subject */
export function certificateText(by, changed = {}) {
  const subject = {
    format: 'journeybook certificate 1', name: 'Ines Okafor', person: '1042', employer: 'Quillon Basin Works', workplace: 'Slip 2',
    equipment: 'powered respirator', title: 'Powered air for welders', course: 'powered-respirator', version: '1.0', digest: 'ab'.repeat(32),
    profile: 'uk', language: 'en', marks: 21500, of: 24000, cut: 80, mustPass: [8, 8], check: 'self-recorded', practical: 'not observed',
    identity: '', trainer: 'Jo Vance', assessor: '', trained: '2026-02-27', checked: '2026-03-01', observed: '', retrainBy: '2027-03-01',
    attempt: 1, fingerprint: 'ABCD-EFGH-IJKL-MN27', observations: [], example: false, ...changed,
  };
  const document = {
    '@context': V2, id: 'urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11', type: ['VerifiableCredential'], issuer: by.did,
    validFrom: '2026-03-02T08:00:00Z', validUntil: `${subject.retrainBy}T23:59:59Z`, credentialSubject: subject,
  };
  return scripts.Canonical.write({ ...document, proof: proofOf(document, by) });
}

/** What makes a certificate a supervised and observed one. */
export const WATCHED = {
  check: 'supervised', practical: 'observed', identity: 'works pass with photograph', assessor: 'Sam Reyes', observed: '2026-03-02',
  observations: ['AAAA-BBBB-CCCC-DDDD'],
};

/** The verdict cases and codes that Python is held to as well: tests/vectors/proof/make_verdicts.py. */
export const VERDICTS = JSON.parse(readFileSync(new URL('../vectors/proof/verdicts.json', import.meta.url), 'utf8'));

/** A signed trust list as canonical text. @param {ReturnType<typeof signer>[]} signers the first is its issuer @param {Record<string, unknown>} [changed] of its subject */
export function trustText(signers, changed = {}) {
  const [by] = signers;
  const document = {
    '@context': V2, type: ['VerifiableCredential'], issuer: by.did, validFrom: '2026-03-05T00:00:00Z',
    credentialSubject: {
      format: 'journeybook trust list 1', holder: 'Quillon Basin Works', number: 1, withdrawn: [],
      keys: [{ did: by.did, holder: 'Sam Reyes', role: 'assessor', from: '2026-01-01', until: '2026-12-31', withdrawn: null, demo: false }], ...changed,
    },
  };
  const proofs = signers.map((each) => proofOf(document, each));
  return scripts.Canonical.write({ ...document, proof: proofs.length === 1 ? proofs[0] : proofs });
}
