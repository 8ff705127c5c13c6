/**
 * Calculators: what is typed is read as in number questions, and every result follows at once.
 * What is out of range or can be read in two ways is said beside its box, and what rests on it shows no number.
 */
const CalculatorView = (() => {
  "use strict";

  /** So long after the last key the results are said aloud. */
  const PAUSE = 700;
  const NONE = "–";

  /** @param {HTMLElement} leaf */
  function mountAll(leaf) {
    for (const sheet of Dom.all(leaf, "[data-calculator]")) mount(sheet);
  }

  /** @param {HTMLElement} sheet */
  function mount(sheet) {
    /** @type {CalculatorData} */
    const data = PageData.named(sheet.dataset.leafData || "").calculators[sheet.dataset.calculator || ""];
    const fields = data.inputs.map((input) => field(Dom.one(sheet, `[data-input="${input.id}"]`), input, work));
    const results = data.results.map((result) => figure(Dom.one(sheet, `[data-result="${result.id}"]`), result));
    const needs = needed(data.programs);
    const aloud = Dom.make("p", { class: "unseen", role: "status" });
    const again = Dom.button(Words.say("Back to the start values"), () => {
      for (const each of fields) each.reset();
      work();
      fields[0]?.focus();
    }, "quiet");
    Dom.one(sheet, ".calc-lines").append(Dom.make("div", { class: "calc-again" }, again), aloud);
    sheet.classList.add("live");
    let timer = 0;

    /** Reads every line and writes every result. */
    function work() {
      /** @type {Map<string, [bigint, bigint]>} */
      const values = new Map();
      for (const each of fields) {
        const value = each.read();
        if (value) values.set(each.input.name, value);
      }
      const missing = fields.filter((each) => !values.has(each.input.name));
      const found = Calculate.all(data.programs, values);
      const written = new Map(fields.map((each) => [each.input.name, each.shown()]));
      for (const each of results) {
        const lines = missing.filter(({ input }) => needs.get(each.result.name)?.has(input.name)).map(({ input }) => input.letter);
        written.set(each.result.name, each.show(found.get(each.result.name), lines, written));
      }
      clearTimeout(timer);
      timer = setTimeout(() => { aloud.textContent = results.map((each) => each.words()).join(" "); }, PAUSE);
    }
  }

  /** Every name on which each result rests, whether directly or through results above it. @param {[string, CalculatorStep[]][]} programs */
  function needed(programs) {
    /** @type {Map<string, Set<string>>} */
    const found = new Map();
    for (const [name, steps] of programs) {
      const names = steps.filter((step) => step[0] === "in").map((step) => String(step[1]));
      found.set(name, new Set(names.flatMap((each) => [each, ...found.get(each) ?? []])));
    }
    return found;
  }

  /**
   * A line to fill in: a box, or a list to choose from, in the place of the start value.
   * @param {HTMLElement} line @param {CalculatorInputData} input @param {() => void} changed
   */
  function field(line, input, changed) {
    const given = Dom.one(line, ".calc-given");
    const id = given.id;
    const range = document.getElementById(`${id}-range`);
    const problem = Dom.make("p", { class: "ask-again", id: `${id}-problem`, role: "status" });
    const described = [range?.id, problem.id].filter(Boolean).join(" ");
    const common = { class: "calc-box", id, "aria-describedby": described };
    const box = input.choices
      ? Dom.make("select", { ...common, change: changed }, ...input.choices.map(([value, words]) => Dom.make("option", { value }, words)))
      : Dom.make("input", { ...common, type: "text", inputmode: "decimal", autocomplete: "off", spellcheck: "false", input: changed, focus: select });
    given.replaceWith(box);
    line.append(problem);
    reset();

    function reset() {
      box.value = input.start;
      say("");
    }

    /** @param {string} words */
    function say(words) {
      if (problem.textContent !== words) problem.textContent = words;
      if (words === "") box.removeAttribute("aria-invalid");
      else box.setAttribute("aria-invalid", "true");
    }

    return {
      input,
      reset,
      focus: () => box.focus(),
      read() {
        const taken = Calculate.take(box.value, input);
        say(taken.problem === "" ? "" : problemWords(taken.problem, input));
        return taken.problem === "" ? taken.value : null;
      },
      shown: () => box.value.trim().replace(",", "."),
    };
  }

  /** The first tap puts the whole number under the next key. @param {FocusEvent} event */
  function select(event) {
    if (event.target instanceof HTMLInputElement) event.target.select();
  }

  /** A line that is worked out. @param {HTMLElement} line @param {CalculatorResultData} result */
  function figure(line, result) {
    const number = Dom.one(line, ".calc-number");
    const sign = Dom.one(line, ".calc-about");
    const worked = Dom.one(line, ".calc-worked");
    const why = Dom.make("p", { class: "calc-none" });
    worked.after(why);
    let spoken = "";

    return {
      result,
      /** What the lines below may write of it. @param {CalculatorFound | undefined} found @param {string[]} missing @param {Map<string, string>} written */
      show(found, missing, written) {
        const value = found?.value ?? null;
        const { shown, exact } = value ? Calculate.decimal(value, result.places) : { shown: NONE, exact: true };
        number.textContent = shown.replace("-", "\u2212");
        sign.textContent = exact ? "" : "≈";
        line.classList.toggle("has-none", value === null);
        worked.hidden = value === null;
        why.textContent = value ? "" : noneWords(found?.stopped ?? "", missing);
        for (const part of Dom.all(worked, "[data-name]")) part.textContent = (written.get(part.dataset.name || "") || "").replace("-", "\u2212");
        const said = { label: result.label, number: `${shown} ${result.unit}`.trim() };
        spoken = value === null
          ? `${result.label}: ${why.textContent}`
          : exact ? Words.say("{label}: {number}.", said) : Words.say("{label}: about {number}.", said);
        return shown;
      },
      words: () => spoken,
    };
  }

  /** @param {string} stopped @param {string[]} missing letters of lines without a number */
  function noneWords(stopped, missing) {
    if (stopped === "divides-by-zero") return Words.say("No result: with these numbers it would be divided by zero.");
    if (stopped === "no-value" && missing.length > 0) return Words.say("No result yet. Look at line {letters}.", { letters: missing.join(", ") });
    return Words.say("No result: the numbers are too large.");
  }

  /** @param {string} problem @param {CalculatorInputData} input */
  function problemWords(problem, input) {
    switch (problem) {
      case "below":
      case "above": return Words.say("Write a number from {least} to {most}.", { least: words(input.least), most: words(input.most) });
      case "decimals": return input.places === 0 ? Words.say("Write a whole number.") : Words.say("Write no more than {places} decimals.", { places: input.places });
      default: return ControlNumber.problemWords(problem);
    }
  }

  /** A number of the data as people write it. @param {string} ratio */
  function words(ratio) {
    return Calculate.decimal(Calculate.read(ratio), 12).shown.replace("-", "\u2212");
  }

  return { mountAll };
})();
