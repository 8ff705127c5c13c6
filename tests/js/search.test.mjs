/**
 * Finding words in the course.
 */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { loadPure, plain } from './load.mjs';

const { SearchMatch } = loadPure();

const ENTRIES = [
  ['Reading the float', 'Lesson', 'float.html', 'Hold the tube upright. The float must stand above the line.'],
  ['The main filter', 'Lesson', 'filter.html', 'It is replaced, never cleaned. A pre-filter stands before it.'],
  ['filter', 'Word', 'words.html#filter', 'Takes fume out of the air.'],
  ['Wärmeschutz', 'Word', 'words.html#w', 'Ein Schutz gegen Hitze.'],
];
const PREPARED = SearchMatch.prepare(ENTRIES);

/** @param {string} query @returns {string[]} */
const titles = (query) => plain(SearchMatch.find(PREPARED, query, 10)).map((/** @type {any} */ hit) => hit.entry[0]);

it('finds words by their beginning, not by their middle', () => {
  assert.deepEqual(titles('flo'), ['Reading the float']);
  assert.deepEqual(titles('loat'), []);
});

it('puts the entry whose title is the query first', () => {
  assert.deepEqual(titles('filter'), ['filter', 'The main filter']);
});

it('wants every word of the query', () => {
  assert.deepEqual(titles('filter replaced'), ['The main filter']);
  assert.deepEqual(titles('filter upright'), []);
});

it('does not mind capitals and accents', () => {
  assert.deepEqual(titles('WARME'), ['Wärmeschutz']);
  assert.deepEqual(titles('wärme'), ['Wärmeschutz']);
});

it('finds a word behind a hyphen', () => {
  assert.deepEqual(titles('pre-filter'), ['The main filter']);
});

it('finds nothing for an empty query or one without letters', () => {
  assert.deepEqual(titles('  '), []);
  assert.deepEqual(titles('—?!'), []);
});

it('keeps to the number asked for', () => {
  assert.equal(SearchMatch.find(PREPARED, 't', 1).length, 1);
});

it('marks what matches and loses no letter of the text', () => {
  const text = 'The float, the FLOATING one, and afloat';
  const pieces = plain(SearchMatch.pieces(text, 'float'));
  assert.equal(pieces.map((/** @type {any} */ piece) => piece.text).join(''), text);
  assert.deepEqual(pieces.filter((/** @type {any} */ piece) => piece.hit).map((/** @type {any} */ piece) => piece.text), ['float', 'FLOAT']);
});

it('marks overlapping words once', () => {
  const pieces = plain(SearchMatch.pieces('filters', 'filter filt'));
  assert.deepEqual(pieces, [{ text: 'filter', hit: true }, { text: 's', hit: false }]);
});

it('cuts a snippet between words round the first word found', () => {
  const text = `${'before '.repeat(40)}float ${'after '.repeat(40)}`.trim();
  const [hit] = SearchMatch.find(SearchMatch.prepare([['A', 'B', 'c', text]]), 'float', 1);
  const snippet = SearchMatch.snippet(hit);
  assert.match(snippet, /^… (before )+float (after )+…$/u);
  assert.ok(snippet.length < 190);
});

it('gives a short text whole', () => {
  const [hit] = SearchMatch.find(PREPARED, 'upright', 1);
  assert.equal(SearchMatch.snippet(hit), ENTRIES[0][3]);
});

/** The titles found in texts. @param {string[]} texts @param {string} query */
function found(texts, query) {
  return plain(SearchMatch.find(SearchMatch.prepare(texts.map((text) => [text, 'k', 'a', ''])), query, 9)).map((/** @type {any} */ hit) => hit.entry[0]);
}

it('finds an accented word however its accent is spelt', () => {
  for (const text of ['caf\u00e9s', 'cafe\u0301s']) {
    for (const query of ['caf\u00e9s', 'cafe\u0301s', 'cafes']) assert.equal(found([text], query).length, 1, `${text} by ${query}`);
  }
});

it('takes Korean syllables that begin alike for different ones', () => {
  assert.deepEqual(found(['\ud55c\uae00', '\ud558\ub298'], '\ud55c'), ['\ud55c\uae00']);
});

it('does not take a vowel sign for the end of a word', () => {
  assert.deepEqual(found(['\u092a\u093e\u0928\u0940'], '\u0928\u0940'), []);
  assert.deepEqual(found(['\u092a\u093e\u0928\u0940'], '\u092a\u093e\u0928').length, 1);
});
