/**
 * Published values that only the scripts need, because Python's own library is trusted for them.
 */
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { it } from 'node:test';
import { loadPure } from './load.mjs';

const { Attempt, Result, Sha256, Stream } = loadPure();

// FIPS 180-2 appendix B and the NIST example values for SHA-256 (csrc.nist.gov, "Examples with Intermediate Values").
const FIPS = [
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu',
    'cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1',
  ],
  ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
];
for (const [message = '', digest] of FIPS) {
  it(`SHA-256 of ${message.slice(0, 12)}… (${message.length} bytes)`, () => assert.equal(Sha256.hex(message), digest));
}

it('SHA-256 agrees with the machine around every padding boundary', () => {
  for (let length = 0; length <= 200; length += 1) {
    const bytes = Uint8Array.from({ length }, (_, at) => (at * 7 + length) & 255);
    assert.equal(Sha256.hex(bytes), createHash('sha256').update(bytes).digest('hex'));
  }
});

it('texts become the same UTF-8 bytes as the machine makes', () => {
  for (const text of ['', 'ASCII', 'é', 'ß€', '\u07ff\u0800\uffff', '😀 \u{10ffff}']) {
    assert.deepEqual(Array.from(Sha256.utf8(text)), Array.from(new TextEncoder().encode(text)));
  }
});

it('half of a surrogate pair has no bytes', () => {
  assert.throws(() => Sha256.utf8('\ud800'), { name: 'RangeError' });
  assert.throws(() => Sha256.utf8('a\udc00b'), { name: 'RangeError' });
});

it('a stream cannot start from zeros, and a bound must be possible', () => {
  assert.throws(() => new Stream.Run([0, 0, 0, 0]), { name: 'RangeError' });
  const run = new Stream.Run([1, 2, 3, 4]);
  for (const bound of [0, -1, 1.5, 2 ** 32 + 1, NaN]) assert.throws(() => run.below(bound), { name: 'RangeError' });
});

it('the fingerprint is RFC 4648 base32 of the first ten bytes of the digest', () => {
  // RFC 4648, 6 defines the alphabet; SHA-256("abc") starts ba7816bf8f01cfea4141.
  assert.equal(Attempt.fingerprint(Sha256.utf8('abc')), 'XJ4B-NP4P-AHH6-UQKB');
});

it('the cut is rounded up by integers: 7 % of 100 questions is 7 whole ones', () => {
  assert.equal(Result.leastPassing(7, 100_000), 7000);
  assert.equal(Result.leastPassing(55, 100_000), 55_000);
  assert.equal(Result.leastPassing(67, 1000), 670);
  assert.equal(Result.leastPassing(33, 1001), 331);
});
