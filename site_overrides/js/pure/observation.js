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
      const found = Canonical.read(source);
      return isRecord(found) ? found : null;
    } catch {
      return null;
    }
  }

  /** Whether data have the members that a page shows, each of its shape. @param {any} value @returns {value is ObservationRecord} */
  function isRecord(value) {
    return hasTexts(value, ["course", "version", "digest", "practical", "unit", "held-on", "location", "note", "started", "ended"])
      && value.format === FORMAT && RESULTS.includes(value.result) && typeof value.stopped === "boolean"
      && hasTexts(value.person, ["id", "name", "workplace"]) && hasTexts(value.assessor, ["name", "role", "basis"])
      && (value.second === null || hasTexts(value.second, ["name", "role"]))
      && Array.isArray(value.safety) && value.safety.every((/** @type {unknown} */ each) => typeof each === "boolean")
      && Array.isArray(value.steps) && value.steps.every((/** @type {any} */ step) =>
        hasTexts(step, ["id", "seen", "note"]) && SEEN.includes(step.seen) && typeof step.prompted === "boolean");
  }

  /** @param {any} value @param {string[]} names */
  function hasTexts(value, names) {
    return typeof value === "object" && value !== null && names.every((name) => typeof value[name] === "string");
  }

  return Object.freeze({ FORMAT, SEEN, RESULTS, build, text, from, tidy });
})();
