/**
 * Sets up the questions of a page one after the other, a slice each, and at once the one that somebody wants to answer.
 *
 * Until then a question is the plain form of the page. What is chosen in it before its turn stays chosen, its options stay where
 * the hand found them, and the focus stays where it was. Nothing is set up between the moment a finger comes down and the click
 * that follows, because what is added could push the option away from under it.
 */
const QuestionsLater = (() => {
  "use strict";

  /** So many milliseconds after a finger is lifted no click comes any more. */
  const NO_CLICK = 500;

  /** @typedef {(held: boolean) => void} SetUp `held`: somebody has begun to answer */
  /** @type {Map<Element, SetUp>} */
  const waiting = new Map();
  /** The question under the finger. @type {Element | null} */
  let pressed = null;
  let timer = 0;
  let listens = false;

  /** @param {Element} section @param {SetUp} setUp must not throw */
  function add(section, setUp) {
    waiting.set(section, setUp);
    listen();
    if (section.contains(document.activeElement)) now(section);
    else Slices.add(() => inTurn(section));
  }

  /** @param {Element} section */
  function inTurn(section) {
    if (section !== pressed) finish(section, false);
  }

  /** @param {Element | null} section one in which somebody is at work */
  function now(section) {
    const focus = document.activeElement;
    finish(section, true);
    // Moving an element in the page takes the focus from it.
    if (focus instanceof HTMLElement && focus !== document.activeElement && section?.contains(focus)) focus.focus({ preventScroll: true });
  }

  /** @param {Element | null} section @param {boolean} held */
  function finish(section, held) {
    const setUp = section && waiting.get(section);
    if (!setUp) return;
    waiting.delete(section);
    setUp(held);
  }

  function listen() {
    if (listens) return;
    listens = true;
    /** @param {Event} event */
    const sectionOf = (event) => event.target instanceof Element ? event.target.closest(".question") : null;
    /** @param {string} type @param {(event: Event) => void} hear */
    const on = (type, hear) => document.addEventListener(type, (event) => { if (waiting.size > 0) hear(event); }, { capture: true, passive: true });
    on("pointerdown", (event) => {
      clearTimeout(timer);
      pressed = sectionOf(event);
    });
    on("pointerup", () => {
      clearTimeout(timer);
      timer = setTimeout(lifted, NO_CLICK);
    });
    on("pointercancel", lifted);
    on("focusin", (event) => { if (sectionOf(event) !== pressed) now(sectionOf(event)); });
    for (const type of ["input", "change", "submit"]) on(type, (event) => now(sectionOf(event)));
  }

  function lifted() {
    const section = pressed;
    pressed = null;
    now(section);
  }

  return { add };
})();
