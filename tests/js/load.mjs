/**
 * Loads the unchanged scripts of the theme, as a page would: one after another, in one global scope.
 */
import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';

const THEME = new URL('../../site_overrides/js/', import.meta.url);

/**
 * The pure scripts' own names, such as `Mark`.
 * @returns {Record<string, any>}
 */
export function loadPure() {
  const orders = ['order.txt', 'order-check.txt', 'order-search.txt', 'order-calculator.txt', 'order-bench.txt', 'order-practical.txt', 'order-sitting.txt'];
  const named = orders.flatMap((order) => readFileSync(new URL(order, THEME), 'utf8').split('\n'));
  // The page of a sitting is a document of its own, with some of the same scripts.
  const files = [...new Set(named.filter((name) => name.startsWith('pure/')))];
  const sources = files.map((name) => readFileSync(new URL(name, THEME), 'utf8'));
  const names = sources.flatMap((source) => Array.from(source.matchAll(/^const (\w+) =/gmu), (found) => found[1]));
  return runInNewContext(`${sources.join('\n')}\n({ ${names.join(', ')} })`, {});
}

/**
 * Data as this side sees it: what comes out of another context has other prototypes, which deepEqual would notice.
 * @param {unknown} value
 * @returns {any}
 */
export function plain(value) {
  return JSON.parse(JSON.stringify(value));
}
