/** Giving the learner a file, and taking one in. Nothing leaves the device. */
const Files = (() => {
  "use strict";

  /** @param {string} name @param {BlobPart} content @param {string} [type] */
  function save(name, content, type = "application/json") {
    const address = URL.createObjectURL(new Blob([content], { type }));
    const link = Dom.make("a", { href: address, download: name });
    document.body.append(link);
    link.click();
    link.remove();
    // Some browsers read the address only after the click has been worked off.
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  }

  /** A file name from words: letters and digits of any script, joined by hyphens. @param {...string} words */
  function name(...words) {
    return words.join(" ").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "").slice(0, 80);
  }

  return { save, name };
})();
