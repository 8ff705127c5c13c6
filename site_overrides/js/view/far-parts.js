/**
 * Lays out what `css/far.css` put off, a part at a time, as soon as the first screen is there: from then on nothing on the page
 * changes its place any more, whether somebody scrolls, searches, prints or follows a link into the middle.
 */
const FarParts = (() => {
  "use strict";

  /** The same as in css/far.css; a browser test holds them together. */
  const PARTS = ".practice > .question, .card-lower, .lesson-sources, .foot, .check-about, .term, .plate";

  /** Those of a leaf; of what stands around the leaves where none is named. @param {Element} [leaf] */
  function layOut(leaf) {
    const parts = Dom.all(leaf ?? document, PARTS).filter((part) => leaf || !part.closest("[data-leaf]"));
    Slices.add(...parts.map((part) => () => {
      part.classList.add("laid-out");
      // Asked for its height, the part is laid out within this slice and not together with all the others.
      part.getBoundingClientRect();
    }));
  }

  return { layOut };
})();
