/**
 * Works out the steps of a calculator's formulas over exact fractions of whole numbers of any size.
 * Twin of builder/content/postfix.py; both run tests/vectors/calculator.json.
 */
const Calculate = (() => {
  'use strict';

  /** Numerator and denominator in lowest terms, the denominator positive. @typedef {[bigint, bigint]} Fraction */
  /** @typedef {{ value: Fraction, stopped: '' } | { value: null, stopped: string }} Found */

  const TOO_LARGE = 1n << 700n;
  const MOST_PLACES = 12n;

  /** Carries a reason out of the steps. */
  class Stop extends Error {}

  /** @param {bigint} n @param {bigint} d not zero @returns {Fraction} */
  function fraction(n, d) {
    let [a, b] = [n < 0n ? -n : n, d < 0n ? -d : d];
    while (b !== 0n) [a, b] = [b, a % b];
    const by = d < 0n ? -a : a;
    return [n / by, d / by];
  }

  /** A key's `n` or `n/d`. @param {string} text @returns {Fraction} */
  function read(text) {
    const [n = '0', d = '1'] = text.split('/');
    return fraction(BigInt(n), BigInt(d));
  }

  /** @param {Fraction} value @returns {string} */
  function write([n, d]) {
    return d === 1n ? String(n) : `${n}/${d}`;
  }

  /** @param {Fraction} value @returns {Fraction} */
  function capped(value) {
    if (value[0] >= TOO_LARGE || -value[0] >= TOO_LARGE || value[1] >= TOO_LARGE) throw new Stop('too-large');
    return value;
  }

  /** Below zero, zero or above it, as a is less than b, the same or more. @param {Fraction} a @param {Fraction} b */
  function compare(a, b) {
    const difference = a[0] * b[1] - b[0] * a[1];
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  /** The whole number next below. @param {Fraction} value @returns {bigint} */
  function floor([n, d]) {
    return n >= 0n ? n / d : -((-n + d - 1n) / d);
  }

  /** To so many decimals (negative: tens, hundreds), a half going away from zero. @param {Fraction} value @param {bigint} places @returns {Fraction} */
  function round([n, d], places) {
    const scale = 10n ** (places < 0n ? -places : places);
    const [up, down] = places < 0n ? [1n, scale] : [scale, 1n];
    const below = 2n * d * down;
    const whole = (2n * (n < 0n ? -n : n) * up + d * down) / below;
    return fraction((n < 0n ? -whole : whole) * down, up);
  }

  /** @param {Fraction[]} stack @param {string} sign */
  function operate(stack, sign) {
    const [c, d] = pop(stack);
    if (sign === 'neg') {
      stack.push([-c, d]);
      return;
    }
    const [a, b] = pop(stack);
    if (sign === '/' && c === 0n) throw new Stop('divides-by-zero');
    stack.push(capped(
      sign === '+' ? fraction(a * d + c * b, b * d)
        : sign === '-' ? fraction(a * d - c * b, b * d)
          : sign === '*' ? fraction(a * c, b * d)
            : fraction(a * d, b * c),
    ));
  }

  /** @param {Fraction[]} stack @returns {Fraction} */
  function pop(stack) {
    const value = stack.pop();
    if (value === undefined) throw new TypeError('A step has no values to take.');
    return value;
  }

  /** @param {string} name @param {Fraction[]} values @returns {Fraction} */
  function call(name, values) {
    const first = pop(values.slice(0, 1));
    switch (name) {
      case 'min': return values.reduce((a, b) => (compare(b, a) < 0 ? b : a));
      case 'max': return values.reduce((a, b) => (compare(b, a) > 0 ? b : a));
      case 'floor': return [floor(first), 1n];
      case 'ceil': return [-floor([-first[0], first[1]]), 1n];
      default: {
        const [places, part] = values[1] ?? [0n, 1n];
        if (part !== 1n || places > MOST_PLACES || places < -MOST_PLACES) throw new Stop('bad-places');
        return round(first, places);
      }
    }
  }

  /** @param {CalculatorStep[]} steps @param {Map<string, Fraction>} values @returns {Fraction} */
  function run(steps, values) {
    /** @type {Fraction[]} */
    const stack = [];
    for (const step of steps) {
      if (step[0] === 'n') stack.push(capped(read(step[1])));
      else if (step[0] === 'in') stack.push(pop([values.get(step[1])].filter((value) => value !== undefined)));
      else if (step[0] === 'op') operate(stack, step[1]);
      else stack.push(capped(call(step[1], stack.splice(-step[2]))));
    }
    return pop(stack);
  }

  /**
   * Each program's value; it may use those before it, and stops where one of these did.
   * @param {[string, CalculatorStep[]][]} programs
   * @param {Map<string, Fraction>} inputs
   * @returns {Map<string, CalculatorFound>}
   */
  function all(programs, inputs) {
    const values = new Map(inputs);
    /** @type {Map<string, CalculatorFound>} */
    const found = new Map();
    for (const [name, steps] of programs) {
      const broken = steps.find((step) => step[0] === 'in' && !values.has(step[1]));
      try {
        if (broken) throw new Stop(found.get(String(broken[1]))?.stopped ?? 'no-value');
        const value = run(steps, values);
        values.set(name, value);
        found.set(name, { value, stopped: '' });
      } catch (error) {
        if (!(error instanceof Stop)) throw error;
        found.set(name, { value: null, stopped: error.message });
      }
    }
    return found;
  }

  /**
   * As people write it, without zeros at its end, and whether that is the whole of it.
   * @param {Fraction} value
   * @param {number} places
   */
  function decimal(value, places) {
    const rounded = round(value, BigInt(places));
    const scaled = (rounded[0] * 10n ** BigInt(places)) / rounded[1];
    const digits = String(scaled < 0n ? -scaled : scaled).padStart(places + 1, '0');
    const whole = digits.slice(0, digits.length - places);
    const part = digits.slice(digits.length - places).replace(/0+$/u, '');
    return { shown: `${scaled < 0n ? '-' : ''}${whole}${part === '' ? '' : `.${part}`}`, exact: compare(value, rounded) === 0 };
  }

  /**
   * A typed number that a calculator takes, or why it takes none: a problem of Numbers.readTyped, `below`, `above` or `decimals`.
   * @param {string} text
   * @param {{ least: string, most: string, places: number }} range
   * @returns {{ problem: string, value: Fraction }}
   */
  function take(text, range) {
    const typed = Numbers.readTyped(text);
    if (typed.problem !== '') return { problem: typed.problem, value: [0n, 1n] };
    const value = fraction(typed.digits, typed.scale);
    if (compare(value, read(range.least)) < 0) return { problem: 'below', value };
    if (compare(value, read(range.most)) > 0) return { problem: 'above', value };
    return { problem: (10n ** BigInt(range.places)) % value[1] === 0n ? '' : 'decimals', value };
  }

  return Object.freeze({ all, decimal, read, take, write });
})();
