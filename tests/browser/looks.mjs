// What a look at a page finds: what reaches beyond the screen or is cut off, and what is too small for a glove.

/** @typedef {import("puppeteer-core").Page} Page */

/** What only contrast can fail. */
export const COLOURS = ["color-contrast", "link-in-text-block"];

/** @param {Page} page */
export const dark = (page) => page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "dark" }]);

/** What reaches beyond the side of the screen or is cut off by its box. @param {Page} page @returns {Promise<string[]>} */
export function sticksOut(page) {
  return page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > innerWidth ? [`the page is ${document.documentElement.scrollWidth} wide`] : [];
    const isUnseen = (/** @type {Element | null} */ each) => {
      for (let outer = each; outer; outer = outer.parentElement) if (getComputedStyle(outer).clipPath === "inset(50%)") return true;
      return false;
    };
    const cut = [];
    for (const each of document.querySelectorAll("body *")) {
      if (!(each instanceof HTMLElement) || !each.checkVisibility() || each.closest(".skip, svg")) continue;
      // What is said to a screen reader only is cut off on purpose.
      if (isUnseen(each)) continue;
      const holdsText = [...each.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? "").trim() !== "");
      if (!holdsText) continue;
      const box = each.getBoundingClientRect();
      let scrolls = false;
      for (let outer = each.parentElement; outer; outer = outer.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(outer);
        if (/auto|scroll/.test(overflowX) && outer !== document.body) scrolls = true;
        const edge = outer.getBoundingClientRect();
        const hides = /hidden|clip/.test(overflowX + overflowY);
        if (hides && !scrolls && (box.right > edge.right + 1 || box.left < edge.left - 1 || box.bottom > edge.bottom + 1)) cut.push(each.outerHTML.slice(0, 100));
      }
      const { overflowX } = getComputedStyle(each);
      if (/hidden|clip/.test(overflowX) && each.scrollWidth > each.clientWidth + 1) cut.push(each.outerHTML.slice(0, 100));
      if (!scrolls && (box.right > innerWidth + 1 || box.left < -1)) cut.push(each.outerHTML.slice(0, 100));
    }
    return [...wide, ...cut];
  });
}

/** The targets that are too small. @param {Page} page @returns {Promise<string[]>} */
export function small(page) {
  return page.evaluate(() => {
    const found = [];
    for (const each of document.querySelectorAll("a[href], button, summary, input, select, textarea")) {
      if (!each.checkVisibility({ visibilityProperty: true }) || each.closest(".skip")) continue;
      // A link within a line of text is as high as the line (WCAG 2.2, 2.5.8, inline).
      if (each.matches("a") && getComputedStyle(each).display === "inline") continue;
      // A title may be laid over its whole row.
      const isLaidOver = getComputedStyle(each, "::after").position === "absolute";
      const target = isLaidOver && each instanceof HTMLElement ? each.offsetParent ?? each : each.closest("label") ?? each;
      const box = target.getBoundingClientRect();
      const least = each.closest(".option") ? 56 : 44;
      if (box.height < least - 0.5 || box.width < 43.5) found.push(`${Math.round(box.width)} x ${Math.round(box.height)}: ${target.outerHTML.slice(0, 120)}`);
    }
    return found;
  });
}
