/** Days as text (2026-11-24), and how people read them. The clock is always passed in. */
const Dates = (() => {
  "use strict";

  /** The day on the wall calendar of this device. @param {Date} moment @returns {string} */
  function day(moment) {
    const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
    return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
  }

  /** A moment as the attempt states it: UTC, whole seconds. @param {Date} moment @returns {string} */
  function instant(moment) {
    return `${moment.toISOString().slice(0, 19)}Z`;
  }

  /** Whether a value is a day of the calendar, written as here. @param {unknown} value @returns {value is string} */
  function isDay(value) {
    if (typeof value !== "string" || !/^\d{4}-\d\d-\d\d$/.test(value)) return false;
    const moment = new Date(`${value}T00:00:00Z`);
    return !Number.isNaN(moment.getTime()) && moment.toISOString().slice(0, 10) === value;
  }

  /** Whether a value is a moment as the attempt states it. @param {unknown} value @returns {value is string} */
  function isInstant(value) {
    return typeof value === "string" && /T([01]\d|2[0-3]):[0-5]\d:[0-5]\dZ$/.test(value) && value.length === 20 && isDay(value.slice(0, 10));
  }

  /**
   * The same day of the month some months later, or the last day of a shorter month: 31 January and one month is
   * the last of February.
   * @param {string} day
   * @param {number} months
   * @returns {string}
   */
  function addMonths(day, months) {
    const [year, month, date] = parts(day);
    const index = year * 12 + (month - 1) + months;
    const lastOfMonth = new Date(Date.UTC(Math.floor(index / 12), (index % 12) + 1, 0)).getUTCDate();
    const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
    return `${Math.floor(index / 12)}-${two((index % 12) + 1)}-${two(Math.min(date, lastOfMonth))}`;
  }

  /** @param {string} day @returns {[number, number, number]} */
  function parts(day) {
    const [year, month, date] = day.split("-").map(Number);
    return [year, month, date];
  }

  /** "21 Nov" @param {string} day @param {string} language */
  function short(day, language) {
    return written(day, language, { day: "numeric", month: "short" });
  }

  /** "21 November 2026" @param {string} day @param {string} language */
  function long(day, language) {
    return written(day, language, { day: "numeric", month: "long", year: "numeric" });
  }

  /** @param {string} day @param {string} language @param {Intl.DateTimeFormatOptions} how */
  function written(day, language, how) {
    const [year, month, date] = parts(day);
    // Day before month where the tag does not say which English.
    const locale = language === "en" ? "en-GB" : language;
    return new Intl.DateTimeFormat(locale, { ...how, timeZone: "UTC" }).format(new Date(Date.UTC(year, month - 1, date)));
  }

  return { day, instant, isDay, isInstant, addMonths, short, long };
})();
