import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { vendored } from '../../tools/vendor_scripts.mjs';

const HOME = new URL('../../site_overrides/js/vendor/', import.meta.url);

test('the vendored scripts and licences are what the locked packages make, and nothing else stands beside them', async () => {
  const made = await vendored();
  for (const [name, text] of made) assert.ok(readFileSync(new URL(name, HOME), 'utf8') === text, `${name}; run: node tools/vendor_scripts.mjs`);
  const there = readdirSync(HOME, { recursive: true }).map(String).filter((name) => name.includes('.'));
  assert.deepEqual(there.sort(), [...made.keys()].sort());
});
test('each is one const on one line below its licence', () => {
  for (const name of readdirSync(HOME).filter((each) => each.endsWith('.js'))) {
    const text = readFileSync(new URL(name, HOME), 'utf8');
    assert.match(text, /^\/\*!\n[^*]*(MIT License|Permission is hereby granted)[^]*\n\*\/\nconst \w+=\(\(\)=>\{[^\n]*\n$/, name);
  }
});
test('the packages are those of the lock', () => {
  const lock = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')).packages;
  for (const name of ['esbuild', '@noble/ed25519', '@noble/hashes', '@noble/ciphers', 'fflate', 'qr']) {
    const installed = JSON.parse(readFileSync(new URL(`../../node_modules/${name}/package.json`, import.meta.url), 'utf8')).version;
    assert.equal(installed, lock[`node_modules/${name}`].version, name);
  }
});
