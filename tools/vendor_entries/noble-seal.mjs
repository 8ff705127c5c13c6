// What opens a sealed sitting where the browser keeps its own cryptography back (a page over plain http).
import { gcm } from '@noble/ciphers/aes.js';
import { hmac } from '@noble/hashes/hmac.js';
import { pbkdf2, pbkdf2Async } from '@noble/hashes/pbkdf2.js';
import { sha256 } from '@noble/hashes/sha2.js';

export { sha256 };

/** HMAC-SHA256 of bytes. */
export const hmacSha256 = (key, message) => hmac(sha256, key, message);

/** PBKDF2-HMAC-SHA256 of bytes: `length` bytes of key. */
export const pbkdf2Sha256 = (password, salt, iterations, length = 32) =>
  pbkdf2(sha256, password, salt, { c: iterations, dkLen: length });

/** The same in slices, so that the page stays alive: a promise. */
export const pbkdf2Sha256Later = (password, salt, iterations, length = 32) =>
  pbkdf2Async(sha256, password, salt, { c: iterations, dkLen: length, asyncTick: 40 });

/** Opens AES-GCM: `data` ends in its 16 bytes of tag; throws where it was changed or the key is another. */
export const gcmOpen = (key, iv, data, additional) => gcm(key, iv, additional).decrypt(data);

/** Closes AES-GCM: the data with its tag. */
export const gcmSeal = (key, iv, plain, additional) => gcm(key, iv, additional).encrypt(plain);
