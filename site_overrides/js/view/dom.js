/** Making and finding elements. Text always goes in as text, never as markup. */
const Dom = (() => {
  "use strict";

  /** @typedef {string | Node | null | undefined | false} Child */

  /**
   * @template {keyof HTMLElementTagNameMap} T
   * @param {T} tag
   * @param {Record<string, string | boolean | ((event: any) => void)>} [attributes] a function listens to the event of that name
   * @param {...Child} children
   * @returns {HTMLElementTagNameMap[T]}
   */
  function make(tag, attributes = {}, ...children) {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
      if (typeof value === "function") element.addEventListener(name, value);
      else if (value === true) element.setAttribute(name, "");
      else if (value !== false) element.setAttribute(name, value);
    }
    element.append(.../** @type {(string | Node)[]} */ (children.filter(Boolean)));
    return element;
  }

  /**
   * The first match. Throws where the page lacks it, since every caller needs it.
   * @template {Element} [E=HTMLElement]
   * @param {ParentNode} within
   * @param {string} selector
   * @returns {E}
   */
  function one(within, selector) {
    const found = within.querySelector(selector);
    if (!found) throw new Error(`The page has no ${selector}.`);
    return /** @type {E} */ (found);
  }

  /**
   * @template {Element} [E=HTMLElement]
   * @param {ParentNode} within
   * @param {string} selector
   * @returns {E[]}
   */
  function all(within, selector) {
    return /** @type {E[]} */ ([...within.querySelectorAll(selector)]);
  }

  /** @param {HTMLElement} element */
  function focus(element) {
    if (!element.hasAttribute("tabindex") && !element.matches("a[href], button, input, select, textarea, summary")) {
      element.setAttribute("tabindex", "-1");
    }
    element.focus({ preventScroll: true });
    element.scrollIntoView({ block: "nearest" });
  }

  /**
   * A button that submits nothing.
   * @param {string} words
   * @param {(event: MouseEvent) => void} click
   * @param {"first" | "second" | "quiet"} [rank] how much it wants to be pressed
   */
  function button(words, click, rank = "second") {
    return make("button", { type: "button", class: rank === "first" ? "button" : `button button-${rank}`, click }, words);
  }

  /**
   * Copies of what stands inside an element of the page: formatting kept, ids dropped.
   * @param {Element | null} element
   * @returns {DocumentFragment}
   */
  function contents(element) {
    const fragment = document.createDocumentFragment();
    if (!element) return fragment;
    for (const node of element.childNodes) fragment.append(node.cloneNode(true));
    for (const marked of fragment.querySelectorAll("[id]")) marked.removeAttribute("id");
    return fragment;
  }

  /** What an element says, in one line. @param {Element} element */
  function text(element) {
    return (element.textContent || "").replace(/\s+/g, " ").trim();
  }

  return { make, one, all, focus, button, contents, text };
})();
