/** The sheet of a practical while it is filled in, what a device keeps of it, and the record that comes of it. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { Canonical, Observation, ObservationSheet, ObservationStore } = loadState();
const FACTS = {
  course: 'pillar-drill', version: '1.0', digest: '5a'.repeat(32), profile: 'uk', language: 'en', practical: 'prove-the-guard',
  draft: true, conditions: 2, steps: [['isolate', true], ['close-the-gap', true], ['name-parts', false]],
};
const DAY = '2026-11-24';
const [NINE, TEN, ELEVEN] = ['09', '10', '11'].map((hour) => `2026-11-24T${hour}:00:00Z`);

/** @param {any} sheet */
const against = (sheet) => plain(ObservationSheet.against(sheet, FACTS));
/** @param {any} [sheet] */
const safe = (sheet = ObservationSheet.blank(FACTS, DAY)) =>
  ObservationSheet.confirm(ObservationSheet.confirm(sheet, FACTS, 0, true, NINE), FACTS, 1, true, NINE);
/** @param {any} sheet @param {string} step @param {any} change @param {string} [now] */
const mark = (sheet, step, change, now = TEN) => ObservationSheet.mark(sheet, FACTS, step, change, now);

function shown() {
  let sheet = safe();
  for (const [step] of FACTS.steps) sheet = mark(sheet, String(step), { seen: 'yes' });
  for (const [name, text] of [['name', ' Robin  Ashdown '], ['number', '0417'], ['assessor', 'R. Tansley']]) sheet = ObservationSheet.write(sheet, name, text);
  return sheet;
}

it('no step can be marked before every condition is confirmed', () => {
  const half = ObservationSheet.confirm(ObservationSheet.blank(FACTS, DAY), FACTS, 0, true, NINE);
  assert.equal(mark(half, 'isolate', { seen: 'yes' }), half);
  assert.equal(mark(safe(), 'isolate', { seen: 'yes' }).steps.isolate.seen, 'yes');
});

it('a condition that is taken back leaves the marks, and takes the word away', () => {
  const done = ObservationSheet.choose(shown(), FACTS, 'competent');
  assert.equal(done.result, 'competent');
  const back = ObservationSheet.confirm(done, FACTS, 1, false, ELEVEN);
  assert.equal(back.steps.isolate.seen, 'yes');
  assert.equal(back.result, '');
  assert.deepEqual(against(back), [['safety', '']]);
  assert.equal(ObservationSheet.choose(back, FACTS, 'competent').result, '');
  assert.equal(ObservationSheet.choose(back, FACTS, 'not-yet-competent').result, 'not-yet-competent');
});

it('competent needs a mark on every step, and every critical one shown without help', () => {
  assert.deepEqual(against(safe()), [['unmarked', 'isolate'], ['unmarked', 'close-the-gap'], ['unmarked', 'name-parts']]);
  assert.deepEqual(against(shown()), []);
  assert.deepEqual(against(mark(shown(), 'isolate', { prompted: true })), [['step', 'isolate']]);
  assert.deepEqual(against(mark(shown(), 'close-the-gap', { seen: 'not-seen' })), [['step', 'close-the-gap']]);
  assert.deepEqual(against(mark(shown(), 'name-parts', { seen: 'no', prompted: true })), []);
});

it('it is counted what is marked, which critical steps wait and which were not shown', () => {
  assert.deepEqual(plain(ObservationSheet.count(safe(), FACTS)), { marked: 0, total: 3, waiting: 2, missed: 0 });
  const some = mark(mark(safe(), 'isolate', { seen: 'yes', prompted: true }), 'name-parts', { seen: 'no' });
  assert.deepEqual(plain(ObservationSheet.count(some, FACTS)), { marked: 2, total: 3, waiting: 1, missed: 1 });
});

it('what was ended can only be not yet competent, until it goes on after all', () => {
  const ended = ObservationSheet.stop(ObservationSheet.choose(shown(), FACTS, 'competent'), FACTS, ELEVEN);
  assert.equal(ended.result, 'not-yet-competent');
  assert.equal(ObservationSheet.choose(ended, FACTS, 'competent').result, '');
  assert.deepEqual(against(ended), [['stopped', '']]);
  const on = ObservationSheet.goOn(ended, FACTS);
  assert.deepEqual([on.stopped, on.result, against(on)], ['', '', []]);
});

it('names, the day and the result are asked for, and nothing else', () => {
  assert.deepEqual(plain(ObservationSheet.missing(ObservationSheet.blank(FACTS, DAY))), ['name', 'assessor', 'result']);
  assert.deepEqual(plain(ObservationSheet.missing(ObservationSheet.write(shown(), 'day', '2026-02-30'))), ['day', 'result']);
  assert.deepEqual(plain(ObservationSheet.missing(ObservationSheet.write(shown(), 'assessor', '   '))), ['assessor', 'result']);
  assert.deepEqual(plain(ObservationSheet.missing(ObservationSheet.choose(shown(), FACTS, 'competent'))), []);
});

it('the record says what stands on the sheet; a step without a mark was not seen', () => {
  let sheet = ObservationSheet.stop(mark(safe(), 'isolate', { seen: 'yes', note: 'slowly\nbut well ' }), FACTS, ELEVEN);
  for (const [name, text] of [['name', 'A\u030asa Holm'], ['assessor', 'R. Tansley'], ['second-role', 'nobody named']]) sheet = ObservationSheet.write(sheet, name, text);
  const record = plain(ObservationSheet.record(sheet, FACTS, '2026-11-24T12:00:00Z'));
  assert.equal(record.person.name, '\u00c5sa Holm');
  assert.deepEqual(record.steps.map((/** @type {any} */ step) => [step.id, step.seen, step.note]),
    [['isolate', 'yes', 'slowly\nbut well'], ['close-the-gap', 'not-seen', ''], ['name-parts', 'not-seen', '']]);
  assert.deepEqual([record.stopped, record.result, record.second, record.started, record.ended], [true, 'not-yet-competent', null, NINE, ELEVEN]);
  assert.deepEqual(plain(Observation.from(Observation.text(record))), record);
});

it('it ends when the last step is marked, and a mark put right later does not change that', () => {
  const done = shown();
  assert.equal(done.ended, TEN);
  assert.equal(mark(done, 'name-parts', { seen: 'no' }, ELEVEN).ended, TEN);
});

it('half a character, and what is too long, cannot come into a record', () => {
  assert.equal(Observation.tidy(' a\ud800b '), 'ab');
  assert.equal(Array.from(Observation.tidy('😀'.repeat(1200))).length, 1000);
});

it('the next person finds the assessor and the place, and nothing of the last one', () => {
  const before = ObservationSheet.write(ObservationSheet.write(shown(), 'place', 'the shed'), 'unit', 'drill 2');
  const next = ObservationSheet.next(before, FACTS, '2026-11-25');
  assert.deepEqual([next.lines.name, next.lines.number, next.lines.unit, next.lines.place, next.lines.assessor, next.lines.day], ['', '', '', 'the shed', 'R. Tansley', '2026-11-25']);
  assert.deepEqual(plain(next.safety), [false, false]);
  assert.equal(next.steps.isolate.seen, '');
});

it('of a sheet begun on another state of the course only the lines are kept', () => {
  const later = { ...FACTS, digest: '6b'.repeat(32) };
  assert.ok(ObservationSheet.fits(shown(), FACTS));
  assert.ok(!ObservationSheet.fits(shown(), later));
  const moved = ObservationSheet.onto(shown(), later, DAY);
  assert.deepEqual([moved.lines.number, moved.steps.isolate.seen, moved.digest], ['0417', '', later.digest]);
});

/** A storage as browsers have it. @param {{full?: boolean}} [how] */
function storage(how = {}) {
  /** @type {Map<string, string>} */
  const held = new Map();
  return {
    held,
    getItem: (/** @type {string} */ key) => held.get(key) ?? null,
    removeItem: (/** @type {string} */ key) => held.delete(key),
    setItem(/** @type {string} */ key, /** @type {string} */ value) {
      if (how.full) throw new Error('QuotaExceededError');
      held.set(key, value);
    },
  };
}

it('the device keeps the sheet and its record, each practical apart, until it is cleared', () => {
  const place = storage();
  const store = ObservationStore.open(() => place, FACTS);
  assert.equal(store.read(), null);
  const sheet = ObservationSheet.choose(shown(), FACTS, 'competent');
  const record = Observation.text(ObservationSheet.record(sheet, FACTS, ELEVEN));
  store.write({ sheet, record });
  assert.deepEqual(plain(ObservationStore.open(() => place, FACTS).read()), plain({ sheet, record }));
  assert.equal(ObservationStore.open(() => place, { ...FACTS, practical: 'another' }).read(), null);
  store.clear();
  assert.equal(place.held.size, 0);
  assert.ok(store.isKept());
});

it('where the browser refuses to keep it, it is held until the page is closed', () => {
  for (const find of [() => storage({ full: true }), () => { throw new Error('SecurityError'); }]) {
    const store = ObservationStore.open(find, FACTS);
    const kept = { sheet: shown(), record: null };
    store.write(kept);
    assert.ok(!store.isKept());
    assert.deepEqual(plain(store.read()), plain(kept));
    assert.equal(ObservationStore.open(find, FACTS).read(), null);
  }
});

it('what is no sheet of ours is not read, and a record that was tampered with is none', () => {
  const place = storage();
  const store = ObservationStore.open(() => place, FACTS);
  const odd = [{ result: 'splendid' }, { started: 'yesterday' }, { lines: {} }, { safety: [1] }, { steps: { isolate: { seen: 'perhaps', prompted: false, note: '' } } }]
    .map((change) => JSON.stringify({ sheet: { ...shown(), ...change }, record: null }));
  for (const text of ['', '{', 'null', '{"sheet":{}}', '[1]', ...odd]) {
    place.held.set(store.key, text);
    assert.equal(store.read(), null, text);
  }
  const record = Observation.text(ObservationSheet.record(ObservationSheet.choose(shown(), FACTS, 'competent'), FACTS, ELEVEN));
  for (const changed of [` ${record}`, record.replace('observation 1', 'observation 9'), record.replace('"competent"', '"splendid"'),
    record.replace('"seen":"yes"', '"seen":"perhaps"'), record.replace(/"second":null,/, '"second":"T. Marrable",'), Canonical.write([])]) {
    place.held.set(store.key, JSON.stringify({ sheet: shown(), record: changed }));
    assert.equal(/** @type {any} */ (store.read()).record, null, changed.slice(0, 40));
  }
});
