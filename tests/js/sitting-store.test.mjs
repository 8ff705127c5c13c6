/** What a device keeps of a sitting: a session while it runs, then the record; nothing is lost where the browser keeps nothing. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadSitting } from './load-sitting.mjs';

const { CheckSession, SittingStore } = loadSitting();
const SITTING = '3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11';
const RECORD = readFileSync(new URL('../kept/format-1-sittings/attempt-robin.json', import.meta.url), 'utf8');
const session = CheckSession.begin({
  course: 'drill', version: '1.0', digest: 'd1', profile: 'uk', language: 'en', seed: 'ABCDE-FGHJK', avoid: [],
  form: [{ q: 'a-01', variant: 0, options: [] }], started: '2026-12-02T09:00:00Z',
});

/** A storage as browsers have it: its names are its own properties. @param {{full?: boolean, shut?: boolean}} [how] */
function storage(how = {}) {
  /** @type {Record<string, string>} */
  const held = Object.create({
    getItem: (/** @type {string} */ key) => (Object.hasOwn(held, key) ? held[key] : null),
    setItem(/** @type {string} */ key, /** @type {string} */ value) {
      if (how.full) throw new Error('QuotaExceededError');
      held[key] = value;
    },
    removeItem(/** @type {string} */ key) {
      delete held[key];
    },
  });
  return { held, how, open: (id = SITTING) => SittingStore.open(() => { if (how.shut) throw new Error('SecurityError'); return held; }, id) };
}

it('a session is found again by the next page under the name of its place alone', () => {
  const place = storage();
  place.open().write('p1', { session });
  assert.deepEqual(Object.keys(place.held), [`journeybook-sitting-1:${SITTING}:p1`]);
  assert.deepEqual(plain(place.open().read('p1')), { session: plain(session) });
  assert.equal(place.open().read('p2'), null);
  assert.equal(place.open('another').read('p1'), null);
});

it('the record takes the place of the session, and stays byte for byte', () => {
  const place = storage();
  const store = place.open();
  store.write('p1', { session });
  store.write('p1', { record: RECORD });
  assert.deepEqual(plain(place.open().read('p1')), { record: RECORD });
  assert.doesNotMatch(Object.values(place.held)[0], /session/u);
});

it('what is kept is counted: all, and those handed in', () => {
  const place = storage();
  place.held['somebody elses'] = 'x';
  const store = place.open();
  store.write('p1', { session });
  store.write('p2', { record: RECORD });
  assert.deepEqual(plain(place.open().count()), { all: 2, handedIn: 1 });
});

for (const how of /** @type {{full?: boolean, shut?: boolean}[]} */ ([{ full: true }, { shut: true }])) {
  it(`where the browser keeps nothing (${Object.keys(how)}), the open page still does, and says so`, () => {
    const store = storage(how).open();
    store.write('p1', { session });
    assert.deepEqual([store.isKept('p1'), store.isUnkept()], [false, true]);
    assert.deepEqual(plain(store.read('p1')), { session: plain(session) });
    store.write('p1', { record: RECORD });
    assert.deepEqual(plain(store.count()), { all: 1, handedIn: 1 });
    store.clear();
    assert.equal(store.read('p1'), null);
    assert.equal(store.isUnkept(), false);
  });
}

it('a page reads what another has written since, and keeps its own copy should the browser lose both', () => {
  const place = storage();
  const [one, other] = [place.open(), place.open()];
  one.write('p1', { session });
  other.write('p1', { record: RECORD });
  assert.deepEqual(plain(one.read('p1')), { record: RECORD });
  delete place.held[`journeybook-sitting-1:${SITTING}:p1`];
  assert.deepEqual(plain(other.read('p1')), { record: RECORD });
});

it('a storage that is full now and not later keeps the next change', () => {
  const place = storage({ full: true });
  const store = place.open();
  store.write('p1', { session });
  place.how.full = false;
  store.write('p1', { record: RECORD });
  assert.deepEqual([store.isKept('p1'), store.isUnkept()], [true, false]);
  assert.deepEqual(plain(place.open().read('p1')), { record: RECORD });
});

it('clearing takes away this sitting and nothing else', () => {
  const place = storage();
  place.open('another').write('p9', { session });
  place.held['a card'] = 'x';
  const store = place.open();
  store.write('p1', { session });
  store.write('p2', { record: RECORD });
  store.clear();
  assert.deepEqual(Object.keys(place.held).sort(), ['a card', 'journeybook-sitting-1:another:p9']);
  assert.deepEqual(plain(store.count()), { all: 0, handedIn: 0 });
});

it('what somebody else put there, or a record that was altered, is taken for nothing', () => {
  const place = storage();
  const name = `journeybook-sitting-1:${SITTING}:p1`;
  for (const text of ['', 'null', '{', '[]', '{"session":{}}', '{"record":7}', '{"record":"{}"}',
    JSON.stringify({ record: `${RECORD} ` }), JSON.stringify({ record: RECORD.replace('"format":"journeybook attempt 1",', '') })]) {
    place.held[name] = text;
    assert.equal(place.open().read('p1'), null, text.slice(0, 30));
  }
});
