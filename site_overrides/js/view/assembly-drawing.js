/** The exploded drawing of an assembly: a part moves to its place, its name and the line it came along go. */
const AssemblyDrawing = (() => {
  "use strict";

  /** How long a part is on its way, in milliseconds. */
  const ON_ITS_WAY = 450;

  /**
   * @param {HTMLElement} place
   * @param {{moves: Record<string, number[]>, ways: Record<string, string[]>}} data
   * @param {(step: string) => void} tapped
   */
  function mount(place, { moves, ways }, tapped) {
    /** @type {Map<string, SVGGElement>} */
    const parts = new Map(all("part").map((part) => [part.dataset.part || "", part]));
    const still = matchMedia("(prefers-reduced-motion: reduce)");
    /** @type {Set<string>} */
    let there = new Set();

    // What has no place to go to and nothing to tick stands there from the beginning.
    for (const [step, part] of parts) part.classList.toggle("stands", !(step in moves) && !place.querySelector(`[data-tick="${step}"]`));
    place.addEventListener("click", (event) => {
      const part = /** @type {Element} */ (event.target).closest("[data-part]");
      const step = part instanceof SVGElement ? part.dataset.part || "" : "";
      if (step && !there.has(step)) tapped(step);
    });

    /** @param {string} kind @returns {SVGGElement[]} */
    function all(kind) {
      return Dom.all(place, `[data-${kind}]`);
    }

    /** @param {readonly string[]} done what has been done, parts and deeds alike */
    function show(done) {
      const now = new Set(done);
      for (const [step, part] of parts) {
        const isThere = now.has(step);
        if (isThere === there.has(step)) continue;
        part.classList.toggle("in-place", isThere);
        const [x, y] = moves[step] ?? [0, 0];
        if (isThere) part.setAttribute("transform", `translate(${x} ${y})`);
        else part.removeAttribute("transform");
        if ((x || y) && !still.matches) {
          const [apart, home] = ["translate(0, 0)", `translate(${x}px, ${y}px)`];
          part.animate([{ transform: isThere ? apart : home }, { transform: isThere ? home : apart }], { duration: ON_ITS_WAY, easing: "ease-in-out" });
        }
      }
      for (const tick of all("tick")) tick.classList.toggle("is-done", now.has(tick.dataset.tick || ""));
      for (const way of all("way")) way.classList.toggle("is-over", (ways[way.dataset.way || ""] ?? []).every((part) => now.has(part)));
      there = now;
    }

    /** The part that was refused, until another is. @param {string} step empty for none */
    function refuse(step) {
      for (const [id, part] of parts) part.classList.toggle("refused", id === step);
    }

    return { show, refuse };
  }

  return { mount };
})();
