/** The seal of the kept sitting: opened by the browser's cryptography and by the library, and by nothing that was changed. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadSitting } from './load-sitting.mjs';

const { Canonical, NobleSeal, RecordCodes, SittingSeal } = loadSitting();
const KEPT = new URL('../kept/format-1-sittings/', import.meta.url);
const record = JSON.parse(readFileSync(new URL('sealed.json', KEPT), 'utf8'));
const content = JSON.parse(readFileSync(new URL('sealed-content.json', KEPT), 'utf8'));
const FORM = 'guar mang rive ston ladd zebr';
const utf8 = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text));
const { subtle } = crypto;
const notOpened = (/** @type {unknown} */ error) => error instanceof SittingSeal.NotOpened;
const WAYS = /** @type {[string, SubtleCrypto | undefined][]} */ ([['the browser', subtle], ['the library', undefined]]);

for (const [way, tool] of WAYS) {
  it(`the kept seal opens to what was sealed, by ${way}`, async () => {
    assert.deepEqual(plain(await SittingSeal.open(record, FORM, tool)), content);
  });
}

it('another passphrase opens nothing', async () => {
  await assert.rejects(SittingSeal.open(record, FORM.replace('zebr', 'acid'), subtle), notOpened);
});

it('a record that is sealed in another way is not tried', async () => {
  const { kdf } = record;
  for (const odd of [null, {}, { ...record, format: 'journeybook sealed 2' }, { ...record, cipher: 'AES-128-GCM' }, { ...record, data: 7 },
    { ...record, kdf: { ...kdf, iterations: 1 } }, { ...record, kdf: { ...kdf, name: 'PBKDF2-SHA1' } }, { ...record, kdf: undefined }]) {
    await assert.rejects(SittingSeal.open(odd, FORM, subtle), notOpened);
  }
});

it('every fact that stands beside the data is sealed with it', async () => {
  for (const name of Object.keys(record).filter((each) => typeof record[each] === 'string')) {
    await assert.rejects(SittingSeal.open({ ...record, [name]: `${record[name]}A` }, FORM, subtle), notOpened, name);
  }
  await assert.rejects(SittingSeal.open({ ...record, more: 1 }, FORM, subtle), notOpened);
});

const bytes = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text, 'base64url'));
const { data, ...head } = record;
const beside = utf8(Canonical.write(head));

it('every single changed byte of data, iv, key and facts is refused, by the library and by the browser', async () => {
  const raw = NobleSeal.pbkdf2Sha256(utf8(FORM), bytes(record.kdf.salt), record.kdf.iterations);
  const whole = { key: new Uint8Array(raw), iv: bytes(record.iv), data: bytes(data).slice(0), beside };
  const key = await subtle.importKey('raw', whole.key, 'AES-GCM', false, ['decrypt']);
  const byBrowser = (/** @type {typeof whole} */ with_) =>
    subtle.decrypt({ name: 'AES-GCM', iv: with_.iv, additionalData: with_.beside }, key, with_.data);
  assert.equal(Buffer.from(NobleSeal.gcmOpen(whole.key, whole.iv, whole.data, whole.beside)).compare(Buffer.from(await byBrowser(whole))), 0);
  let count = 0;
  for (const member of /** @type {const} */ (['data', 'iv', 'beside', 'key'])) {
    for (let at = 0; at < whole[member].length; at += 1) {
      const turned = whole[member].slice();
      // Another bit at each place, so that each of the eight has its turn.
      turned[at] ^= 1 << at % 8;
      const changed = { ...whole, [member]: turned };
      assert.throws(() => NobleSeal.gcmOpen(changed.key, changed.iv, changed.data, changed.beside), /tag/u, `${member} ${at}`);
      if (member !== 'key') await assert.rejects(byBrowser(changed), { name: 'OperationError' }, `${member} ${at}`);
      count += 1;
    }
  }
  assert.equal(count, whole.data.length + whole.iv.length + whole.beside.length + 32);
  for (const short of [0, 1, 15, 16, whole.data.length - 1]) {
    assert.throws(() => NobleSeal.gcmOpen(whole.key, whole.iv, whole.data.slice(0, short), whole.beside), /./u, `${short} bytes`);
  }
});

it('every single changed byte of the kept attempt shows in its fingerprint', () => {
  const { Attempt } = loadSitting();
  const text = readFileSync(new URL('attempt-robin.json', KEPT));
  const whole = new Uint8Array(text);
  const print = Attempt.fingerprint(whole);
  for (let at = 0; at < whole.length; at += 1) {
    const changed = whole.slice();
    changed[at] ^= 1 << at % 8;
    assert.notEqual(Attempt.fingerprint(changed), print, `byte ${at}`);
  }
});

it('the kept record goes into codes as its fingerprint names them, however hard it is packed', () => {
  const { Attempt, Fflate } = loadSitting();
  const whole = new Uint8Array(readFileSync(new URL('attempt-kay.json', KEPT)));
  const print = Attempt.fingerprint(whole);
  for (const level of [0, 1, 9]) {
    const texts = RecordCodes.texts(whole, print, (/** @type {Uint8Array} */ plain_) => Fflate.deflateSync(plain_, { level }));
    assert.ok(texts.every((/** @type {string} */ text, /** @type {number} */ at) => text.startsWith(`JB2:${at + 1}/${texts.length}:${print.replaceAll('-', '').slice(0, 8)}:`)));
    assert.ok(texts.every((/** @type {string} */ text) => /^[0-9A-Z $%*+\-./:]{1,520}$/u.test(text)), 'only signs of the alphanumeric mode');
  }
});
