/**
 * The certificate that is attached to its PDF, found without reading the PDF as one: every stream is opened, and the one that is a
 * certificate is taken. Twin of builder/proof/record_in_pdf.py.
 */
const RecordInPdf = (() => {
  'use strict';

  const PDF_CAP = 20 << 20;
  const STREAMS_CAP = 2000;
  const RECORD_CAP = 16_384;
  const MARK = '"eddsa-jcs-2022"';

  /** @param {Uint8Array} bytes */
  function isPdf(bytes) {
    return at(bytes, '%PDF-', 0, 1024) >= 0;
  }

  /**
   * Where a word of ASCII begins, or -1. By R. N. Horspool's way (Software: Practice and Experience 10, 1980): the byte under the word's end
   * says how far the word may move on, so that few bytes are looked at, whatever the file holds.
   * @param {Uint8Array} bytes @param {string} word @param {number} from @param {number} to
   */
  function at(bytes, word, from, to = bytes.length) {
    const codes = Array.from(word, (letter) => letter.charCodeAt(0));
    const last = codes.length - 1;
    const step = new Uint8Array(256).fill(codes.length);
    for (let index = 0; index < last; index += 1) step[codes[index]] = last - index;
    const until = Math.min(to, bytes.length);
    for (let end = from + last; end < until; end += step[bytes[end]]) {
      let back = 0;
      while (back <= last && bytes[end - back] === codes[last - back]) back += 1;
      if (back > last) return end - last;
    }
    return -1;
  }

  /**
   * The bytes of the one record in a PDF; null where there is none, or more than one that differ.
   * @param {Uint8Array} bytes
   * @returns {Uint8Array | null}
   */
  function find(bytes) {
    if (bytes.length > PDF_CAP || !isPdf(bytes)) return null;
    /** @type {Uint8Array | null} */
    let found = null;
    let from = 0;
    for (let count = 0; count < STREAMS_CAP; count += 1) {
      const word = at(bytes, 'stream', from);
      if (word < 0) break;
      let start = word + 'stream'.length;
      from = start;
      if (bytes[start] === 13) start += 1;
      if (bytes[start] === 10) start += 1;
      const end = at(bytes, 'endstream', start);
      if (end < 0) break;
      from = end + 'endstream'.length;
      const record = opened(bytes.subarray(start, end));
      if (!record || at(record, MARK, 0) < 0 || record[0] !== 0x7b) continue;
      if (found && !same(found, record)) return null;
      found = record;
    }
    return found;
  }

  /** A stream as it stands or inflated (zlib, RFC 1950); null where it is neither or too large. @param {Uint8Array} stream */
  function opened(stream) {
    if (stream[0] === 0x7b) {
      let end = Math.min(stream.length, RECORD_CAP + 2);
      while (end > 0 && (stream[end - 1] === 10 || stream[end - 1] === 13)) end -= 1;
      return end <= RECORD_CAP ? stream.slice(0, end) : null;
    }
    if ((stream[0] & 15) !== 8 || ((stream[0] << 8) | stream[1]) % 31 !== 0) return null;
    try {
      return Inflate.first(stream.subarray(2), RECORD_CAP);
    } catch {
      return null;
    }
  }

  /** @param {Uint8Array} one @param {Uint8Array} other */
  function same(one, other) {
    return one.length === other.length && one.every((byte, index) => byte === other[index]);
  }

  return Object.freeze({ isPdf, find });
})();
