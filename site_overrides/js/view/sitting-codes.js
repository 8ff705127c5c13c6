/** A record as codes on the screen, one after the other, large enough for the camera of a phone. */
const SittingCodes = (() => {
  "use strict";

  /** Modules of white round a code (ISO/IEC 18004). */
  const QUIET = 4;

  /**
   * A button, and the place where it shows a record as codes and hides them again; they are made when first asked for.
   * @param {Uint8Array} record @param {string} fingerprint
   */
  function onDemand(record, fingerprint) {
    const codes = Dom.make("div", { class: "sitting-codes", hidden: true });
    const show = Dom.button(Words.say("Show it as codes"), () => {
      if (codes.childElementCount === 0) codes.append(make(RecordCodes.texts(record, fingerprint, (plain) => Fflate.deflateSync(plain, { level: 9 }))));
      codes.hidden = !codes.hidden;
      show.setAttribute("aria-expanded", String(!codes.hidden));
      if (!codes.hidden) codes.scrollIntoView({ block: "nearest" });
    });
    show.setAttribute("aria-expanded", "false");
    return { show, codes };
  }

  /** @param {string[]} texts */
  function make(texts) {
    let at = 0;
    const picture = Dom.make("div", { class: "code-picture" });
    const place = Dom.make("p", { class: "code-place", role: "status" });
    const back = Dom.button(Words.say("Code before"), () => show(at - 1));
    const next = Dom.button(Words.say("Next code"), () => show(at + 1), "first");
    show(0);

    /** @param {number} index */
    function show(index) {
      at = Math.max(0, Math.min(index, texts.length - 1));
      picture.replaceChildren(drawn(QrCode.encode(texts[at], { ecc: "medium", encoding: "alphanumeric" })));
      place.textContent = Words.say("Code {number} of {total}", { number: at + 1, total: texts.length });
      back.disabled = at === 0;
      next.disabled = at === texts.length - 1;
    }

    return Dom.make("div", { class: "codes" }, picture, place,
      texts.length > 1 && Dom.make("div", { class: "buttons" }, back, next));
  }

  /** @param {boolean[][]} rows */
  function drawn(rows) {
    const size = rows.length + 2 * QUIET;
    const ns = "http://www.w3.org/2000/svg";
    const svg = document.createElementNS(ns, "svg");
    svg.setAttribute("viewBox", `0 0 ${size} ${size}`);
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", Words.say("A code for the camera"));
    svg.setAttribute("shape-rendering", "crispEdges");
    const path = document.createElementNS(ns, "path");
    path.setAttribute("d", rows.map((row, y) => row.map((dark, x) => dark ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : "").join("")).join(""));
    svg.append(path);
    return svg;
  }

  return { onDemand };
})();
