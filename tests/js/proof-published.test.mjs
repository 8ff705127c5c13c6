// Values published elsewhere, through the shipped scripts and through WebCrypto.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { scripts } from './load-proof.mjs';

const { Base45, Base58, DataIntegrity, NobleEd25519, NobleSeal, QrCode } = scripts;
const hex = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text, 'hex'));
const hexOf = (/** @type {Uint8Array} */ bytes) => Buffer.from(bytes).toString('hex');
const utf8 = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text));
const VECTORS = execFileSync(process.env.PYTHON ?? 'python3', ['-c', 'import cryptography_vectors as v, os; print(os.path.dirname(v.__file__))'], { encoding: 'utf8' }).trim();

/** WebCrypto as the page uses it. @param {Uint8Array} signature @param {Uint8Array} message @param {Uint8Array} key */
async function webCrypto(signature, message, key) {
  try {
    const known = await crypto.subtle.importKey('raw', new Uint8Array(key), 'Ed25519', false, ['verify']);
    return await crypto.subtle.verify('Ed25519', known, new Uint8Array(signature), new Uint8Array(message));
  } catch {
    return false;
  }
}
/** @type {[string, (signature: Uint8Array, message: Uint8Array, key: Uint8Array) => any][]} */
const WAYS = [['the shipped script', NobleEd25519.verify], ['WebCrypto', webCrypto]];

// W3C Data Integrity EdDSA Cryptosuites v1.0, TestVectors/eddsa-jcs-2022.
const UNSIGNED = {
  '@context': ['https://www.w3.org/ns/credentials/v2', 'https://www.w3.org/ns/credentials/examples/v2'],
  credentialSubject: { alumniOf: 'The School of Examples', id: 'did:example:abcdefgh' },
  description: 'A minimum viable example of an Alumni Credential.', id: 'urn:uuid:58172aac-d8ba-11ed-83dd-0b3aef56cc33',
  issuer: 'https://vc.example/issuers/5678', name: 'Alumni Credential', type: ['VerifiableCredential', 'AlumniCredential'],
  validFrom: '2023-01-01T00:00:00Z',
};
const PROOF = {
  type: 'DataIntegrityProof', cryptosuite: 'eddsa-jcs-2022', created: '2023-02-24T23:36:38Z',
  verificationMethod: 'did:key:z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2#z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2',
  proofPurpose: 'assertionMethod', '@context': UNSIGNED['@context'],
  proofValue: 'z2HnFSSPPBzR36zdDgK8PbEHeXbR56YF24jwMpt3R1eHXQzJDMWS93FCzpvJpwTWd3GAVFuUfjoJdcnTMuVor51aX',
};

for (const [way, signed] of WAYS) {
  test(`the published proof of eddsa-jcs-2022 holds, and no changed document's does, by ${way}`, async () => {
    const did = PROOF.verificationMethod.split('#')[0];
    assert.deepEqual([...(await DataIntegrity.verify({ ...UNSIGNED, proof: PROOF }, signed))], [did]);
    await assert.rejects(DataIntegrity.verify({ ...UNSIGNED, name: 'Alumni credential', proof: PROOF }, signed));
    await assert.rejects(DataIntegrity.verify({ ...UNSIGNED, proof: { ...PROOF, created: '2023-02-24T23:36:39Z' } }, signed));
  });

  test(`signatures of the reference implementation's sign.input hold, and none with a bit turned, by ${way}`, async () => {
    const lines = readFileSync(join(VECTORS, 'asymmetric', 'Ed25519', 'sign.input'), 'utf8').trim().split('\n').slice(0, 64);
    for (const line of lines) {
      const [, key, message, signature] = line.split(':').map(hex);
      const bare = signature.slice(0, 64);
      assert.equal(await signed(bare, message, key), true);
      bare[7] ^= 1;
      assert.equal(await signed(bare, message, key), false);
    }
  });

  test(`a signature made malleable by adding the order is refused (RFC 8032, 5.1.7; Wycheproof's point), by ${way}`, async () => {
    // RFC 8032, 7.1, TEST 1.
    const key = hex('d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a');
    const signature = hex('e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b');
    assert.equal(await signed(signature, hex(''), key), true);
    const order = 2n ** 252n + 27742317777372353535851937790883648493n;
    let s = BigInt(`0x${hexOf(signature.slice(32).reverse())}`) + order;
    const malleable = signature.slice();
    for (let at = 32; at < 64; at += 1, s >>= 8n) malleable[at] = Number(s & 255n);
    assert.equal(await signed(malleable, hex(''), key), false);
  });
}

test('a key of small order signs nothing: the looser rule would have let it', () => {
  const small = hex(`01${'00'.repeat(31)}`);
  const signature = new Uint8Array(64);
  signature[0] = 1;
  assert.equal(NobleEd25519.verify(signature, utf8('anything'), small), false);
  assert.equal(NobleEd25519.verify(new Uint8Array(3), utf8('anything'), small), false);
});

test('did:key of the all-zero seed (did-method-key test vectors)', () => {
  const key = DataIntegrity.keyOf('did:key:z6MkiTBz1ymuepAQ4HEHYSF1H8quG5GLVVQR3djdX3mDooWp');
  assert.equal(hexOf(key), '3b6a27bcceb6a42d62a3a8d02a6f0d73653215771de243a63ac048a18b59da29');
  assert.equal(Base58.encode(Buffer.concat([Buffer.from([0xed, 1]), key])), '6MkiTBz1ymuepAQ4HEHYSF1H8quG5GLVVQR3djdX3mDooWp');
});

test('base45 (RFC 9285, 4.3 and 4.4), and what it must refuse', () => {
  for (const [text, code] of [['AB', 'BB8'], ['Hello!!', '%69 VD92EX0'], ['base-45', 'UJCLQE7W581'], ['ietf!', 'QED8WEX0']]) {
    assert.equal(Base45.encode(utf8(text)), code);
    assert.equal(Buffer.from(Base45.decode(code)).toString(), text);
  }
  for (const odd of ['A', ':::', 'GGW', '::', 'bb8', 'BB8A']) assert.throws(() => Base45.decode(odd), /./, odd);
});

test('base58 keeps zeros in front', () => {
  for (const [bytes, text] of [['', ''], ['00', '1'], ['0000287fb4cd', '11233QC4'], ['61', '2g']]) {
    assert.equal(Base58.encode(hex(bytes)), text);
    assert.equal(hexOf(Base58.decode(text)), bytes);
  }
});

test('PBKDF2-HMAC-SHA256 (RFC 7914, 11)', () => {
  assert.equal(
    hexOf(NobleSeal.pbkdf2Sha256(utf8('passwd'), utf8('salt'), 1, 64)),
    '55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783',
  );
});

test('PBKDF2 in WebCrypto gives the same', async () => {
  const key = await crypto.subtle.importKey('raw', utf8('a pass phrase'), 'PBKDF2', false, ['deriveBits']);
  const theirs = await crypto.subtle.deriveBits({ name: 'PBKDF2', hash: 'SHA-256', salt: utf8('salt'), iterations: 1000 }, key, 256);
  assert.equal(hexOf(new Uint8Array(theirs)), hexOf(NobleSeal.pbkdf2Sha256(utf8('a pass phrase'), utf8('salt'), 1000)));
});

test('AES-256-GCM of NIST CAVP (gcmEncryptExtIV256.rsp, 96-bit iv, 128-bit tag) by the script and by WebCrypto', async () => {
  const text = readFileSync(join(VECTORS, 'ciphers', 'AES', 'GCM', 'gcmEncryptExtIV256.rsp'), 'utf8');
  const cases = text.split(/\r?\n\r?\n/)
    .map((block) => Object.fromEntries(Array.from(block.matchAll(/^(\w+) = ?(.*?)\r?$/gm), (found) => [found[1], found[2]])))
    .filter((each) => each.Tag?.length === 32 && each.IV?.length === 24);
  assert.equal(cases.length, 375);
  for (const { Key, IV, PT, AAD, CT, Tag } of cases) {
    const data = hex(CT + Tag);
    const opened = NobleSeal.gcmOpen(hex(Key), hex(IV), data, hex(AAD));
    assert.equal(hexOf(opened), PT);
    const known = await crypto.subtle.importKey('raw', hex(Key), 'AES-GCM', false, ['decrypt']);
    const theirs = await crypto.subtle.decrypt({ name: 'AES-GCM', iv: hex(IV), additionalData: hex(AAD) }, known, data);
    assert.equal(hexOf(new Uint8Array(theirs)), PT);
    data[data.length - 1] ^= 1;
    assert.throws(() => NobleSeal.gcmOpen(hex(Key), hex(IV), data, hex(AAD)));
  }
});

test('a QR code of 800 letters of base45 is of version 18 at most', () => {
  const rows = QrCode.encode('JB1:'.padEnd(800, 'A0$ '), { encoding: 'alphanumeric' });
  assert.equal(rows.length, rows[0].length);
  assert.ok(rows.length <= 17 + 4 * 18, `${rows.length} modules`);
});
