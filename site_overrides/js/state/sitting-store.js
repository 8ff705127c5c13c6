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
    /** What was written stays here until the page is closed, in case the browser loses it. @type {Map<string, string>} */
    const held = new Map();
    /** Places whose last change the browser refused: what it has of them is older. @type {Set<string>} */
    const unkept = new Set();
    const prefix = `${PREFIX}${sitting}:`;

    /** @param {string} place @returns {KeptPlace | null} */
    function read(place) {
      // Another window may have written since.
      const text = (unkept.has(place) ? null : stored(place)) ?? held.get(place);
      if (text === undefined) return null;
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
        unkept.delete(place);
      } catch {
        unkept.add(place);
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
        unkept.delete(place);
        try {
          storage().removeItem(prefix + place);
        } catch {
          // Nothing was kept there.
        }
      }
    }

    /** Whether the last change to this place was kept on the device. @param {string} place */
    function isKept(place) {
      return !unkept.has(place);
    }

    /** Whether anything is on this page only. */
    function isUnkept() {
      return unkept.size > 0;
    }

    return { read, write, count, clear, isKept, isUnkept };
  }

  /** @param {any} kept @returns {KeptPlace | null} */
  function checked(kept) {
    if (typeof kept?.record === "string" && Attempt.isRecord(Canonical.read(kept.record))) return { record: kept.record };
    return CheckSession.isSession(kept?.session) ? { session: kept.session } : null;
  }

  return { open };
})();
