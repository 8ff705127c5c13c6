/** The sheet as it prints: empty for the hand, or filled in from a saved record, with the fingerprint over the signatures. */
const PracticalPaper = (() => {
  "use strict";

  /** The columns of a step, in their order. */
  const COLUMNS = ["yes", "no", "not-seen", "prompted"];

  /** From so many characters of notes on, the sheet is set closer, so that it still comes out on two pages. */
  const MANY = 200;

  /** @param {HTMLElement} root */
  function empty(root) {
    root.classList.remove("filled-in", "filled-close");
    for (const each of Dom.all(root, ".paper-said, .paper-record")) each.remove();
    for (const each of Dom.all(root, ".tick-box.is-ticked")) each.classList.remove("is-ticked");
    for (const each of Dom.all(root, "[data-blank] .blank-line, .again-person")) each.textContent = "";
  }

  /**
   * @param {HTMLElement} root @param {string} slug @param {ObservationRecord} record @param {string} fingerprint
   * @param {{day: (day: string) => string, clock: (instant: string) => string}} written
   */
  function fill(root, slug, record, fingerprint, written) {
    empty(root);
    root.classList.add("filled-in");
    root.classList.toggle("filled-close", [record, ...record.steps].reduce((sum, each) => sum + each.note.length, 0) > MANY);
    const { person, assessor, second } = record;
    const lines = {
      person: listed(person.name, person.id), workplace: person.workplace, unit: record.unit,
      day: listed(written.day(record["held-on"]), record.location), assessor: listed(assessor.name, assessor.role),
      second: second ? listed(second.name, second.role) : "–", basis: assessor.basis,
    };
    for (const [name, text] of Object.entries(lines)) {
      Dom.one(root, `[data-blank="${name}"] .blank-line`).textContent = text;
    }
    for (const each of Dom.all(root, ".again-name")) each.append(Dom.make("span", { class: "again-person" }, person.name));
    Dom.all(root, ".confirm .tick-box").forEach((box, index) => tick(box, record.safety[index]));
    for (const step of record.steps) row(Dom.one(root, `#${CSS.escape(`${slug}-${step.id}`)}`), step);
    if (record.stopped) {
      Dom.one(root, ".practical-stop .slip-paper").append(said(Words.say("Ended at {time}.", { time: written.clock(record.ended) })));
    }
    Dom.all(root, ".result-word .tick-box").forEach((box, index) => tick(box, record.result === Observation.RESULTS[index]));
    if (record.note !== "") Dom.one(root, ".note-lines").before(said(record.note));
    Dom.one(root, ".practical-signed").before(Dom.make("div", { class: "paper-record paper-only" },
      Dom.make("p", { class: "label" }, Words.say("Fingerprint of the saved record")),
      Dom.make("p", { class: "paper-fingerprint" }, ...fingerprint.split("-").map((group) => Dom.make("span", {}, group))),
      Dom.make("p", {}, Words.say("Watched from {start} to {end} by the clock of the device. The signatures below vouch for the record with this fingerprint.",
        { start: written.clock(record.started), end: written.clock(record.ended) }))));
  }

  /** @param {HTMLElement} line @param {ObservedStep} step */
  function row(line, step) {
    Dom.all(line, ".tick .tick-box").forEach((box, index) =>
      tick(box, COLUMNS[index] === "prompted" ? step.prompted : COLUMNS[index] === step.seen));
    if (step.note !== "") Dom.one(line, ".observed-step").append(said(step.note));
  }

  /** @param {HTMLElement} box @param {boolean} isSo */
  function tick(box, isSo) {
    box.classList.toggle("is-ticked", isSo);
  }

  /** @param {string} words */
  function said(words) {
    return Dom.make("p", { class: "paper-said paper-only" }, words);
  }

  /** @param {...string} words */
  function listed(...words) {
    return words.filter(Boolean).join(", ");
  }

  return { fill, empty };
})();
