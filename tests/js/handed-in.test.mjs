/** A check that was handed in is judged by its raw answers, whatever the card says of it. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { plain } from './load.mjs';
import { loadState } from './load-state.mjs';

const { Canonical, CheckSession, Draw, HandedIn } = loadState();
const shape = { kind: 'choice', options: ['a', 'b'], shuffle: true, variants: 1 };
const key = { kind: 'choice', options: ['a', 'b'], right: 'b' };
const facts = {
  course: 'drill', version: '1', digest: 'd', profile: 'uk', language: 'en', percent: 50, months: 12,
  plan: {
    'form-algorithm': 1, gates: [{ fact: 'isolate', questions: ['gate-01'] }],
    cells: [{ outcome: 'set', level: 'recall', draw: 1, questions: ['cell-01'] }], questions: { 'gate-01': shape, 'cell-01': shape },
  },
  keys: { 'gate-01': key, 'cell-01': key }, outcomes: { 'gate-01': 'set', 'cell-01': 'set' },
};

/** @param {Record<string, string>} answers @param {object} [change] */
function handedIn(answers, change = {}) {
  const form = Draw.form(facts.plan, 's', []);
  const session = { ...CheckSession.begin({
    course: 'drill', version: '1', digest: 'd', profile: 'uk', language: 'en', seed: 's', avoid: [], form, started: '2026-11-24T09:00:00Z',
  }), answers, ...change };
  const attempt = Canonical.write(CheckSession.attempt(session, { id: 'ada', name: 'Ada', workplace: '' }, '2026-11-24T09:20:00Z'));
  return { day: '2026-11-24', passed: true, marks: 2000, of: 2000, fingerprint: 'XXXX', attempt };
}

it('right answers pass', () => {
  const { result } = HandedIn.read(handedIn({ 'gate-01': 'b', 'cell-01': 'b' }), 1, facts);
  assert.ok(result.passed);
  assert.equal(result.marks, 2000);
});

it('a card that claims to have passed is not believed', () => {
  assert.ok(!HandedIn.read(handedIn({ 'gate-01': 'a', 'cell-01': 'b' }), 1, facts).result.passed);
});

it('a line of a card that claims to have passed gets the result of its answers', () => {
  const [line] = HandedIn.trued([handedIn({ 'gate-01': 'a', 'cell-01': 'b' })], facts);
  assert.deepEqual(plain([line.passed, line.marks, line.of, line.percent]), [false, 1000, 2000, 50]);
});

it('lines that say what their answers earn are left as they are, and so is a line of another state of the course', () => {
  const [right] = HandedIn.trued([handedIn({ 'gate-01': 'b', 'cell-01': 'b' })], facts);
  assert.ok(right.passed);
  const lines = [right, handedIn({}, { digest: 'earlier' })];
  assert.equal(HandedIn.trued(lines, facts), lines);
});

it('a must-pass question that is wrong holds the whole check, though the marks suffice', () => {
  const { result } = HandedIn.read(handedIn({ 'gate-01': 'a', 'cell-01': 'b' }), 1, facts);
  assert.ok(result.marks >= result.cut);
  assert.deepEqual(plain(result['must-pass']), [{ fact: 'isolate', question: 'gate-01', mark: 0 }]);
});

it('the fingerprint comes from the attempt', () => {
  assert.match(HandedIn.read(handedIn({}), 1, facts).fingerprint, /^[A-Z2-7]{4}(-[A-Z2-7]{4}){3}$/u);
});

for (const [what, change] of /** @type {[string, object][]} */ ([
  ['another state of the course', { digest: 'earlier' }],
  ['another course', { course: 'grinder' }],
  ['another version', { version: '2' }],
  ['another profile', { profile: 'us' }],
  ['another language', { language: 'pl' }],
  ['a form that its seed does not draw', { form: [{ q: 'cell-01', variant: 0, options: ['a', 'b'] }] }],
])) {
  it(`${what} is not marked`, () => {
    assert.equal(HandedIn.read(handedIn({ 'gate-01': 'b', 'cell-01': 'b' }, change), 1, facts).result, null);
  });
}

it('a day that cannot be that of the attempt is not believed', () => {
  const line = handedIn({});
  assert.equal(HandedIn.read({ ...line, day: '2027-11-24' }, 1, facts).day, '2026-11-24');
  const atNoon = line.attempt.replace('"ended":"2026-11-24T09:20:00Z"', '"ended":"2026-11-24T11:20:00Z"');
  assert.equal(HandedIn.read({ ...line, attempt: atNoon, day: '2026-11-25' }, 1, facts).day, '2026-11-25', 'clocks may be 14 hours ahead of UTC');
});

it('a record that the employer would refuse is none here either', () => {
  const { attempt } = handedIn({});
  for (const [from, to] of [['"ended":"2026-11-24T09:20:00Z"', '"ended":"2026-11-24"'], ['"variant":0', '"variant":"0"'], ['"workplace":""', '"workplace":7'], ['"profile":"uk"', '"profile":""']]) {
    assert.ok(attempt.includes(from) && !HandedIn.isRecord(attempt.replace(from, to)), to);
  }
});

it('only a canonical record of an attempt counts as one', () => {
  const { attempt } = handedIn({});
  assert.ok(HandedIn.isRecord(attempt));
  assert.ok(!HandedIn.isRecord(` ${attempt}`));
  assert.ok(!HandedIn.isRecord('{}'));
  assert.ok(!HandedIn.isRecord(attempt.replace('journeybook attempt 1', 'journeybook attempt 2')));
});
