/** What a calculator takes of what somebody types, and why it takes nothing. Its sums are in tests/vectors/calculator.json. */
import assert from 'node:assert/strict';
import { describe, it } from 'node:test';
import { loadPure } from './load.mjs';

const { Calculate } = loadPure();
const HOURS = { least: '1/2', most: '12', places: 1 };

/** @param {string} text */
function taken(text, range = HOURS) {
  const { problem, value } = Calculate.take(text, range);
  return problem === '' ? Calculate.write(value) : problem;
}

describe('what is taken', () => {
  for (const [text, expected] of [
    ['6', '6'], ['6.5', '13/2'], ['6,5', '13/2'], [' 6 ', '6'], ['0.5', '1/2'], ['12', '12'], ['12.0', '12'], ['6.50', '13/2'],
  ]) {
    it(`${text} is ${expected}`, () => assert.equal(taken(text), expected));
  }
});

describe('what is not taken', () => {
  for (const [text, problem] of [
    ['', 'empty'], ['six', 'not-a-number'], ['1,000', 'ambiguous'], ['0.4', 'below'], ['0', 'below'], ['12.1', 'above'],
    ['-6', 'below'], ['6.55', 'decimals'], ['1234567890123456', 'too-long'],
  ]) {
    it(`${text || 'nothing'} is ${problem}`, () => assert.equal(taken(text), problem));
  }

  it('a range with a sign', () => {
    const cold = { least: '-40', most: '0', places: 0 };
    assert.equal(taken('-5', cold), '-5');
    assert.equal(taken('\u22125', cold), '-5');
    assert.equal(taken('5', cold), 'above');
  });
});
