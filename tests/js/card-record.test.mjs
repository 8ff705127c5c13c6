/** A card, and the file it is put away in. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { Canonical, CardRecord, CheckSession } = loadState();
const card = CardRecord.blank({ id: 'ada', name: 'Ada Thwaite', workplace: 'Shed 2', made: '2026-11-24' });
const session = CheckSession.begin({
  course: 'drill', version: '1.0', digest: 'd', profile: 'uk', language: 'en', seed: 's', avoid: [], started: '2026-11-24T09:00:00Z',
  form: [{ q: 'a-01', variant: 0, options: ['x'] }],
});

const entry = {
  ended: '2026-11-24T09:20:00Z', day: '2026-11-24', marks: 7000, of: 8000, percent: 80, passed: true, version: '1.0', digest: 'd',
  fingerprint: 'ABCD-EFGH-IJKL-MNOP', questions: ['b-01', 'a-01'], attempt: Canonical.write(CheckSession.attempt(session, card, '2026-11-24T09:20:00Z')),
};
it('the first reading of a lesson keeps its day', () => {
  const again = CardRecord.readLesson(CardRecord.readLesson(card, 'drill', 'guard', '2026-11-21'), 'drill', 'guard', '2026-11-24');
  assert.deepEqual(plain(CardRecord.of(again, 'drill').read), { guard: '2026-11-21' });
});

it('handing in ends the check under way and keeps the entry', () => {
  const done = CardRecord.handIn(CardRecord.withSession(card, 'drill', session), 'drill', entry);
  assert.equal(CardRecord.of(done, 'drill').session, null);
  assert.deepEqual(plain(CardRecord.of(done, 'drill').checks), [entry]);
});

it('the next form avoids every question met before, each named once', () => {
  const twice = CardRecord.handIn(CardRecord.handIn(card, 'drill', entry), 'drill', { ...entry, questions: ['c-01', 'a-01'] });
  assert.deepEqual(plain(CardRecord.seenQuestions(twice, 'drill')), ['a-01', 'b-01', 'c-01']);
});

it('courses do not touch each other', () => {
  const done = CardRecord.handIn(card, 'drill', entry);
  assert.deepEqual(plain(CardRecord.of(done, 'grinder').checks), []);
});

it('a card comes out of its file as it went in, a check under way included', () => {
  const full = CardRecord.withSession(CardRecord.handIn(CardRecord.readLesson(card, 'drill', 'guard', '2026-11-21'), 'drill', entry), 'drill', session);
  assert.deepEqual(plain(CardRecord.fromFile(CardRecord.toFile(full))), plain(full));
});

for (const [what, text] of /** @type {[string, string][]} */ ([
  ['no JSON', 'hello'],
  ['another format', '{"format":"something else"}'],
  ['null', 'null'],
  ['a later format', CardRecord.toFile(card).replace('card 1', 'card 2')],
  ['an id with other signs', CardRecord.toFile({ ...card, id: '../x' })],
  ['a name that is a number', CardRecord.toFile({ ...card, name: 7 })],
  ['a day that is none', CardRecord.toFile({ ...card, courses: { drill: { read: { guard: 'soon' }, checks: [], session: null } } })],
  ['a check that lacks its marks', CardRecord.toFile({ ...card, courses: { drill: { read: {}, checks: [{ ...entry, marks: null }], session: null } } })],
  ['a check whose attempt is none', CardRecord.toFile({ ...card, courses: { drill: { read: {}, checks: [{ ...entry, attempt: '{}' }], session: null } } })],
  ['a broken session', CardRecord.toFile({ ...card, courses: { drill: { read: {}, checks: [], session: { form: [] } } } })],
  ['a file of five megabytes', ' '.repeat(5_000_000)],
])) {
  it(`a file with ${what} holds no card`, () => assert.equal(CardRecord.fromFile(text), null));
}
