/** What is typed from a slip or by ear: read forgivingly, and what cannot be right is named. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadSitting } from './load-sitting.mjs';

const { SittingTyped } = loadSitting();
const WORDS = readFileSync(new URL('../../builder/proof/words/english.txt', import.meta.url), 'utf8').trim().split(/\s+/u);
const BEGINNINGS = new Set(WORDS.map((word) => word.slice(0, 4)));
const passphrase = (/** @type {string} */ text) => plain(SittingTyped.passphrase(text, BEGINNINGS));
const ticket = (/** @type {string} */ text) => plain(SittingTyped.ticket(text));

it('every word of the list is known by its first four letters, and no two begin alike', () => {
  assert.equal(BEGINNINGS.size, WORDS.length);
  const typed = passphrase(WORDS.join(' '));
  assert.deepEqual([typed.count, typed.unknown], [WORDS.length, 0]);
});

it('capitals, commas, line breaks and what follows the fourth letter do no harm', () => {
  for (const text of ['guard mango river', 'GUARD, Mango;\nriver.', ' guar mang rive ', 'guards – mangoes – rivers', 'ＧＵＡＲＤ mango river']) {
    assert.deepEqual(passphrase(text), { form: 'guar mang rive', count: 3, unknown: 0, word: '' }, text);
  }
});

it('the first word that is none of the list is named by its number, as it was typed', () => {
  assert.deepEqual(passphrase('guard xylem mango qqqq'), { form: 'guar xyle mang qqqq', count: 4, unknown: 2, word: 'xylem' });
  assert.equal(passphrase('gua mango').unknown, 1);
});

it('nothing typed is no word', () => {
  for (const text of ['', '   ', '12 - 34']) assert.equal(passphrase(text).count, 0, text);
});

it('a ticket is read in small letters, with and without its dash, and with what people put between', () => {
  for (const text of ['ABCDE-FGHJK', 'abcdefghjk', ' ab cde  fg hjk ', 'ABCDE–FGHJK', 'ABCDE_FGHJK', 'a.b.c.d.e-f.g.h.j.k', 'ＡＢＣＤＥ-FGHJK']) {
    assert.deepEqual(ticket(text), { ticket: 'ABCDE-FGHJK', problem: '', sign: '', length: 10 }, text);
  }
});

it('what is taken for another sign, and what no ticket holds, is named', () => {
  for (const sign of ['0', '1', 'I', 'L', 'O', 'U']) {
    assert.deepEqual(ticket(`ABCD${sign.toLowerCase()}-FGHJK`), { ticket: '', problem: 'looks-alike', sign, length: 10 });
  }
  for (const sign of ['Ä', '?', '字']) assert.deepEqual(ticket(`ABCDE-FGHJ${sign}`), { ticket: '', problem: 'odd', sign, length: 10 });
});

it('too few and too many signs are counted, the dash not among them', () => {
  assert.deepEqual(ticket('ABCDE-FGHJ'), { ticket: '', problem: 'length', sign: '', length: 9 });
  assert.deepEqual(ticket('ABCDE-FGHJKM'), { ticket: '', problem: 'length', sign: '', length: 11 });
  assert.equal(ticket('').length, 0);
});

it('the alphabet of tickets is that of the Python side', () => {
  const source = readFileSync(new URL('../../builder/sittings/sitting.py', import.meta.url), 'utf8');
  const alphabet = /** @type {RegExpMatchArray} */ (source.match(/^ALPHABET = "([^"]+)"/mu))[1];
  for (let code = 0x21; code < 0x7f; code += 1) {
    const sign = String.fromCharCode(code);
    if ('-_.'.includes(sign)) continue;
    assert.equal(ticket(`ABCDEFGHJ${sign}`).problem === '', alphabet.includes(sign.toUpperCase()), sign);
  }
});
