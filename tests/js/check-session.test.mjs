/** A check under way: nothing given is lost, and nothing is marked by another state of the course. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { Attempt, Canonical, CheckSession, Draw } = loadState();
const shape = { kind: 'number', options: [], shuffle: false, variants: 1 };
const plan = {
  'form-algorithm': 1, gates: [], questions: { 'a-01': shape, 'b-01': shape, 'c-01': shape },
  cells: [{ outcome: 'o', level: 'recall', draw: 3, questions: ['a-01', 'b-01', 'c-01'] }],
};
const drawn = plain(Draw.form(plan, 's', ['z-01']));
const form = ['a-01', 'b-01', 'c-01'].map((q) => ({ q, variant: 0, options: [] }));
const facts = {
  course: 'drill', version: '1.0', digest: 'd1', profile: 'uk', language: 'en', seed: 's', avoid: ['z-01'], form, started: '2026-11-24T09:00:00Z',
};
const begun = CheckSession.begin(facts);

it('a check begins at its first question, which then counts as shown', () => {
  assert.equal(begun.at, 0);
  assert.deepEqual(plain(begun.shown), ['a-01']);
});

it('turning goes no further than the ends of the form', () => {
  assert.equal(CheckSession.goTo(begun, -1).at, 0);
  assert.equal(CheckSession.goTo(begun, 9).at, 2);
});

it('a question counts as shown once, in the order of the first looks', () => {
  const turned = [2, 0, 1, 2].reduce((state, index) => CheckSession.goTo(state, index), begun);
  assert.deepEqual(plain(turned.shown), ['a-01', 'c-01', 'b-01']);
});

it('an answer stays through turning and through being written and read again', () => {
  const kept = JSON.parse(JSON.stringify(CheckSession.goTo(CheckSession.answer(begun, 'a-01', 'b'), 1)));
  assert.ok(CheckSession.isSession(kept));
  assert.equal(kept.answers['a-01'], 'b');
  assert.equal(kept.at, 1);
});

it('an answer taken back is open again', () => {
  const back = CheckSession.answer(CheckSession.answer(begun, 'a-01', 'b'), 'a-01', null);
  assert.equal(CheckSession.standing(back, 'a-01'), 'open');
  assert.deepEqual(plain(back.answers), {});
});

it('what is begun but not whole is neither answered nor in the attempt', () => {
  const state = CheckSession.answer(begun, 'b-01', null, { order: ['x', 'y'], placed: 1 });
  assert.equal(CheckSession.standing(state, 'b-01'), 'begun');
  assert.deepEqual(plain(CheckSession.attempt(state, { id: 'c', name: 'N', workplace: '' }, 'e').answers), {});
});

it('the list of what is open names places in the form', () => {
  assert.deepEqual(plain(CheckSession.unanswered(CheckSession.answer(begun, 'b-01', ['x']))), [0, 2]);
});

it('a check goes on only with the course and the form it began with', () => {
  const own = { ...plain(begun), form: drawn };
  assert.ok(CheckSession.fits(own, 'd1', plan));
  assert.ok(!CheckSession.fits(own, 'd2', plan), 'the course was changed');
  assert.ok(!CheckSession.fits({ ...own, form: drawn.slice(1) }, 'd1', plan), 'a question was taken out');
  assert.ok(!CheckSession.fits({ ...own, seed: 'another' , avoid: ['a-01'], form: [...drawn].reverse() }, 'd1', plan), 'the form was turned');
});

it('the functions leave the state they are given as it was', () => {
  const before = JSON.stringify(begun);
  CheckSession.answer(CheckSession.goTo(begun, 2), 'c-01', 'x');
  assert.equal(JSON.stringify(begun), before);
});

it('the attempt is what the contract says, and has canonical bytes', () => {
  const record = CheckSession.attempt(CheckSession.answer(begun, 'a-01', 'b'), { id: 'c1', name: 'R. Adeyemi-Holt', workplace: 'Shed' }, '2026-11-24T09:20:00Z');
  assert.deepEqual(plain(record), {
    format: 'journeybook attempt 1', ...facts, answers: { 'a-01': 'b' }, shown: ['a-01'], ended: '2026-11-24T09:20:00Z',
    card: { id: 'c1', name: 'R. Adeyemi-Holt', workplace: 'Shed' },
  });
  assert.equal(Canonical.write(Canonical.read(Canonical.write(record))), Canonical.write(record));
  assert.match(Attempt.fingerprint(Attempt.bytes(record)), /^([A-Z2-7]{4}-){3}[A-Z2-7]{4}$/u);
});

for (const [what, change] of /** @type {[string, object][]} */ ([
  ['a form that is empty', { form: [] }],
  ['a place outside the form', { at: 3 }],
  ['answers that are a list', { answers: [] }],
  ['a form line without options', { form: [{ q: 'a', variant: 0 }] }],
  ['a seed that is a number', { seed: 7 }],
])) {
  it(`${what} is no session`, () => assert.ok(!CheckSession.isSession({ ...plain(begun), ...change })));
}
