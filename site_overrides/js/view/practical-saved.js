/** Saving: what is still missing, and once it is saved the fingerprint for the paper and the ways in which the record leaves the device. */
const PracticalSaved = (() => {
  "use strict";

  /** The button, and what stands in its way. @param {{save: () => void, goTo: (name: string) => void}} host */
  function saving(host) {
    const missing = Dom.make("div", { class: "save-missing", role: "status" });
    const again = Dom.make("p", { class: "check-note" });
    const unmarked = Dom.make("p", { class: "save-unmarked" });
    const part = Dom.make("div", { class: "watch-save screen-only" }, again, unmarked,
      Dom.make("div", { class: "buttons" }, Dom.button(Words.say("Save the record"), host.save, "first")), missing);

    return {
      part,
      /** @param {string[]} names */
      ask(names) {
        missing.replaceChildren(...(names.length === 0 ? [] : [
          Dom.make("p", { class: "ask-again" }, Words.say("Before it can be saved:")),
          Dom.make("ul", {}, ...names.map((name) => Dom.make("li", {}, Dom.button(missingWords(name), () => host.goTo(name), "quiet"))))]));
      },
      /** @param {Sheet} sheet @param {PracticalFacts} facts @param {boolean} isLocked */
      show(sheet, facts, isLocked) {
        part.hidden = isLocked;
        const { marked, total } = ObservationSheet.count(sheet, facts);
        unmarked.textContent = marked === total ? "" : Words.say("A step without a mark is saved as “not seen”.");
        again.hidden = sheet.replaces === "";
        again.textContent = Words.say("The record {fingerprint} is saved, and stays what it is. What is saved now is another record with another fingerprint: on the paper strike the old one out, and write the new one.", { fingerprint: sheet.replaces });
      },
    };
  }

  /** @param {string} name */
  function missingWords(name) {
    switch (name) {
      case "name": return Words.say("Write who was watched.");
      case "day": return Words.say("Write the day.");
      case "assessor": return Words.say("Write who the assessor is.");
      default: return Words.say("Choose the result.");
    }
  }

  /**
   * @param {boolean} isDraft whether the course is not released
   * @param {{change: () => void, next: () => void, fileName: (record: ObservationRecord, fingerprint: string) => string}} host
   */
  function make(isDraft, host) {
    const part = Dom.make("section", { class: "practical-saved screen-only", hidden: true });
    let shown = "";

    /** @param {string} record @param {ObservationRecord} found @param {string[]} results the two words of the result */
    function fill(record, found, results) {
      const bytes = Sha256.utf8(record);
      const fingerprint = Attempt.fingerprint(bytes);
      const { show, codes } = SittingCodes.onDemand(bytes, fingerprint);
      part.replaceChildren(
        Dom.make("p", { class: "label" }, Words.say("Saved")),
        Dom.make("h2", { tabindex: "-1" }, `${found.person.name}: ${results[Observation.RESULTS.indexOf(found.result)]}`),
        Dom.make("p", { class: "fingerprint" }, ...fingerprint.split("-").map((group) => Dom.make("span", {}, group))),
        Dom.make("p", {}, Words.say("This is the record’s fingerprint. The assessor writes the four groups on the paper sheet or the class sheet, and signs beside them in ink. The ink vouches for the record; this device signs nothing.")),
        ...(isDraft ? [Dom.make("p", {}, Words.say("This course is a draft, not released: no certificate can be signed on this record."))] : []),
        Dom.make("p", {}, Words.say("The employer needs the file or the codes; either is enough.")),
        Dom.make("div", { class: "buttons" },
          Dom.button(Words.say("Save the file again"), () => Files.save(host.fileName(found, fingerprint), record), "second"),
          show,
          Dom.button(Words.say("Print the filled-in sheet"), () => window.print(), "second")),
        codes,
        Dom.make("div", { class: "saved-after" },
          Dom.button(Words.say("Next person"), host.next, "first"),
          Dom.make("p", {}, Words.say("A saved record is not changed. If something on the sheet is wrong, what you save next is another record, with another fingerprint.")),
          Dom.button(Words.say("Put something right"), host.change, "quiet")));
    }

    return {
      part,
      focus: () => Dom.focus(Dom.one(part, "h2")),
      /** @param {string | null} record @param {string[]} results */
      show(record, results) {
        part.hidden = record === null;
        const found = Observation.from(record);
        if (record === null || found === null || record === shown) return;
        shown = record;
        fill(record, found, results);
      },
    };
  }

  return { saving, make };
})();
