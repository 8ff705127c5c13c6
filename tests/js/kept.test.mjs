/**
 * What was written once is drawn, marked and written again to the same bytes by the scripts.
 */
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { it } from 'node:test';
import { loadPure, plain } from './load.mjs';

const { Attempt, Canonical, Draw, Mark, Result, Sha256 } = loadPure();
const KEPT = new URL('../kept/format-1/', import.meta.url);
const text = (/** @type {string} */ name) => readFileSync(new URL(name, KEPT), 'utf8');

const compiledText = text('releases/1.0/uk/compiled.json');
const compiled = JSON.parse(compiledText);
const names = readdirSync(KEPT).filter((name) => name.startsWith('attempt-'));

it('there are kept attempts', () => assert.equal(names.length, 4));

for (const name of names) {
  const record = plain(Canonical.read(text(name)));
  const { plan, cut, questions } = compiled.public;
  const { keys } = compiled.private;
  const expected = JSON.parse(text(name.replace('attempt', 'remarked')));

  it(`${name}: names the digest of the compiled course`, () => {
    assert.equal(Sha256.hex(compiledText), record.digest);
  });
  it(`${name}: the seed gives the form`, () => {
    assert.deepEqual(plain(Draw.form(plan, record.seed, record.avoid)), record.form);
  });
  it(`${name}: the answers give the recorded result`, () => {
    const outcomes = Object.fromEntries(Object.entries(questions).map(([id, facts]) => [id, facts.outcome]));
    const result = Result.check({ plan, percent: cut.percent, outcomes, keys, form: record.form, answers: record.answers });
    // Younger than the format: drills, of which none was asked.
    assert.deepEqual(plain(result), { critical: [], ...expected.result });
  });
  it(`${name}: the answers give the recorded remarks`, () => {
    const remarks = Object.fromEntries(
      record.form.map((/** @type {any} */ { q, variant }) => [q, Mark.mark(keys[q], variant, record.answers[q]).remarks]),
    );
    assert.deepEqual(plain(remarks), expected.remarks);
  });
  it(`${name}: the record is written to the same bytes, with the same fingerprint`, () => {
    const bytes = Attempt.bytes(Attempt.build(record));
    assert.equal(Buffer.from(bytes).toString('utf8'), text(name));
    assert.equal(Attempt.fingerprint(bytes), expected.fingerprint);
  });
}
