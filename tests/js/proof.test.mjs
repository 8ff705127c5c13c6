// Seven verdicts on certificates, and the ways in which one reaches the page: bytes, code, PDF.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, it, test } from 'node:test';
import { deflateRawSync, deflateSync, inflateRawSync } from 'node:zlib';
import { certificateText, scripts, signer, trustText, VERDICTS } from './load-proof.mjs';

const { Base58, CertificateCode, DataIntegrity, Dictionary1, Inflate, NobleEd25519, RecordInPdf, TrustList, Verdict } = scripts;
const YARD = signer('11'.repeat(32));
const STRANGER = signer('22'.repeat(32));
const TODAY = '2026-06-01';
const bytes = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text));
const trust = (changed = {}) => TrustList.read(trustText([YARD], changed), NobleEd25519.verify);
/** @param {string} text @param {any} list @param {string} [today] */
const kindOf = async (text, list, today = TODAY) => (await Verdict.of(bytes(text), list, today, NobleEd25519.verify)).kind;

/** The bytes of a case: given as such, as text, or as edits of a sound record. @param {any} each */
function recordOf(each) {
  if (each.base64 !== undefined) return new Uint8Array(Buffer.from(each.base64, 'base64'));
  if (each.record !== undefined) return bytes(each.record);
  return bytes(each.edits.reduce((/** @type {string} */ text, /** @type {[string, string]} */ [from, to]) => text.replace(from, () => to), VERDICTS.records[each.of]));
}

describe(`verdicts.json: ${VERDICTS.about}`, () => {
  for (const each of VERDICTS.cases) {
    it(each.name, async () => {
      const list = each.trust && await TrustList.read(VERDICTS.lists[each.trust], NobleEd25519.verify);
      const found = await Verdict.of(recordOf(each), list, each.today, NobleEd25519.verify);
      assert.equal(found.kind, each.kind);
      assert.equal(found.withdrawn?.on ?? null, each.withdrawn);
      assert.equal(found.certificate === null, each.kind === 'unreadable');
      assert.equal(found.key === null, ['unreadable', 'altered', 'unknown-signer'].includes(each.kind));
    });
  }
});

describe('the codes of verdicts.json', () => {
  for (const each of VERDICTS.codes) {
    it(each.name, () => {
      if (each.of === null) assert.throws(() => CertificateCode.read(each.code), CertificateCode.NoCode);
      else assert.equal(Buffer.from(CertificateCode.read(each.code)).toString(), VERDICTS.records[each.of]);
    });
  }
});

test('no certificate of which one byte is another is genuine', async () => {
  const whole = bytes(certificateText(YARD));
  const list = await trust();
  for (let at = 0; at < whole.length; at += 1) {
    const changed = whole.slice();
    changed[at] ^= 1 << (at % 7);
    const { kind } = await Verdict.of(changed, list, TODAY, NobleEd25519.verify);
    assert.ok(['altered', 'unreadable'].includes(kind), `${kind} at byte ${at}`);
  }
  assert.equal(await kindOf(certificateText(YARD), list), 'genuine');
});

test('what would swell beyond the cap is refused', () => {
  const bomb = deflateRawSync(Buffer.alloc(50 << 20, 65));
  assert.throws(() => Inflate.first(new Uint8Array(bomb), 16_384), { message: 'more than the cap' });
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

test('the word in a title hides no stream behind it', () => {
  const text = certificateText(YARD);
  for (const title of ['(upstream)', '(stream\n)', '(a stream\r\nx\u009c and so on)', '/endstream\n', '(stream\n{)']) {
    const head = Buffer.from(`%PDF-1.7\n1 0 obj\n<< /Title ${title} >>\nendobj\n`, 'latin1');
    for (const stream of [deflateSync(text), Buffer.from(text)]) {
      assert.equal(Buffer.from(RecordInPdf.find(new Uint8Array(Buffer.concat([head, pdf(stream)])))).toString(), text, title);
    }
    assert.equal(RecordInPdf.find(new Uint8Array(Buffer.concat([head, pdf(deflateSync(text), deflateSync(certificateText(STRANGER)))]))), null);
  }
});

test('a PDF with two different records gives none, and so does one without', () => {
  const streams = [deflateSync(certificateText(YARD)), deflateSync(certificateText(STRANGER))];
  assert.equal(RecordInPdf.find(pdf(...streams)), null);
  assert.equal(RecordInPdf.find(pdf(deflateSync('{}'))), null);
  assert.equal(RecordInPdf.find(bytes('no pdf')), null);
});

test('nothing in a PDF keeps the search long', () => {
  const cut = Buffer.concat([Buffer.from('stream\n'), deflateSync(`{"@context":"eddsa-jcs-2022"${' '.repeat(16_000)}`).subarray(0, -5), Buffer.from('\nendstream')]);
  const bomb = Buffer.concat([Buffer.from('stream\n'), deflateSync(Buffer.alloc(1 << 23)), Buffer.from('\nendstream')]);
  for (const piece of ['stream', 'endstrea', 'streamendstream', 'stream\n{endstream', 'stream\n', 'endstream\n', 'stream\nendstream\n', 's', cut, bomb]) {
    const whole = new Uint8Array(Buffer.concat([Buffer.from('%PDF-1.7\n'), Buffer.alloc((20 << 20) - 9, piece)]));
    const before = process.cpuUsage();
    assert.equal(RecordInPdf.find(whole), null);
    const { user, system } = process.cpuUsage(before);
    assert.ok(user + system < 2_000_000, `${user + system} µs for ${String(piece).slice(0, 12)}`);
  }
});

test('a newer list is accepted when the signer of the current one signed it too', async () => {
  const newer = await TrustList.read(trustText([STRANGER, YARD], { number: 2 }), NobleEd25519.verify);
  const current = await trust();
  assert.doesNotThrow(() => TrustList.accept(newer, current));
  const stranger = await TrustList.read(trustText([STRANGER], { number: 2 }), NobleEd25519.verify);
  assert.throws(() => TrustList.accept(stranger, current), { reason: 'stranger' });
  assert.throws(() => TrustList.accept(current, current), { reason: 'older' });
  assert.throws(() => TrustList.accept({ ...newer, date: '1999-12-31' }, current), { reason: 'older' });
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
