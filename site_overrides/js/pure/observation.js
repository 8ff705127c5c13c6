/**
 * What an assessor saw at one practical, as a record: format 1. Twin of builder/marking/observation.py.
 * @typedef {{id: string, seen: string, prompted: boolean, note: string}} ObservedStep
 * @typedef {{course: string, version: string, digest: string, profile: string, language: string, practical: string,
 *   person: {id: string, name: string, workplace: string}, unit: string, "held-on": string, location: string,
 *   assessor: {name: string, role: string, basis: string}, second: {name: string, role: string} | null,
 *   safety: boolean[], steps: ObservedStep[], stopped: boolean, note: string, result: string, started: string, ended: string}} ObservationFacts
 * @typedef {ObservationFacts & {format: string}} ObservationRecord
 */
const Observation = (() => {
  "use strict";

  const FORMAT = "journeybook observation 1";
  const SEEN = ["yes", "no", "not-seen"];
  const RESULTS = ["competent", "not-yet-competent"];
  /** Characters in any text, as the reader counts them. */
  const LONGEST_TEXT = 1000;

  /**
   * A text as the record can hold it: composed (NFC), without half characters, not too long, no space round it. A record
   * with half a character would have no bytes.
   * @param {string} text
   */
  function tidy(text) {
    const whole = text.normalize("NFC").trim();
    return Array.from(whole).filter((character) => !/^[\ud800-\udfff]$/.test(character)).slice(0, LONGEST_TEXT).join("").trim();
  }

  /** @param {ObservationFacts} facts @returns {ObservationRecord} */
  function build(facts) {
    const { person, assessor, second } = facts;
    return {
      format: FORMAT,
      course: facts.course,
      version: facts.version,
      digest: facts.digest,
      profile: facts.profile,
      language: facts.language,
      practical: facts.practical,
      person: { id: tidy(person.id), name: tidy(person.name), workplace: tidy(person.workplace) },
      unit: tidy(facts.unit),
      "held-on": facts["held-on"],
      location: tidy(facts.location),
      assessor: { name: tidy(assessor.name), role: tidy(assessor.role), basis: tidy(assessor.basis) },
      second: second && { name: tidy(second.name), role: tidy(second.role) },
      safety: facts.safety,
      steps: facts.steps.map(({ id, seen, prompted, note }) => ({ id, seen, prompted, note: tidy(note) })),
      stopped: facts.stopped,
      note: tidy(facts.note),
      result: facts.result,
      started: facts.started,
      ended: facts.ended,
    };
  }

  /** The text of the file: canonical, without a line end. @param {ObservationRecord} record */
  function text(record) {
    return Canonical.write(record);
  }

  /** The record in such a text, or null where it is none. @param {unknown} source @returns {ObservationRecord | null} */
  function from(source) {
    if (typeof source !== "string") return null;
    try {
      const found = /** @type {any} */ (Canonical.read(source));
      return found?.format === FORMAT && RESULTS.includes(found.result) && Array.isArray(found.steps)
        && found.steps.every((/** @type {any} */ step) => typeof step?.id === "string" && SEEN.includes(step.seen)) ? found : null;
    } catch {
      return null;
    }
  }

  return Object.freeze({ FORMAT, SEEN, RESULTS, build, text, from, tidy });
})();
