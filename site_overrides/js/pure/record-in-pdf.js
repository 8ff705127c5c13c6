/**
 * The certificate that is attached to its PDF, found without reading the PDF as one: every stream is opened, and the one that is a
 * certificate is taken. Twin of builder/proof/record_in_pdf.py.
 */
const RecordInPdf = (() => {
  'use strict';

  const PDF_CAP = 20 << 20;
  const STREAMS_CAP = 2000;
  const WORDS_CAP = 2 * STREAMS_CAP;
  const RECORD_CAP = 16_384;
  /** Bytes of a stream that are opened: deflating makes nothing twice as long. */
  const WINDOW = 2 * RECORD_CAP;
  const HEAD = finder('%PDF-');
  const WORD = finder('stream');
  const END = finder('endstream');
  /** Of a certificate in its one form (RFC 8785): no member sorts before this. */
  const BEGIN = finder('{"@context":');
  const MARK = finder('"eddsa-jcs-2022"');

  /** @param {Uint8Array} bytes */
  function isPdf(bytes) {
    return HEAD(bytes, 0, 1024) >= 0;
  }

  /**
   * Finds where a word of ASCII begins; -1 where it does not. By R. N. Horspool's way (Software: Practice and Experience 10, 1980): the byte
   * under the word's end says how far the word may move on, so that few bytes are looked at, whatever the file holds.
   * @param {string} word
   * @returns {(bytes: Uint8Array, from: number, to?: number) => number}
   */
  function finder(word) {
    const codes = Array.from(word, (letter) => letter.charCodeAt(0));
    const last = codes.length - 1;
    const step = new Uint8Array(256).fill(codes.length);
    for (let index = 0; index < last; index += 1) step[codes[index]] = last - index;
    return (bytes, from, to = bytes.length) => {
      const until = Math.min(to, bytes.length);
      for (let end = from + last; end < until; end += step[bytes[end]]) {
        let back = 0;
        while (back <= last && bytes[end - back] === codes[last - back]) back += 1;
        if (back > last) return end - last;
      }
      return -1;
    };
  }

  /** Where the word `stream` stands with a line's end behind it (ISO 32000-2, 7.3.8.1), from there on. @param {Uint8Array} bytes @param {number} from */
  function wordFrom(bytes, from) {
    let word = WORD(bytes, from);
    while (word >= 0 && bytes[word + 6] !== 10 && bytes[word + 6] !== 13) word = WORD(bytes, word + 6);
    return word;
  }

  /** @param {Uint8Array} bytes @param {number} word */
  const endsOne = (bytes, word) => bytes[word - 3] === 0x65 && bytes[word - 2] === 0x6e && bytes[word - 1] === 0x64;

  /**
   * The bytes of the one record in a PDF; null where there is none, or more than one that differ.
   * @param {Uint8Array} bytes
   * @returns {Uint8Array | null}
   */
  function find(bytes) {
    if (bytes.length > PDF_CAP || !isPdf(bytes)) return null;
    /** @type {Uint8Array | null} */
    let found = null;
    let [from, streams, end] = [0, 0, -1];
    for (let words = 0; words < WORDS_CAP && streams < STREAMS_CAP; words += 1) {
      const word = wordFrom(bytes, from);
      if (word < 0) break;
      from = word + 'stream'.length + 1;
      const start = from + Number(bytes[from - 1] === 13 && bytes[from] === 10);
      if (endsOne(bytes, word)) continue;
      if (end < start) end = END(bytes, start);
      if (end < 0) break;
      streams += 1;
      const record = opened(bytes.subarray(start, Math.min(end, start + WINDOW)));
      // Perhaps the word stood in a text, and the stream begins further on.
      if (!record) continue;
      from = end + 'endstream'.length;
      if (!begins(record) || MARK(record, 0) < 0) continue;
      if (found && !same(found, record)) return null;
      found = record;
    }
    return found;
  }

  /** @param {Uint8Array} stream */
  const begins = (stream) => BEGIN(stream, 0, 12) === 0;

  /** A stream as it stands or inflated (zlib, RFC 1950); null where it is neither or too large. @param {Uint8Array} stream */
  function opened(stream) {
    if (begins(stream)) {
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
