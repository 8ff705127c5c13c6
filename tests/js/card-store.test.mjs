/** The cards of a device, where the browser keeps them and where it does not. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { CardRecord, CardStore } = loadState();
const ada = CardRecord.blank({ id: 'ada', name: '  Ada   Thwaite ', workplace: 'Shed 2', made: '2026-11-24' });
const ben = CardRecord.blank({ id: 'ben', name: 'Ben Osei', workplace: '', made: '2026-11-24' });

/** A storage as browsers have it. @param {{full?: boolean}} [how] */
function storage(how = {}) {
  /** @type {Map<string, string>} */
  const held = new Map();
  return {
    held,
    how,
    getItem: (/** @type {string} */ key) => held.get(key) ?? null,
    setItem(/** @type {string} */ key, /** @type {string} */ value) {
      if (how.full) throw new Error('QuotaExceededError');
      held.set(key, value);
    },
  };
}

it('a name is kept without superfluous spaces', () => assert.equal(ada.name, 'Ada Thwaite'));

it('a card that is added is the current one, also for the next page', () => {
  const place = storage();
  CardStore.open(() => place).add(ada);
  assert.equal(CardStore.open(() => place).current().name, 'Ada Thwaite');
});

it('a device holds several cards, listed by name', () => {
  const store = CardStore.open(() => storage());
  store.add(ben);
  store.add(ada);
  assert.deepEqual(plain(store.cards().map((/** @type {any} */ card) => card.name)), ['Ada Thwaite', 'Ben Osei']);
});

it('an edit changes the current card and no other', () => {
  const store = CardStore.open(() => storage());
  store.add(ben);
  store.add(ada);
  store.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'guard', '2026-11-24'));
  assert.deepEqual(plain(CardRecord.of(store.current(), 'drill').read), { guard: '2026-11-24' });
  store.choose('ben');
  assert.deepEqual(plain(CardRecord.of(store.current(), 'drill').read), {});
});

it('without a card nothing is edited', () => {
  const store = CardStore.open(() => storage());
  store.edit(() => assert.fail('there is no card'));
  assert.equal(store.current(), null);
});

it('two windows do not overwrite each other', () => {
  const place = storage();
  const one = CardStore.open(() => place);
  const two = CardStore.open(() => place);
  one.add(ada);
  two.add(ben);
  assert.equal(CardStore.open(() => place).cards().length, 2);
});

it('a card put away is gone from the device, and nobody is current', () => {
  const place = storage();
  const store = CardStore.open(() => place);
  store.add(ada);
  store.clear('ada');
  assert.equal(store.current(), null);
  assert.ok(!String(place.held.get(CardStore.KEY)).includes('Thwaite'));
});

for (const [what, find] of /** @type {[string, () => any][]} */ ([
  ['a browser that throws', () => { throw new Error('SecurityError'); }],
  ['a browser that has no storage', () => null],
  ['a storage that throws when read', () => ({ getItem() { throw new Error('denied'); }, setItem() {} })],
])) {
  it(`${what} is told of, and the card goes on in memory`, () => {
    const store = CardStore.open(find);
    store.add(ada);
    assert.equal(store.standing(), 'refused');
    assert.equal(store.current().name, 'Ada Thwaite');
  });
}

it('a full storage is told of, and later answers are not lost to the older text in it', () => {
  const place = storage();
  const store = CardStore.open(() => place);
  store.add(ada);
  place.how.full = true;
  store.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'guard', '2026-11-24'));
  store.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'belt', '2026-11-25'));
  assert.equal(store.standing(), 'full');
  assert.deepEqual(plain(CardRecord.of(store.current(), 'drill').read), { guard: '2026-11-24', belt: '2026-11-25' });
});

it('with room again, what another window wrote meanwhile stays', () => {
  const place = storage();
  const one = CardStore.open(() => place);
  one.add(ada);
  const two = CardStore.open(() => place);
  place.how.full = true;
  one.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'guard', '2026-11-24'));
  place.how.full = false;
  two.add(ben);
  one.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'belt', '2026-11-25'));
  const kept = CardStore.open(() => place);
  assert.deepEqual(plain(kept.cards().map((/** @type {any} */ card) => card.name)), ['Ada Thwaite', 'Ben Osei']);
  assert.deepEqual(plain(CardRecord.of(kept.cards()[0], 'drill').read), { guard: '2026-11-24', belt: '2026-11-25' });
});

it('what is done in a window goes to its card, though another window has chosen another', () => {
  const place = storage();
  const one = CardStore.open(() => place);
  one.add(ben);
  one.add(ada);
  const two = CardStore.open(() => place);
  two.choose('ben');
  one.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'guard', '2026-11-24'));
  const [first, second] = CardStore.open(() => place).cards();
  assert.deepEqual(plain(CardRecord.of(first, 'drill').read), { guard: '2026-11-24' });
  assert.deepEqual(plain(CardRecord.of(second, 'drill').read), {});
  assert.equal(one.current().name, 'Ben Osei', 'from then on this window knows');
});

it('a card that another window put away is not brought back', () => {
  const place = storage();
  const one = CardStore.open(() => place);
  one.add(ada);
  CardStore.open(() => place).clear('ada');
  one.edit(() => assert.fail('the card is gone'));
  assert.deepEqual(plain(CardStore.open(() => place).cards()), []);
});

it('cards that did not change are not read again at every answer', () => {
  const place = storage();
  const store = CardStore.open(() => place);
  store.add(ada);
  const first = store.current();
  store.refresh();
  assert.equal(store.current(), first);
});

it('a browser that begins to refuse is told of, and nothing done is lost', () => {
  const place = storage();
  const store = CardStore.open(() => place);
  store.add(ada);
  place.getItem = () => { throw new Error('SecurityError'); };
  store.edit((/** @type {any} */ card) => CardRecord.readLesson(card, 'drill', 'guard', '2026-11-24'));
  assert.equal(store.standing(), 'refused');
  assert.deepEqual(plain(CardRecord.of(store.current(), 'drill').read), { guard: '2026-11-24' });
});

it('with room again, everything is written', () => {
  const place = storage({ full: true });
  const store = CardStore.open(() => place);
  store.add(ada);
  place.how.full = false;
  store.add(ben);
  assert.equal(store.standing(), 'kept');
  assert.equal(CardStore.open(() => place).cards().length, 2);
});

for (const text of ['not JSON', '{"format":"journeybook cards 2","cards":{}}', '{"format":"journeybook cards 1","current":null,"cards":{"x":{"id":"x"}}}']) {
  it(`a text that cannot be read is left where it is: ${text.slice(0, 40)}`, () => {
    const place = storage();
    place.held.set(CardStore.KEY, text);
    const store = CardStore.open(() => place);
    store.add(ada);
    assert.equal(store.standing(), 'unreadable');
    assert.equal(place.held.get(CardStore.KEY), text);
    assert.equal(store.current().name, 'Ada Thwaite');
  });
}

it('a listener hears of every change', () => {
  const store = CardStore.open(() => storage());
  let heard = 0;
  store.subscribe(() => { heard += 1; });
  store.add(ada);
  store.notShared();
  store.refresh();
  assert.equal(heard, 3);
  assert.equal(store.standing(), 'not-shared');
});
