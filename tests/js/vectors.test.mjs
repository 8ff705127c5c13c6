/**
 * Runs every file of tests/vectors against the unchanged scripts.
 */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, it } from 'node:test';
import { plain } from './load.mjs';
import { OPERATIONS } from './operations.mjs';

const VECTORS = new URL('../vectors/', import.meta.url);

for (const name of readdirSync(VECTORS).filter((each) => each.endsWith('.json'))) {
  const { about, cases } = JSON.parse(readFileSync(new URL(name, VECTORS), 'utf8'));
  describe(`${name}: ${about}`, () => {
    for (const each of cases) {
      it(each.name, () => {
        assert.deepEqual(plain(OPERATIONS[each.do](each.given)), each.expect);
      });
    }
  });
}
