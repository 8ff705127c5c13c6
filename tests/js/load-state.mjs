/**
 * Loads the pure and the state scripts of the theme, unchanged, in one scope. Neither needs a page.
 */
import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';

const THEME = new URL('../../site_overrides/js/', import.meta.url);

/**
 * The scripts' own names, such as `CardStore`.
 * @returns {Record<string, any>}
 */
export function loadState() {
  const files = ['order.txt', 'order-check.txt', 'order-search.txt', 'order-drill.txt', 'order-practical.txt']
    .flatMap((order) => readFileSync(new URL(order, THEME), 'utf8').split('\n'))
    .filter((name) => name.startsWith('pure/') || name.startsWith('state/'));
  const sources = files.map((name) => readFileSync(new URL(name, THEME), 'utf8'));
  const names = sources.flatMap((source) => Array.from(source.matchAll(/^const (\w+) =/gmu), (found) => found[1]));
  return runInNewContext(`${sources.join('\n')}\n({ ${names.join(', ')} })`, {});
}
