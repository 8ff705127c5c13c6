/**
 * The scripts and these tests hold what their types say.
 */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { it } from 'node:test';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

for (const project of ['tests/js/tsconfig.json', 'tests/js/tsconfig.tests.json', 'tests/browser/tsconfig.json']) {
  it(`${project} has no type errors`, () => {
    const run = spawnSync('node_modules/.bin/tsc', ['-p', project], { cwd: ROOT, encoding: 'utf8' });
    assert.equal(run.stdout, '');
    assert.equal(run.status, 0);
  });
}
