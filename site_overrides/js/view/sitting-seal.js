/**
 * Opens what is sealed in the page; twin of builder/sittings/sealed_blob.py. The browser's own cryptography is used where there
 * is some; at a plain http address there is none, and the library in the page does the same, slower.
 */
const SittingSeal = (() => {
  "use strict";

  const FORMAT = "journeybook sealed 1";
  const ITERATIONS = 600_000;
  const CONTENT_CAP = 64 * 1024 * 1024;

  /** A wrong passphrase, or a changed file: the cipher cannot tell which. */
  class NotOpened extends Error {}

  /** @param {any} record */
  function isSealed(record) {
    return record?.format === FORMAT && record.kdf?.name === "PBKDF2-SHA256" && record.kdf.iterations === ITERATIONS
      && record.cipher === "AES-256-GCM" && typeof record.data === "string";
  }

  /**
   * @param {any} record what stands in the page
   * @param {string} form the passphrase as it enters the key
   * @param {SubtleCrypto | undefined} subtle
   * @returns {Promise<any>} the content
   */
  async function open(record, form, subtle) {
    if (!isSealed(record)) throw new NotOpened();
    const { data, ...head } = record;
    const passphrase = Sha256.utf8(form);
    let packed;
    try {
      const salt = bytes(record.kdf.salt);
      const iv = bytes(record.iv);
      const beside = Sha256.utf8(Canonical.write(head));
      packed = subtle
        ? await byBrowser(subtle, passphrase, salt, iv, beside, bytes(data))
        : await byLibrary(passphrase, salt, iv, beside, bytes(data));
    } catch {
      throw new NotOpened();
    }
    const plain = Fflate.gunzipSync(packed);
    if (plain.length > CONTENT_CAP) throw new NotOpened();
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(plain));
  }

  /** @param {SubtleCrypto} subtle @param {Uint8Array} passphrase @param {Uint8Array} salt @param {Uint8Array} iv @param {Uint8Array} beside @param {Uint8Array} data */
  async function byBrowser(subtle, passphrase, salt, iv, beside, data) {
    const typed = await subtle.importKey("raw", /** @type {any} */ (passphrase), "PBKDF2", false, ["deriveKey"]);
    const key = await subtle.deriveKey({ name: "PBKDF2", hash: "SHA-256", salt: /** @type {any} */ (salt), iterations: ITERATIONS },
      typed, { name: "AES-GCM", length: 256 }, false, ["decrypt"]);
    return new Uint8Array(await subtle.decrypt({ name: "AES-GCM", iv: /** @type {any} */ (iv), additionalData: /** @type {any} */ (beside) }, key, /** @type {any} */ (data)));
  }

  /** @param {Uint8Array} passphrase @param {Uint8Array} salt @param {Uint8Array} iv @param {Uint8Array} beside @param {Uint8Array} data */
  async function byLibrary(passphrase, salt, iv, beside, data) {
    return NobleSeal.gcmOpen(await NobleSeal.pbkdf2Sha256Later(passphrase, salt, ITERATIONS), iv, data, beside);
  }

  /** The bytes of base64 for addresses. @param {string} text */
  function bytes(text) {
    const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    return Uint8Array.from(binary, (sign) => sign.charCodeAt(0));
  }

  return { NotOpened, open, byBrowser, byLibrary };
})();
