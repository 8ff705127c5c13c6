/** What cannot be a record is refused with a reason, whatever it is, and never with an error of another sort. */
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { loadPure } from './load.mjs';

const { Canonical } = loadPure();

for (const [what, text, reason] of /** @type {[string, string, string][]} */ ([
  ['half a surrogate pair', '"\ud83d"', 'utf-8'],
  ['half a surrogate pair written with a backslash', '"\\ud83d"', 'surrogate'],
  ['more than a mebibyte', `"${'a'.repeat(1 << 20)}"`, 'size'],
  ['a key twice', '{"a":1,"a":2}', 'form'],
  ['lists too deep in one another', `${'['.repeat(33)}${']'.repeat(33)}`, 'depth'],
  ['nothing', '', 'json'],
])) {
  it(`${what} is refused`, () => assert.throws(() => Canonical.read(text), (/** @type {any} */ error) => error instanceof Canonical.Refused && error.reason === reason));
}
