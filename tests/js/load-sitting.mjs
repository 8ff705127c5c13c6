/** Loads the unchanged scripts of a sitting's page that need no document: the vendored ones, the pure, the state, and the seal. */
import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';

const THEME = new URL('../../site_overrides/js/', import.meta.url);

/** @returns {Record<string, any>} */
export function loadSitting() {
  const files = readFileSync(new URL('order-sitting.txt', THEME), 'utf8').split('\n')
    .filter((name) => /^(vendor|pure|state)\//u.test(name) || name === 'view/sitting-seal.js');
  const sources = files.map((name) => readFileSync(new URL(name, THEME), 'utf8'));
  const names = sources.flatMap((source) => Array.from(source.matchAll(/^const (\w+) ?=/gmu), (found) => found[1]));
  return runInNewContext(`${sources.join('\n')}\n({ ${names.join(', ')} })`, { TextDecoder, TextEncoder, atob, setTimeout });
}
