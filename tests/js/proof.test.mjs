// Six verdicts on certificates, and the ways in which one reaches the page: bytes, code, PDF.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { deflateRawSync, deflateSync, inflateRawSync } from 'node:zlib';
import { certificateText, scripts, signer, trustText } from './load-proof.mjs';

const { Base45, Base58, CertificateCode, DataIntegrity, Dictionary1, NobleEd25519, RecordInPdf, TrustList, Verdict } = scripts;
const YARD = signer('11'.repeat(32));
const STRANGER = signer('22'.repeat(32));
const TODAY = '2026-06-01';
const ID = 'urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11';
const bytes = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text));
const trust = (changed = {}) => TrustList.read(trustText([YARD], changed), NobleEd25519.verify);
/** @param {string} text @param {any} list @param {string} [today] */
const kindOf = async (text, list, today = TODAY) => (await Verdict.of(bytes(text), list, today, NobleEd25519.verify)).kind;

test('a certificate of a listed signer is genuine', async () => {
  assert.equal(await kindOf(certificateText(YARD), await trust()), 'genuine');
});

test('without a trust list, or by a signer it does not name, or outside the dates of the key, the signer is unknown', async () => {
  assert.equal(await kindOf(certificateText(YARD), null), 'unknown-signer');
  assert.equal(await kindOf(certificateText(STRANGER), await trust()), 'unknown-signer');
  const keys = [{ did: YARD.did, holder: 'Sam', role: 'assessor', from: '2026-04-01', until: '2026-12-31', withdrawn: null, demo: false }];
  assert.equal(await kindOf(certificateText(YARD), await trust({ keys })), 'unknown-signer');
});

test('the last day still counts, the day after is out of date', async () => {
  assert.equal(await kindOf(certificateText(YARD), await trust(), '2027-03-01'), 'genuine');
  assert.equal(await kindOf(certificateText(YARD), await trust(), '2027-03-02'), 'out-of-date');
});

test('a certificate on the list of the withdrawn is withdrawn, even when it is out of date', async () => {
  const list = await trust({ withdrawn: [{ id: ID, on: '2026-05-01', reason: 'wrong person' }] });
  assert.equal(await kindOf(certificateText(YARD), list), 'withdrawn');
  assert.equal(await kindOf(certificateText(YARD), list, '2029-01-01'), 'withdrawn');
});

test('any changed member is told as altered', async () => {
  const text = certificateText(YARD);
  for (const [from, to] of [['Ines', 'Anes'], ['"marks":18', '"marks":19'], ['self-recorded', 'supervised'], ['2027-03-01T', '2029-03-01T']]) {
    assert.equal(await kindOf(text.replace(from, to), await trust()), 'altered', from);
  }
});

test('what is no certificate in canonical form is unreadable', async () => {
  const text = certificateText(YARD);
  for (const odd of ['', '{}', 'null', '[1]', `${text}\n`, JSON.stringify(JSON.parse(text), null, 1), text.slice(0, -1), ' '.repeat(20000)]) {
    assert.equal(await kindOf(odd, await trust()), 'unreadable', odd.slice(0, 20));
  }
});

test('the code gives back the bytes, also with line breaks of a mail and in small letters of the prefix', () => {
  const text = certificateText(YARD);
  const packed = deflateRawSync(text, { dictionary: Buffer.from(Dictionary1.bytes()), level: 9 });
  const code = `JB1:${Base45.encode(packed)}`;
  assert.ok(code.length <= 800, `${code.length} letters`);
  assert.equal(Buffer.from(CertificateCode.read(code)).toString(), text);
  assert.equal(Buffer.from(CertificateCode.read(` ${code.slice(0, 70)}\r\n${code.slice(70)}\n`)).toString(), text);
  for (const odd of ['', 'JB1:', code.slice(0, -30), `JB2:${code.slice(4)}`, code.replace('JB1:', 'JB1:0')]) {
    assert.throws(() => CertificateCode.read(odd), /./, odd.slice(0, 12));
  }
});

test('what would swell beyond the cap is refused', () => {
  const bomb = deflateRawSync(Buffer.alloc(50 << 20, 65));
  assert.throws(() => CertificateCode.inflated(new Uint8Array(bomb), 16_384), { message: 'more than the cap' });
});

test('dictionary 1 is the file of the Python side', () => {
  const file = readFileSync(new URL('../../builder/proof/dictionary-1.txt', import.meta.url));
  assert.equal(Buffer.from(Dictionary1.bytes()).compare(file), 0);
  assert.equal(inflateRawSync(deflateRawSync(file, { dictionary: file }), { dictionary: file }).compare(file), 0);
});

/** @param {...Buffer} streams */
const pdf = (...streams) => new Uint8Array(Buffer.concat([
  Buffer.from('%PDF-1.7\n'),
  ...streams.flatMap((each) => [Buffer.from('1 0 obj\n<< >>\nstream\r\n'), each, Buffer.from('\nendstream\nendobj\n')]),
]));

test('the record is found in a PDF, deflated or plain, among other streams', () => {
  const text = certificateText(YARD);
  const other = deflateSync(Buffer.from('BT (text of a page) Tj ET'));
  for (const stream of [deflateSync(text), Buffer.from(text)]) {
    const found = RecordInPdf.find(pdf(other, deflateSync(Buffer.alloc(1 << 20)), stream, other));
    assert.equal(Buffer.from(found).toString(), text);
  }
});

test('a PDF with two different records gives none, and so does one without', () => {
  const streams = [deflateSync(certificateText(YARD)), deflateSync(certificateText(STRANGER))];
  assert.equal(RecordInPdf.find(pdf(...streams)), null);
  assert.equal(RecordInPdf.find(pdf(deflateSync('{}'))), null);
  assert.equal(RecordInPdf.find(bytes('no pdf')), null);
});

test('a newer list is accepted when the signer of the current one signed it too', async () => {
  const newer = await TrustList.read(trustText([STRANGER, YARD], { number: 2 }), NobleEd25519.verify);
  const current = await trust();
  assert.doesNotThrow(() => TrustList.accept(newer, current));
  const stranger = await TrustList.read(trustText([STRANGER], { number: 2 }), NobleEd25519.verify);
  assert.throws(() => TrustList.accept(stranger, current), { reason: 'stranger' });
  assert.throws(() => TrustList.accept(current, current), { reason: 'older' });
  // A second key of the list in use vouches as well: on its days, unless it is withdrawn or a demo key.
  const spare = { ...current.keys[0], did: STRANGER.did };
  const beside = (/** @type {object} */ changed) => ({ ...current, keys: [...current.keys, { ...spare, ...changed }] });
  assert.doesNotThrow(() => TrustList.accept(stranger, beside({})));
  for (const changed of [{ until: '2020-12-31' }, { withdrawn: { on: '2026-01-02', reason: 'lost' } }, { demo: true }]) {
    assert.throws(() => TrustList.accept(stranger, beside(changed)), { reason: 'stranger' });
  }
  const gone = { ...current, keys: [{ ...current.keys[0], withdrawn: { on: '2026-01-02', reason: 'stolen' } }] };
  assert.throws(() => TrustList.accept(newer, gone), { reason: 'stranger' });
  assert.throws(() => TrustList.accept(newer, null), { reason: 'none-before' });
});

test('a list that was changed is not read', async () => {
  await assert.rejects(TrustList.read(trustText([YARD]).replace('Sam Reyes', 'Sam Rayes'), NobleEd25519.verify), { reason: 'altered' });
  await assert.rejects(TrustList.read('{}', NobleEd25519.verify), { reason: 'unreadable' });
});

test('a key of small order, or one that is no canonical point, is nobody’s', () => {
  const did = (/** @type {string} */ hex) => `did:key:z${Base58.encode(new Uint8Array([0xed, 0x01, ...Buffer.from(hex, 'hex')]))}`;
  const weak = ['00'.repeat(32), `01${'00'.repeat(31)}`, `01${'00'.repeat(30)}80`, `ec${'ff'.repeat(30)}7f`,
    'c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a', `ee${'ff'.repeat(30)}7f`];
  for (const hex of weak) assert.throws(() => DataIntegrity.keyOf(did(hex)), DataIntegrity.NotGenuine, hex);
  assert.equal(DataIntegrity.keyOf(YARD.did).length, 32);
});

test('a certificate that lost its context is altered, whatever its proof says', async () => {
  const { '@context': _, ...rest } = JSON.parse(certificateText(YARD));
  const text = JSON.stringify({ ...rest, proof: { '@context': ['https://www.w3.org/ns/credentials/v2'], ...rest.proof } });
  assert.notEqual(await kindOf(text, await trust()), 'genuine');
});
