/** Steps put in order by tapping. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { Sequence } = loadState();
const shown = ['close', 'wipe', 'filter'];

/** @param {...string} steps */
function tapped(...steps) {
  return steps.reduce((state, step) => Sequence.tap(state, step), Sequence.begin(shown));
}

it('tapping gives the steps their numbers in turn', () => {
  assert.deepEqual(plain(tapped('wipe', 'filter').now), { order: ['wipe', 'filter', 'close'], placed: 2 });
});

it('there is no order while a step waits', () => assert.equal(Sequence.complete(tapped('wipe', 'filter')), null));

it('all steps tapped make the order', () => {
  assert.deepEqual(plain(Sequence.complete(tapped('wipe', 'filter', 'close'))), ['wipe', 'filter', 'close']);
});

it('a placed step tapped again waits again, and those after it move up', () => {
  assert.deepEqual(plain(Sequence.tap(tapped('wipe', 'filter'), 'wipe').now), { order: ['filter', 'wipe', 'close'], placed: 1 });
});

it('a placed step moves among the placed ones', () => {
  assert.deepEqual(plain(Sequence.move(tapped('wipe', 'filter'), 'filter', -1).now.order), ['filter', 'wipe', 'close']);
});

it('nothing moves past the placed ones', () => {
  const state = tapped('wipe', 'filter');
  assert.equal(Sequence.move(state, 'filter', 1), state);
  assert.equal(Sequence.move(state, 'wipe', -1), state);
  assert.equal(Sequence.move(state, 'close', -1), state);
});

it('undo takes back one change after the other, down to the beginning', () => {
  const once = Sequence.undo(Sequence.move(tapped('wipe', 'filter'), 'filter', -1));
  assert.deepEqual(plain(once.now), { order: ['wipe', 'filter', 'close'], placed: 2 });
  const begin = Sequence.undo(Sequence.undo(Sequence.undo(once)));
  assert.deepEqual(plain(begin.now), { order: shown, placed: 0 });
});
