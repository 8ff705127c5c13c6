/**
 * The sheet of a practical while an assessor fills it in. All functions return a new sheet, the same one where nothing
 * changes; the clock is passed in.
 * @typedef {{course: string, version: string, digest: string, profile: string, language: string, practical: string,
 *   draft: boolean, conditions: number, steps: [string, boolean][]}} PracticalFacts steps: id, and whether it is critical
 * @typedef {{seen: string, prompted: boolean, note: string}} StepMark `seen` is "" until the step is marked
 * @typedef {{digest: string, lines: Record<string, string>, safety: boolean[], steps: Record<string, StepMark>, stopped: string,
 *   note: string, result: string, started: string, ended: string, replaces: string}} Sheet
 *   `lines` by the names in LINES; `stopped` is the moment at which it was ended, or ""; `replaces` is the fingerprint of the
 *   record that was saved of this sheet before it was changed, or ""
 */
const ObservationSheet = (() => {
  "use strict";

  /** What is written on lines, in the order of the page. */
  const LINES = ["name", "number", "workplace", "unit", "day", "place", "assessor", "role", "basis", "second", "second-role"];
  /** What goes on to the sheet of the next person. */
  const LASTING = ["place", "assessor", "role", "basis", "second", "second-role"];
  const NEEDED = ["name", "day", "assessor"];
  /** @type {StepMark} */
  const UNMARKED = { seen: "", prompted: false, note: "" };

  /** @param {PracticalFacts} facts @param {string} day @param {Record<string, string>} [lines] @returns {Sheet} */
  function blank(facts, day, lines = {}) {
    return {
      digest: facts.digest,
      lines: { ...Object.fromEntries(LINES.map((name) => [name, ""])), day, ...lines },
      safety: Array(facts.conditions).fill(false),
      steps: Object.fromEntries(facts.steps.map(([id]) => [id, UNMARKED])),
      stopped: "", note: "", result: "", started: "", ended: "", replaces: "",
    };
  }

  /** The sheet for the next person, who is watched by the same people in the same place. @param {Sheet} sheet @param {PracticalFacts} facts @param {string} day */
  function next(sheet, facts, day) {
    return blank(facts, day, Object.fromEntries(LASTING.map((name) => [name, sheet.lines[name]])));
  }

  /** A sheet begun on another state of the course keeps its lines alone: a step may mean something else now. @param {Sheet} sheet @param {PracticalFacts} facts @param {string} day */
  function onto(sheet, facts, day) {
    return blank(facts, day, sheet.lines);
  }

  /** @param {any} value @returns {value is Sheet} */
  function isSheet(value) {
    const isText = (/** @type {unknown} */ text) => typeof text === "string";
    return isMapping(value) && ["digest", "note", "replaces"].every((name) => isText(value[name]))
      && ["stopped", "started", "ended"].every((name) => value[name] === "" || Dates.isInstant(value[name]))
      && ["", ...Observation.RESULTS].includes(value.result)
      && isMapping(value.lines) && LINES.every((name) => isText(value.lines[name]))
      && Array.isArray(value.safety) && value.safety.every((/** @type {unknown} */ each) => typeof each === "boolean")
      && isMapping(value.steps) && Object.values(value.steps).every((step) => isMapping(step) && ["", ...Observation.SEEN].includes(step.seen) && typeof step.prompted === "boolean" && isText(step.note));
  }

  /** Whether it was begun on this very state of the course. @param {Sheet} sheet @param {PracticalFacts} facts */
  function fits(sheet, facts) {
    return sheet.digest === facts.digest && sheet.safety.length === facts.conditions
      && facts.steps.every(([id]) => Object.hasOwn(sheet.steps, id));
  }

  /** @param {Sheet} sheet @param {string} name one of LINES, or "note" @param {string} text @returns {Sheet} */
  function write(sheet, name, text) {
    return name === "note" ? { ...sheet, note: text } : { ...sheet, lines: { ...sheet.lines, [name]: text } };
  }

  /** @param {Sheet} sheet @param {PracticalFacts} facts @param {number} index @param {boolean} isSo @param {string} now */
  function confirm(sheet, facts, index, isSo, now) {
    const safety = sheet.safety.map((each, at) => at === index ? isSo : each);
    return settled({ ...sheet, safety, started: sheet.started || now }, facts);
  }

  /** @param {Sheet} sheet */
  function isSafe(sheet) {
    return sheet.safety.every(Boolean);
  }

  /**
   * Nothing is marked while a condition is not confirmed.
   * @param {Sheet} sheet @param {PracticalFacts} facts @param {string} step @param {Partial<StepMark>} change @param {string} now
   */
  function mark(sheet, facts, step, change, now) {
    if (!isSafe(sheet)) return sheet;
    const steps = { ...sheet.steps, [step]: { ...sheet.steps[step], ...change } };
    const isWhole = facts.steps.every(([id]) => steps[id].seen !== "");
    return settled({ ...sheet, steps, ended: sheet.ended || (isWhole ? now : "") }, facts);
  }

  /** @param {Sheet} sheet @param {PracticalFacts} facts @param {string} now @returns {Sheet} */
  function stop(sheet, facts, now) {
    return settled({ ...sheet, started: sheet.started || now, stopped: now, ended: now, result: "not-yet-competent" }, facts);
  }

  /** It was pressed by mistake. @param {Sheet} sheet @param {PracticalFacts} facts @returns {Sheet} */
  function goOn(sheet, facts) {
    return settled({ ...sheet, stopped: "", ended: "", result: "" }, facts);
  }

  /** @param {Sheet} sheet @param {PracticalFacts} facts @param {string} result */
  function choose(sheet, facts, result) {
    return settled({ ...sheet, result }, facts);
  }

  /** *Competent* goes as soon as it could not stand. @param {Sheet} sheet @param {PracticalFacts} facts */
  function settled(sheet, facts) {
    return sheet.result === "competent" && against(sheet, facts).length > 0 ? { ...sheet, result: "" } : sheet;
  }

  /** @param {Sheet} sheet @param {PracticalFacts} facts */
  function seen(sheet, facts) {
    return facts.steps.map(([id]) => ({ id, ...sheet.steps[id] }));
  }

  /**
   * What keeps it from being *competent*: the rule of the record, and before that each step that is not marked.
   * @param {Sheet} sheet @param {PracticalFacts} facts @returns {[string, string][]} `safety`, `stopped`, `step` or `unmarked`, and which step
   */
  function against(sheet, facts) {
    const steps = seen(sheet, facts);
    const critical = facts.steps.filter(([, isCritical]) => isCritical).map(([id]) => id);
    const found = Observed.against({ safety: sheet.safety, stopped: sheet.stopped !== "", steps, critical });
    const missed = new Set(found.map(([, step]) => step));
    return [
      ...found.filter(([why]) => why !== "step"),
      ...steps.filter(({ id, seen }) => seen === "" || missed.has(id))
        .map(({ id, seen }) => /** @type {[string, string]} */ ([seen === "" ? "unmarked" : "step", id])),
    ];
  }

  /** How far it has come; `waiting` are critical steps not marked yet, `missed` those marked but not shown. @param {Sheet} sheet @param {PracticalFacts} facts */
  function count(sheet, facts) {
    const steps = seen(sheet, facts);
    const critical = new Set(facts.steps.filter(([, isCritical]) => isCritical).map(([id]) => id));
    return {
      marked: steps.filter((step) => step.seen !== "").length,
      total: steps.length,
      waiting: steps.filter((step) => critical.has(step.id) && step.seen === "").length,
      missed: steps.filter((step) => critical.has(step.id) && step.seen !== "" && !Observed.isShown(step)).length,
    };
  }

  /** What has to be there before it can be saved, by name. @param {Sheet} sheet @returns {string[]} */
  function missing(sheet) {
    const lines = NEEDED.filter((name) => name === "day" ? !Dates.isDay(sheet.lines.day) : Observation.tidy(sheet.lines[name]) === "");
    return sheet.result === "" ? [...lines, "result"] : lines;
  }

  /** Whether anything stands on it that somebody wrote or marked. @param {Sheet} sheet */
  function isBegun(sheet) {
    return sheet.started !== "" || sheet.stopped !== "" || sheet.note !== "" || sheet.result !== ""
      || LINES.some((name) => name !== "day" && sheet.lines[name] !== "");
  }

  /** The record of a sheet that misses nothing; a step without a mark was not seen. @param {Sheet} sheet @param {PracticalFacts} facts @param {string} now */
  function record(sheet, facts, now) {
    const { lines } = sheet;
    return Observation.build({
      course: facts.course, version: facts.version, digest: facts.digest, profile: facts.profile, language: facts.language,
      practical: facts.practical,
      person: { id: lines.number, name: lines.name, workplace: lines.workplace },
      unit: lines.unit, "held-on": lines.day, location: lines.place,
      assessor: { name: lines.assessor, role: lines.role, basis: lines.basis },
      second: Observation.tidy(lines.second) === "" ? null : { name: lines.second, role: lines["second-role"] },
      safety: sheet.safety,
      steps: seen(sheet, facts).map((step) => ({ ...step, seen: step.seen || "not-seen" })),
      stopped: sheet.stopped !== "", note: sheet.note, result: sheet.result,
      started: sheet.started || now, ended: sheet.ended || now,
    });
  }

  /** @param {any} value @returns {value is Record<string, any>} */
  function isMapping(value) {
    return typeof value === "object" && value !== null && !Array.isArray(value);
  }

  return { LINES, blank, next, onto, isSheet, fits, write, confirm, isSafe, mark, stop, goOn, choose, against, count, missing, isBegun, record };
})();
