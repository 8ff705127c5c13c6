/**
 * Finding words in the course: every word of the query must begin some word of the title or the text.
 * @typedef {[title: string, kind: string, address: string, text: string]} SearchEntry
 * @typedef {{entry: SearchEntry, title: string, text: string}} SearchFolded title and text folded, of unchanged length
 * @typedef {{entry: SearchEntry, score: number, start: number}} SearchHit `start` is where the first word stands in the text, or -1
 * @typedef {{text: string, hit: boolean}} SearchPiece
 */
const SearchMatch = (() => {
  const LETTER = /[\p{L}\p{M}\p{N}]/u;
  /** A letter and accents on it, and not the parts of a Korean syllable, which are letters themselves. */
  const ACCENTED = /^.\p{M}+$/u;
  const SNIPPET = 170;
  /** A word that comes again and again says little more than one that comes a few times. */
  const OCCURRENCES = 5;

  /** Lower case without accents, unit by unit, so that places in the folded text are places in the text. @param {string} text */
  function fold(text) {
    let folded = "";
    for (let at = 0; at < text.length; at += 1) {
      const unit = text.charAt(at);
      folded += unit < "\u0080" ? unit.toLowerCase() : withoutAccents(unit).toLowerCase().charAt(0);
    }
    return folded;
  }

  /** @param {string} unit */
  function withoutAccents(unit) {
    const parts = unit.normalize("NFD");
    return ACCENTED.test(parts) ? parts.charAt(0) : unit;
  }

  /** @param {string} query @returns {string[]} */
  function terms(query) {
    return [...new Set(fold(query.normalize("NFC")).split(/[^\p{L}\p{M}\p{N}]+/u).filter(Boolean))];
  }

  /** Texts are composed first (NFC), so that a letter has one spelling. @param {SearchEntry[]} entries @returns {SearchFolded[]} */
  function prepare(entries) {
    return entries.map(([title, kind, address, text]) => {
      const entry = /** @type {SearchEntry} */ ([title.normalize("NFC"), kind, address, text.normalize("NFC")]);
      return { entry, title: fold(entry[0]), text: fold(entry[3]) };
    });
  }

  /** Where words that begin with the term start. @param {string} folded @param {string} term @param {number} most */
  function starts(folded, term, most) {
    /** @type {number[]} */
    const found = [];
    for (let at = folded.indexOf(term); at >= 0 && found.length < most; at = folded.indexOf(term, at + 1)) {
      if (at === 0 || !LETTER.test(folded.charAt(at - 1))) found.push(at);
    }
    return found;
  }

  /** @param {string} folded @param {number} at @param {string} term */
  function isWhole(folded, at, term) {
    const next = folded.charAt(at + term.length);
    return next === "" || !LETTER.test(next);
  }

  /**
   * The best first; equal ones in the order of the course.
   * @param {SearchFolded[]} prepared
   * @param {string} query
   * @param {number} most
   * @returns {SearchHit[]}
   */
  function find(prepared, query, most) {
    const wanted = terms(query);
    if (wanted.length === 0) return [];
    /** @type {SearchHit[]} */
    const hits = [];
    for (const { entry, title, text } of prepared) {
      let score = title === wanted.join(" ") ? 40 : 0;
      let start = -1;
      const all = wanted.every((term) => {
        const inTitle = starts(title, term, 1);
        const inText = starts(text, term, OCCURRENCES);
        for (const at of inTitle) score += isWhole(title, at, term) ? 16 : 10;
        for (const at of inText) score += isWhole(text, at, term) ? 2 : 1;
        const first = inText[0];
        if (first !== undefined && (start < 0 || first < start)) start = first;
        return inTitle.length + inText.length > 0;
      });
      if (all) hits.push({ entry, score, start });
    }
    return hits.sort((one, other) => other.score - one.score).slice(0, most);
  }

  /** A text cut into pieces that match and pieces that do not. @param {string} text @param {string} query @returns {SearchPiece[]} */
  function pieces(text, query) {
    const folded = fold(text);
    const wanted = terms(query);
    const spans = wanted
      .flatMap((term) => starts(folded, term, Infinity).map((at) => /** @type {[number, number]} */ ([at, at + term.length])))
      .sort((one, other) => one[0] - other[0] || other[1] - one[1]);
    /** @type {SearchPiece[]} */
    const cut = [];
    let from = 0;
    for (const [begin, end] of spans) {
      if (begin < from) continue;
      if (begin > from) cut.push({ text: text.slice(from, begin), hit: false });
      cut.push({ text: text.slice(begin, end), hit: true });
      from = end;
    }
    if (from < text.length) cut.push({ text: text.slice(from), hit: false });
    return cut;
  }

  /** About two lines round the first word found, cut between words. @param {SearchHit} hit */
  function snippet({ entry, start }) {
    const text = entry[3];
    if (text.length <= SNIPPET) return text;
    let from = Math.max(0, start - 50);
    if (from > 0) from = text.indexOf(" ", from) + 1 || from;
    let to = Math.min(text.length, from + SNIPPET);
    if (to < text.length) to = Math.max(text.lastIndexOf(" ", to), from + 1);
    return `${from > 0 ? "… " : ""}${text.slice(from, to)}${to < text.length ? " …" : ""}`;
  }

  return { prepare, find, pieces, snippet };
})();
