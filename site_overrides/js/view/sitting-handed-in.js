/** After handing in: the fingerprint for the class sheet, and the ways in which the record leaves the device. */
const SittingHandedIn = (() => {
  "use strict";

  /**
   * @param {{record: string, name: string, isKept: boolean, title: string}} handedIn
   * @param {{nextPerson: () => void, clear: () => void}} host
   */
  function make({ record, name, isKept, title }, { nextPerson, clear }) {
    const bytes = Sha256.utf8(record);
    const fingerprint = Attempt.fingerprint(bytes);
    const found = /** @type {AttemptRecord} */ (Canonical.read(record));
    const answered = found.form.filter((line) => Object.hasOwn(found.answers, line.q) && found.answers[line.q] !== null).length;
    const heading = Dom.make("h2", { class: "result-title", tabindex: "-1" }, Words.say("Handed in"));
    const { show, codes } = SittingCodes.onDemand(bytes, fingerprint);
    const page = Dom.make("section", { class: "sitting-done" },
      Dom.make("div", { class: "result-head" }, Dom.make("span", { class: "tag-shape", "aria-hidden": "true" }), Dom.make("div", {}, heading,
        Dom.make("p", { class: "result-share" }, name),
        Dom.make("p", {}, Words.say("{answered} of {total} answered. What it earned is told when the employer has marked it.", { answered, total: found.form.length })))),
      Dom.make("div", { class: "result-part" }, Dom.make("h3", {}, Words.say("For the class sheet")),
        Dom.make("p", { class: "fingerprint" }, ...fingerprint.split("-").map((group) => Dom.make("span", {}, group))),
        Dom.make("p", {}, Words.say("Call the assessor. These four groups go on the class sheet, beside your signature."))),
      Dom.make("div", { class: "result-part" }, Dom.make("h3", {}, Words.say("For the assessor: take the record along")),
        !isKept && Dom.make("p", { class: "check-note" }, Words.say("This browser keeps nothing on the device. Save the record before this page is closed.")),
        Dom.make("p", {}, Words.say("Save it to a file, or read the codes with the employer's device; either is enough.")),
        Dom.make("div", { class: "buttons" },
          Dom.button(Words.say("Save the record to a file"), () => Files.save(`${Files.name(title, name, fingerprint.slice(0, 9))}.json`, record), "first"), show),
        codes),
      Dom.make("div", { class: "result-buttons sitting-after" },
        Dom.button(Words.say("Next person"), nextPerson, "second"),
        Dom.button(Words.say("Clear this device"), clear, "quiet")));
    return { page, heading };
  }

  return { make };
})();
