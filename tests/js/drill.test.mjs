/** A way through a drill that was kept, and how much time is given on it. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { DrillPace, DrillWay, Result } = loadState();
const key = {
  kind: 'drill',
  start: 'jam',
  moments: {
    jam: { stop: { to: 'stopped', penalty: 0 }, hold: { critical: true } },
    stopped: { isolate: { to: 'good', penalty: 0 }, pry: { to: 'bent', penalty: 300 } },
  },
  ends: { good: 1000, bent: 500 },
  deeds: ['stop', 'hold', 'isolate', 'pry'],
};

it('before the first deed it stands at its beginning', () => {
  assert.deepEqual(plain(DrillWay.follow(key, [])), { moments: [], here: 'jam', isOver: false });
});

it('each deed leads to its moment, and an end is the end', () => {
  assert.deepEqual(plain(DrillWay.follow(key, ['stop'])), { moments: ['jam'], here: 'stopped', isOver: false });
  assert.deepEqual(plain(DrillWay.follow(key, ['stop', 'pry'])), { moments: ['jam', 'stopped'], here: 'bent', isOver: true });
});

it('a critical error ends it nowhere', () => {
  assert.deepEqual(plain(DrillWay.follow(key, ['hold'])), { moments: ['jam'], here: '', isOver: true });
});

for (const [what, deeds] of /** @type {[string, unknown][]} */ ([
  ['a deed of another moment', ['isolate']],
  ['a deed after the end', ['stop', 'pry', 'stop']],
  ['a deed after a critical error', ['hold', 'stop']],
  ['a name that objects know', ['constructor']],
  ['something else than texts', [1]],
  ['a text', 'stop'],
  ['nothing', null],
])) {
  it(`${what} is no way through it`, () => assert.equal(DrillWay.follow(key, deeds), null));
}

it('a critical error in a drill fails a check that has marks enough', () => {
  const result = Result.check({
    plan: { gates: [] }, percent: 50, outcomes: { a: 'set', b: 'set' }, keys: { a: key, b: key },
    form: [{ q: 'a', variant: 0, options: [] }, { q: 'b', variant: 0, options: [] }],
    answers: { a: ['stop', 'isolate'], b: ['hold'] },
  });
  assert.deepEqual(plain([result.marks, result.cut, result.passed, result.critical]), [1000, 1000, false, ['b']]);
});

/** A storage that holds texts. @param {Record<string, string>} [texts] */
function storage(texts = {}) {
  return { texts, getItem: (/** @type {string} */ name) => texts[name] ?? null, setItem: (/** @type {string} */ name, /** @type {string} */ text) => { texts[name] = text; } };
}

it('until something is chosen practice has the time as set, and the check no limit', () => {
  DrillPace.keepIn(() => storage(), () => false);
  assert.deepEqual([DrillPace.read('practice'), DrillPace.read('check')], ['set', 'none']);
});

it('whoever wants less motion has no limit until they choose one', () => {
  DrillPace.keepIn(() => storage(), () => true);
  assert.equal(DrillPace.read('practice'), 'none');
  DrillPace.choose('practice', 'slower');
  assert.equal(DrillPace.read('practice'), 'slower');
});

it('a choice is remembered, for practice and check apart', () => {
  const kept = storage();
  DrillPace.keepIn(() => kept, () => false);
  DrillPace.choose('practice', 'none');
  DrillPace.choose('check', 'set');
  DrillPace.keepIn(() => kept, () => false);
  assert.deepEqual([DrillPace.read('practice'), DrillPace.read('check')], ['none', 'set']);
});

it('where the browser keeps nothing, a choice lasts as long as the page', () => {
  DrillPace.keepIn(() => { throw new Error('denied'); }, () => false);
  DrillPace.choose('practice', 'slower');
  assert.equal(DrillPace.read('practice'), 'slower');
  assert.equal(DrillPace.read('check'), 'none');
});

for (const text of ['{', 'null', '"set"', '{"practice":"faster"}', '{"practice":["set"]}']) {
  it(`a text in the storage that is no choice is left aside: ${text}`, () => {
    DrillPace.keepIn(() => storage({ 'journeybook.drill-time': text }), () => false);
    assert.equal(DrillPace.read('practice'), 'set');
  });
}

it('slower is three times as long, and no limit is none', () => {
  assert.deepEqual([DrillPace.limit(8, 'set'), DrillPace.limit(8, 'slower'), DrillPace.limit(8, 'none'), DrillPace.limit(0, 'slower')], [8, 24, 0, 0]);
});
