// Makes site_overrides/js/vendor from the packages that package-lock.json names:
//
//   node tools/vendor_scripts.mjs            writes the scripts and their licences
//   node tools/vendor_scripts.mjs --check    says which differ from what it would write; exit code 1 if any does
//
// Each becomes one classic script with one top-level const, on one line below the licences of what is in it.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const HOME = join(ROOT, 'site_overrides', 'js', 'vendor');

/**
 * File, name of its const, packages in it with the file of their licence.
 * @type {[string, string, Record<string, string>][]}
 */
const SCRIPTS = [
  ['noble-ed25519', 'NobleEd25519', { '@noble/ed25519': 'LICENSE', '@noble/hashes': 'LICENSE' }],
  ['noble-seal', 'NobleSeal', { '@noble/ciphers': 'LICENSE', '@noble/hashes': 'LICENSE' }],
  ['fflate', 'Fflate', { fflate: 'LICENSE' }],
  ['qr-code', 'QrCode', { qr: 'LICENSE-MIT' }],
];

/** @param {string} name @param {string} file */
const ofPackage = (name, file) => readFileSync(join(ROOT, 'node_modules', name, file), 'utf8');

/**
 * Every file of the folder by its name, as it has to be.
 * @returns {Promise<Map<string, string>>}
 */
export async function vendored() {
  const made = new Map();
  for (const [file, global, packages] of SCRIPTS) {
    const result = await build({
      entryPoints: [join(ROOT, 'tools', 'vendor_entries', `${file}.mjs`)],
      bundle: true,
      minify: true,
      format: 'iife',
      globalName: global,
      target: 'es2020',
      charset: 'ascii',
      legalComments: 'none',
      write: false,
      absWorkingDir: ROOT,
    });
    const code = (result.outputFiles ?? [])[0].text.trim().replace(/^"use strict";/, '').replace(/^var /, 'const ');
    if (code.includes('\n')) throw new Error(`${file}: a text runs over several lines, which the theme would strip.`);
    const notes = Object.entries(packages).map(([name, licence]) => {
      const { version } = JSON.parse(ofPackage(name, 'package.json'));
      const text = ofPackage(name, licence).trim();
      made.set(`licences/${name.replace('@', '').replace('/', '-')}.txt`, `${name} ${version}\n\n${text}\n`);
      return `${name} ${version}\n\n${text}`;
    });
    made.set(`${file}.js`, `/*!\n${notes.join('\n\n')}\n*/\n${code}\n`);
  }
  return made;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const check = process.argv.includes('--check');
  for (const [name, text] of await vendored()) {
    const path = join(HOME, name);
    const same = existsSync(path) && readFileSync(path, 'utf8') === text;
    if (check && !same) {
      console.log(`${name} is not what the packages make of it; run: node tools/vendor_scripts.mjs`);
      process.exitCode = 1;
    } else if (!same) {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, text);
      console.log(`${name}: ${text.length} bytes`);
    }
  }
}
