/** A card, and the file it is put away in. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { Attempt, Canonical, CardRecord, CheckSession, Sha256 } = loadState();
const card = CardRecord.blank({ id: 'ada', name: 'Ada Thwaite', workplace: 'Shed 2', made: '2026-11-24' });
const session = CheckSession.begin({
  course: 'drill', version: '1.0', digest: 'd', profile: 'uk', language: 'en', seed: 's', avoid: [], started: '2026-11-24T09:00:00Z',
  form: [{ q: 'a-01', variant: 0, options: ['x'] }],
});

const attempt = Canonical.write(CheckSession.attempt(session, card, '2026-11-24T09:20:00Z'));
const entry = {
  ended: '2026-11-24T09:20:00Z', day: '2026-11-24', marks: 7000, of: 8000, percent: 80, passed: true, version: '1.0', digest: 'd',
  fingerprint: Attempt.fingerprint(Sha256.utf8(attempt)), questions: ['a-01'], attempt,
};

/** The file of a card with one check, of which something was changed. @param {object} change */
function fileWith(change) {
  return CardRecord.toFile({ ...card, courses: { drill: { read: {}, checks: [{ ...entry, ...change }], session: null } } });
}

/** The file of a card with a check under way, of which something was changed. @param {object} change */
function fileUnderWay(change) {
  return CardRecord.toFile({ ...card, courses: { drill: { read: {}, checks: [], session: { ...session, ...change } } } });
}

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
  assert.deepEqual(plain(CardRecord.seenQuestions(twice, 'drill')), ['a-01', 'c-01']);
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
  ['a day that the calendar lacks', CardRecord.toFile({ ...card, courses: { drill: { read: { guard: '2026-02-30' }, checks: [], session: null } } })],
  ['a name of nothing but spaces', CardRecord.toFile({ ...card, name: ' ' })],
  ['a check that lacks its marks', fileWith({ marks: null })],
  ['a check whose attempt is none', fileWith({ attempt: '{}' })],
  ['a check on a day that is none', fileWith({ day: 'x' })],
  ['a check dated long after its attempt', fileWith({ day: '2026-11-26' })],
  ['a check that ended when its attempt did not', fileWith({ ended: '2026-11-24T10:20:00Z' })],
  ['a check with another fingerprint', fileWith({ fingerprint: 'ABCD-EFGH-IJKL-MNOP' })],
  ['a check of another version than its attempt', fileWith({ version: '2.0' })],
  ['a check with other questions than its attempt', fileWith({ questions: [] })],
  ['a check that stands under another course', CardRecord.toFile({ ...card, courses: { grinder: { read: {}, checks: [entry], session: null } } })],
  ['an answer that no record may hold', fileUnderWay({ answers: { 'a-01': 1.5 } })],
  ['half a character in an answer', fileUnderWay({ answers: { 'a-01': '\ud83d' } })],
  ['a check that began at no time', fileUnderWay({ started: 'this morning' })],
  ['a check whose course is too long a text', fileUnderWay({ course: 'x'.repeat(1001) })],
  ['a broken session', CardRecord.toFile({ ...card, courses: { drill: { read: {}, checks: [], session: { form: [] } } } })],
  ['a file of five megabytes', ' '.repeat(5_000_000)],
])) {
  it(`a file with ${what} holds no card`, () => assert.equal(CardRecord.fromFile(text), null));
}

it('a name is cut between characters, never within one', () => {
  const { name } = CardRecord.blank({ id: 'ada', name: `${'a'.repeat(119)}\u{1f527}\u{1f527}`, workplace: '', made: '2026-11-24' });
  assert.equal(name, `${'a'.repeat(119)}\u{1f527}`);
});

it('half a character in a name is left out, so that a check can be handed in', () => {
  const broken = CardRecord.fromFile(CardRecord.toFile({ ...card, name: 'Ada \ud83d Thwaite', workplace: '\udd27' }));
  assert.equal(broken.name, 'Ada  Thwaite');
  assert.doesNotThrow(() => Canonical.write(CheckSession.attempt(session, broken, '2026-11-24T09:20:00Z')));
});

it('a name from a file is written in one way', () => {
  assert.equal(CardRecord.fromFile(CardRecord.toFile({ ...card, name: '  Zo\u0065\u0308   Ash ' })).name, 'Zo\u00eb Ash');
});

it('a check goes on from what the card holds of it now', () => {
  const underWay = CardRecord.withSession(card, 'drill', { ...session, answers: { 'b-01': 'y' } });
  const next = CardRecord.stepSession(underWay, 'drill', 's', (/** @type {any} */ now) => CheckSession.answer(now, 'a-01', 'x'));
  assert.deepEqual(plain(CardRecord.of(next, 'drill').session.answers), { 'b-01': 'y', 'a-01': 'x' });
});

it('a check that was handed in elsewhere, or begun anew, does not go on', () => {
  const refuse = () => assert.fail('this check is over');
  assert.equal(CardRecord.stepSession(card, 'drill', 's', refuse), card);
  const anew = CardRecord.withSession(card, 'drill', { ...session, seed: 'another' });
  assert.equal(CardRecord.stepSession(anew, 'drill', 's', refuse), anew);
});
