/** In the one-file edition, shows one leaf at a time: the one that the address names. What a leaf needs is set up when it opens. */
const OneFile = (() => {
  "use strict";

  /** What still has to be set up, by leaf. @type {Map<Element, (() => void)[]>} */
  const waiting = new Map();

  /** Before the leaves are read: those that stay shut are then never laid out. Without this script they all stand open. */
  function prepare() {
    document.documentElement.classList.add("with-script");
    document.documentElement.classList.toggle("at-front", location.hash.length < 2);
  }

  /**
   * Sets a thing up now, or in the one-file edition when its leaf is opened: a slow phone has no time for thirty leaves at once.
   * @param {Element} place @param {() => void} setUp
   */
  function whenOpen(place, setUp) {
    const leaf = place.closest("section.leaf");
    if (!leaf || leaf.classList.contains("is-open")) return setUp();
    waiting.set(leaf, [...waiting.get(leaf) ?? [], setUp]);
  }

  function mount() {
    if (!document.body.classList.contains("one-file")) return;
    const leaves = Dom.all(document, "section.leaf");
    if (leaves.length === 0) return;
    document.body.classList.add("leaf-by-leaf");
    addEventListener("hashchange", () => show(true));
    // A printed book has every leaf; the certificate prints by rules of its own.
    show(false);

    /** @param {boolean} move whether the reader asked for it, so that the focus follows */
    function show(move) {
      const name = decodeURIComponent(location.hash.slice(1));
      const target = name ? document.getElementById(name) : null;
      const inside = /** @type {HTMLElement | null} */ (target?.closest("section.leaf") ?? null);
      // The skip link and the like lead to places outside the leaves: nothing changes.
      if (target && !inside) return;
      const leaf = inside ?? leaves[0];
      for (const each of leaves) each.classList.toggle("is-open", each === leaf);
      document.body.classList.toggle("at-card", leaf.dataset.kind === "card");
      for (const setUp of waiting.get(leaf) ?? []) setUp();
      waiting.delete(leaf);
      const title = leaf.dataset.title || "";
      const course = document.body.dataset.courseTitle || "";
      document.title = leaf === leaves[0] || !title ? course : `${title} – ${course}`;
      for (const tab of Dom.all(document, ".tabs a")) {
        if (tab.getAttribute("href") === `#${leaf.id}`) tab.setAttribute("aria-current", "page");
        else tab.removeAttribute("aria-current");
      }
      if (!move) {
        // A place within a leaf could not be scrolled to while the leaf was shut.
        if (target && target !== leaf) target.scrollIntoView();
        return;
      }
      if (target && target !== leaf) {
        target.scrollIntoView();
        Dom.focus(target);
      } else {
        scrollTo(0, 0);
        Dom.focus(leaf.querySelector("h1") ?? leaf);
      }
    }
  }

  return { prepare, mount, whenOpen };
})();
