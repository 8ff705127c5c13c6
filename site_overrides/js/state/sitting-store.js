/**
 * What this device keeps of a sitting, by the place's name: the session while it runs, then the record alone. The name is a
 * digest of the ticket, so a place is found again only by whoever has the ticket.
 * @typedef {{session: SessionState} | {record: string}} KeptPlace
 */
const SittingStore = (() => {
  "use strict";

  const PREFIX = "journeybook-sitting-1:";

  /** @param {() => Storage} storage may throw where the browser forbids it @param {string} sitting its id */
  function open(storage, sitting) {
    /** What could not be written stays here until the page is closed. @type {Map<string, string>} */
    const held = new Map();
    let keeps = true;
    const prefix = `${PREFIX}${sitting}:`;

    /** @param {string} place @returns {KeptPlace | null} */
    function read(place) {
      const text = held.get(place) ?? stored(place);
      if (text === null) return null;
      try {
        return checked(JSON.parse(text));
      } catch {
        return null;
      }
    }

    /** @param {string} place @returns {string | null} */
    function stored(place) {
      try {
        return storage().getItem(prefix + place);
      } catch {
        return null;
      }
    }

    /** @param {string} place @param {KeptPlace} kept */
    function write(place, kept) {
      const text = JSON.stringify(kept);
      held.set(place, text);
      try {
        storage().setItem(prefix + place, text);
        keeps = true;
      } catch {
        keeps = false;
      }
    }

    /** How many places of this sitting are kept, and how many of them are handed in. */
    function count() {
      const names = placesKept();
      const handedIn = names.filter((place) => "record" in (read(place) ?? {})).length;
      return { all: names.length, handedIn };
    }

    /** @returns {string[]} */
    function placesKept() {
      /** @type {string[]} */
      let found = [];
      try {
        found = Object.keys(storage()).filter((name) => name.startsWith(prefix)).map((name) => name.slice(prefix.length));
      } catch {
        // Then only what this page holds is there.
      }
      return [...new Set([...found, ...held.keys()])];
    }

    function clear() {
      for (const place of placesKept()) {
        held.delete(place);
        try {
          storage().removeItem(prefix + place);
        } catch {
          // Nothing was kept there.
        }
      }
    }

    /** Whether the last change was kept on the device. */
    function isKept() {
      return keeps;
    }

    return { read, write, count, clear, isKept };
  }

  /** @param {any} kept @returns {KeptPlace | null} */
  function checked(kept) {
    if (typeof kept?.record === "string" && Attempt.isRecord(Canonical.read(kept.record))) return { record: kept.record };
    return CheckSession.isSession(kept?.session) ? { session: kept.session } : null;
  }

  return { open };
})();
