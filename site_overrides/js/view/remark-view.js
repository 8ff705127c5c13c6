/** What is said after an answer: the result in words and in a shape, what to mend, and why. */
const RemarkView = (() => {
  "use strict";

  const WHOLE = 1000;
  const FIRST_RULES = 2;

  /**
   * @param {HTMLElement} section the question
   * @param {any} key
   * @param {any} marked what Mark.mark returned
   * @returns {HTMLElement} a tag: ruled for right, with a punched hole for not yet
   */
  function make(section, key, marked) {
    const right = marked.mark === WHOLE;
    const tag = Dom.make("div", { class: right ? "tag tag-right" : "tag tag-hold", tabindex: "-1" });
    const body = Dom.make("div", { class: "tag-body" },
      Dom.make("p", { class: "label tag-label" }, right ? Words.say("Right") : holdWords(key, marked.remarks)));
    if (!right) body.append(...mend(section, key, marked.remarks));
    const why = section.querySelector(".why:not([hidden])");
    if (why) body.append(Dom.make("div", { class: "tag-why" }, Dom.contents(why)));
    tag.append(Dom.make("span", { class: "tag-shape", "aria-hidden": "true" }), body);
    return tag;
  }

  /** @param {any} key @param {any} remarks */
  function holdWords(key, remarks) {
    const hold = Words.say("Not yet");
    const more = howMuch(key, remarks);
    return more ? `${hold} · ${more}` : hold;
  }

  /** How far it is from right, in words. @param {any} key @param {any} remarks */
  function howMuch(key, remarks) {
    switch (key.kind) {
      case "drill": return drillWords(key, remarks);
      case "order": return remarks.moves === 1 ? Words.say("1 step to move") : Words.say("{n} steps to move", { n: remarks.moves || 0 });
      case "match": return Words.say("{right} of {total} pairs right", { right: key.items.length - (remarks.wrong || []).length, total: key.items.length });
      case "choices": return Words.say("{missed} missed, {extra} too many", { missed: (remarks.missed || []).length, extra: (remarks.extra || []).length });
      case "triage": return remarks.problem ? "" : triageWords(key, remarks);
      default: return "";
    }
  }

  /** @param {any} key @param {any} remarks */
  function triageWords(key, remarks) {
    const total = key.units.length;
    const missed = (remarks.missed || []).length;
    const needless = (remarks.needless || []).length;
    const right = total - missed - needless - (remarks.left || []).length;
    return Words.say("{right} of {total} right, {missed} missed, {needless} condemned needlessly", { right, total, missed, needless });
  }

  /** @param {HTMLElement} section @param {any} key @param {any} remarks @returns {Node[]} */
  function mend(section, key, remarks) {
    if (key.kind === "order") return brokenRules(section, remarks);
    if (key.kind === "number") return numberWords(section, remarks);
    if (key.kind === "triage") return ControlTriage.missed(section, key, remarks);
    if (key.kind === "drill") return criticalError(section, remarks);
    return [];
  }

  /**
   * The broken rules as the author stated them, critical ones first. An order that breaks what follows from
   * several rules breaks at least one stated rule too, so nothing stays unexplained.
   * @param {HTMLElement} section @param {any} remarks
   */
  function brokenRules(section, remarks) {
    const broken = new Set((remarks.broken || []).map((/** @type {string[]} */ pair) => pair.join(" ")));
    const stated = Dom.all(section, ".reasons [data-first]").filter((rule) =>
      (rule.dataset.then || "").split(" ").some((then) => broken.has(`${rule.dataset.first} ${then}`)));
    const told = stated.sort((a, b) => Number(b.hasAttribute("data-critical")) - Number(a.hasAttribute("data-critical"))).map((rule) => {
      const reason = rule.querySelector(".reason");
      return Dom.make("div", { class: "broken-rule" },
        rule.hasAttribute("data-critical") && Dom.make("p", { class: "label" }, Words.say("Critical")),
        Dom.make("p", { class: "broken-what" }, Dom.contents(rule.querySelector(".reason-of"))),
        reason && Dom.make("p", {}, Dom.contents(reason)));
    });
    if (told.length <= FIRST_RULES + 1) return told;
    // Whoever has everything the wrong way round mends one thing first.
    return [...told.slice(0, FIRST_RULES), Dom.make("details", { class: "more-rules" },
      Dom.make("summary", {}, Words.say("{n} more", { n: told.length - FIRST_RULES })), ...told.slice(FIRST_RULES))];
  }

  /** @param {any} key @param {any} remarks */
  function drillWords(key, remarks) {
    if (remarks.critical) return Words.say("critical error");
    return Object.hasOwn(key.ends, remarks.end || "")
      ? Words.say("{share} of the mark", { share: `${Math.max(0, key.ends[remarks.end] - remarks.penalty) / 10}\u00a0%` }) : "";
  }

  /** What a critical error does to people, said plainly. @param {HTMLElement} section @param {any} remarks @returns {Node[]} */
  function criticalError(section, remarks) {
    const deed = remarks.critical && section.querySelector(`.answer [data-deed="${remarks.critical}"]`);
    if (!deed) return [];
    return [Dom.make("p", { class: "critical-words" }, Dom.contents(deed.querySelector(".reason")))];
  }

  /** @param {HTMLElement} section @param {any} remarks @returns {Node[]} */
  function numberWords(section, remarks) {
    const slip = remarks.slip === undefined ? null
      : Dom.all(section, `[data-slip="${remarks.slip}"]`).find((line) => !line.hidden);
    const right = section.querySelector(".right-number:not([hidden])");
    const parts = [];
    if (slip) parts.push(Dom.make("p", { class: "slip-words" }, Dom.contents(slip.querySelector(".reason"))));
    if (right) parts.push(Dom.make("p", { class: "right-number" }, Dom.contents(right)));
    return parts;
  }

  return { make };
})();
