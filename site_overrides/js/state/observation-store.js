/**
 * What this device keeps of one practical: the sheet, and the record that was saved of it. Nothing of it is sent. Where the
 * browser refuses to keep it, it is held until the page is closed.
 * @typedef {{sheet: Sheet, record: string | null}} KeptSheet `record` is the canonical text that was saved last
 */
const ObservationStore = (() => {
  "use strict";

  const PREFIX = "journeybook-observation-1:";

  /** @param {() => Storage} storage may throw where the browser forbids it @param {PracticalFacts} facts */
  function open(storage, facts) {
    const key = `${PREFIX}${facts.course}:${facts.practical}`;
    /** @type {string | null} */
    let held = null;
    let keeps = true;

    /** @returns {KeptSheet | null} */
    function read() {
      const text = keeps ? stored() : held;
      if (text === null) return null;
      try {
        return checked(JSON.parse(text));
      } catch {
        return null;
      }
    }

    /** @returns {string | null} */
    function stored() {
      try {
        return storage().getItem(key);
      } catch {
        keeps = false;
        return held;
      }
    }

    /** @param {KeptSheet} kept */
    function write(kept) {
      held = JSON.stringify(kept);
      try {
        storage().setItem(key, held);
        keeps = true;
      } catch {
        keeps = false;
      }
    }

    function clear() {
      held = null;
      try {
        storage().removeItem(key);
      } catch {
        keeps = false;
      }
    }

    /** Whether the last change was kept on the device. */
    function isKept() {
      return keeps;
    }

    return { key, read, write, clear, isKept };
  }

  /** @param {any} kept @returns {KeptSheet | null} */
  function checked(kept) {
    if (!ObservationSheet.isSheet(kept?.sheet)) return null;
    return { sheet: kept.sheet, record: Observation.from(kept.record) ? kept.record : null };
  }

  return { open };
})();
