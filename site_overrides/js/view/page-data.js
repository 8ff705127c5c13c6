/** The data that stand beside a leaf in the page, for both editions. */
const PageData = (() => {
  "use strict";

  /** @type {Map<string, any>} */
  const read = new Map();

  /** The leaf an element stands in. @param {Element} element @returns {HTMLElement | null} */
  function leaf(element) {
    return element.closest("[data-leaf]");
  }

  /** Data of the leaf that holds the element; empty where it has none. @param {Element} element @returns {any} */
  function of(element) {
    return named(leaf(element)?.dataset.leaf || "");
  }

  /** Data of a leaf by its slug, for what is not in the page yet. @param {string} slug @returns {any} */
  function named(slug) {
    if (!read.has(slug)) {
      const script = document.querySelector(`script[type="application/json"][data-for="${slug}"]`);
      read.set(slug, script ? JSON.parse(script.textContent || "{}") : {});
    }
    return read.get(slug);
  }

  return { of, named, leaf };
})();
