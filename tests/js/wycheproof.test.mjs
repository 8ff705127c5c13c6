// The sets of C2SP/wycheproof (tests/vectors/published/wycheproof, README there) through the shipped scripts and through WebCrypto.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { scripts } from './load-proof.mjs';

const { Base58, DataIntegrity, NobleEd25519, NobleSeal } = scripts;
const read = (/** @type {string} */ name) => JSON.parse(readFileSync(new URL(`../vectors/published/wycheproof/${name}`, import.meta.url), 'utf8'));
const hex = (/** @type {string} */ text) => new Uint8Array(Buffer.from(text, 'hex'));
const hexOf = (/** @type {ArrayBuffer | Uint8Array} */ bytes) => Buffer.from(/** @type {any} */ (bytes)).toString('hex');
const { subtle } = crypto;

/** WebCrypto as the page uses it. @param {Uint8Array} signature @param {Uint8Array} message @param {Uint8Array} key */
async function webCrypto(signature, message, key) {
  try {
    const known = await subtle.importKey('raw', new Uint8Array(key), 'Ed25519', false, ['verify']);
    return await subtle.verify('Ed25519', known, new Uint8Array(signature), new Uint8Array(message));
  } catch {
    return false;
  }
}

/** The key as a did names it, or null where it is one that anybody can sign with. @param {string} pk */
function keyOf(pk) {
  try {
    return DataIntegrity.keyOf(`did:key:z${Base58.encode(Buffer.concat([Buffer.from([0xed, 1]), hex(pk)]))}`);
  } catch (error) {
    if (error instanceof DataIntegrity.NotGenuine) return null;
    throw error;
  }
}

/** @type {[string, (signature: Uint8Array, message: Uint8Array, key: Uint8Array) => any][]} */
const WAYS = [['the shipped script', NobleEd25519.verify], ['WebCrypto', webCrypto]];

for (const [way, signed] of WAYS) {
  test(`signatures are taken or refused as Wycheproof says, and no weak key is taken, by ${way}`, async () => {
    /** @type {Record<string, number>} */
    const seen = {};
    for (const { publicKey, tests } of read('ed25519_test.json').testGroups) {
      const key = keyOf(publicKey.pk);
      for (const { tcId, flags, msg, sig, result } of tests) {
        const found = key !== null && await signed(hex(sig), hex(msg), key);
        if (result !== 'acceptable') assert.equal(found, result === 'valid', `${tcId}`);
        if (flags.includes('SmallOrderPublicKey')) assert.equal(found, false, `${tcId}`);
        seen[result] = (seen[result] ?? 0) + 1;
      }
    }
    assert.deepEqual(seen, { valid: 117, invalid: 64, acceptable: 29 });
  });
}

test('sealed data open or not as Wycheproof says, by the shipped script and by WebCrypto', async () => {
  const seen = { valid: 0, invalid: 0 };
  for (const { keySize, ivSize, tagSize, tests } of read('aes_gcm_test.json').testGroups) {
    // As we seal.
    if (keySize !== 256 || ivSize !== 96 || tagSize !== 128) continue;
    for (const { tcId, key, iv, aad, msg, ct, tag, result } of tests) {
      const data = hex(ct + tag);
      const known = await subtle.importKey('raw', hex(key), 'AES-GCM', false, ['decrypt']);
      const byBrowser = () => subtle.decrypt({ name: 'AES-GCM', iv: hex(iv), additionalData: hex(aad) }, known, data);
      if (result === 'valid') {
        assert.equal(hexOf(NobleSeal.gcmOpen(hex(key), hex(iv), data, hex(aad))), msg, `${tcId}`);
        assert.equal(hexOf(NobleSeal.gcmSeal(hex(key), hex(iv), hex(msg), hex(aad))), ct + tag, `${tcId}`);
        assert.equal(hexOf(await byBrowser()), msg, `${tcId}`);
      } else {
        assert.throws(() => NobleSeal.gcmOpen(hex(key), hex(iv), data, hex(aad)), /tag/u, `${tcId}`);
        await assert.rejects(byBrowser(), { name: 'OperationError' }, `${tcId}`);
      }
      seen[/** @type {'valid' | 'invalid'} */ (result)] += 1;
    }
  }
  assert.deepEqual(seen, { valid: 39, invalid: 27 });
});

test('keys out of passwords are those of Wycheproof and RFC 7914, by the shipped script, at once and later, and by WebCrypto', async () => {
  const { tests } = read('pbkdf2_hmacsha256_subset.json');
  assert.equal(tests.length, 27);
  for (const { tcId, password, salt, iterationCount, dkLen, dk } of tests) {
    assert.equal(hexOf(NobleSeal.pbkdf2Sha256(hex(password), hex(salt), iterationCount, dkLen)), dk, `${tcId}`);
    assert.equal(hexOf(await NobleSeal.pbkdf2Sha256Later(hex(password), hex(salt), iterationCount, dkLen)), dk, `${tcId} later`);
    const typed = await subtle.importKey('raw', hex(password), 'PBKDF2', false, ['deriveBits']);
    const bits = await subtle.deriveBits({ name: 'PBKDF2', hash: 'SHA-256', salt: hex(salt), iterations: iterationCount }, typed, 8 * dkLen);
    assert.equal(hexOf(bits), dk, `${tcId} by WebCrypto`);
  }
});
