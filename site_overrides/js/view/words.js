/** The words of the interface. English stands in the scripts; a table replaces it in other languages. */
const Words = (() => {
  "use strict";

  /** @type {Record<string, string>} */
  let table = {};

  /** @param {Record<string, string>} words English text to the reader's language */
  function set(words) {
    table = words;
  }

  /**
   * The text in the reader's language, with `{name}` replaced from `values`.
   * @param {string} english
   * @param {Record<string, string | number>} [values]
   */
  function say(english, values = {}) {
    return (table[english] || english).replace(/\{([a-z]+)\}/g, (whole, name) =>
      name in values ? String(values[name]) : whole);
  }

  return { set, say };
})();
