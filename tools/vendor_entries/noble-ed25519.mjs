// Signatures are judged as RFC 8032 and FIPS 186-5 ask: the looser rule of ZIP 215 would accept a signature that others refuse.
import { hashes, verify as check } from '@noble/ed25519';
import { sha512 } from '@noble/hashes/sha2.js';

hashes.sha512 = sha512;

/** Whether `signature` (64 bytes) is that of `message` by `publicKey` (32 bytes); false for whatever is neither. */
export function verify(signature, message, publicKey) {
  try {
    return check(signature, message, publicKey, { zip215: false });
  } catch {
    return false;
  }
}
