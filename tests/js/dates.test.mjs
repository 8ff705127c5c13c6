/** Days as text: retraining falls on the same day of the month, or on the last of a shorter one. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { loadState } from './load-state.mjs';

const { Dates } = loadState();

for (const [day, months, due] of [
  ['2026-11-24', 12, '2027-11-24'],
  ['2024-02-29', 12, '2025-02-28'],
  ['2027-02-28', 12, '2028-02-28'],
  ['2026-01-31', 1, '2026-02-28'],
  ['2026-10-31', 6, '2027-04-30'],
  ['2026-12-15', 1, '2027-01-15'],
  ['2026-11-24', 36, '2029-11-24'],
]) {
  it(`${day} and ${months} months is ${due}`, () => assert.equal(Dates.addMonths(day, months), due));
}

it('English without a country puts the day before the month', () => {
  assert.equal(Dates.short('2026-11-21', 'en'), '21 Nov');
  assert.equal(Dates.long('2026-11-21', 'en'), '21 November 2026');
});

it('a day reads the same in every time zone, since it is a day and not a moment', () => {
  assert.equal(Dates.long('2026-01-01', 'en'), '1 January 2026');
});

it('an instant is UTC to the second', () => {
  assert.equal(Dates.instant(new Date(Date.UTC(2026, 10, 24, 9, 0, 7, 345))), '2026-11-24T09:00:07Z');
});
