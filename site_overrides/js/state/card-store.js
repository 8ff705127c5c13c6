/**
 * The cards of this device: one text in the browser's storage, read anew before every change, so that two windows
 * do not overwrite each other. Where the browser refuses to keep it, everything goes on in memory and `standing`
 * says why.
 * @typedef {"kept" | "refused" | "full" | "unreadable" | "not-shared"} Standing
 * @typedef {{getItem: (key: string) => string | null, setItem: (key: string, value: string) => void}} TextStorage
 * @typedef {{format: string, current: string | null, cards: Record<string, Card>}} Box
 */
const CardStore = (() => {
  "use strict";

  const KEY = "journeybook.cards";
  const FORMAT = "journeybook cards 1";

  /**
   * @param {() => TextStorage | null} findStorage may throw, as browsers do where storage is forbidden
   */
  function open(findStorage) {
    /** @type {Set<() => void>} */
    const listeners = new Set();
    /** @type {TextStorage | null} */
    let storage = null;
    /** @type {Standing} */
    let standing = "kept";
    /** @type {Box} */
    let box = { format: FORMAT, current: null, cards: {} };
    /** The text that `box` was read from or written as, so that an unchanged one is not read again at every tap. */
    let known = "";
    /** Cards that were changed here since the storage was last full: what it holds of them is older. @type {Set<string>} */
    const unwritten = new Set();

    try {
      storage = findStorage();
      storage?.getItem(KEY);
    } catch {
      storage = null;
    }
    if (!storage) standing = "refused";
    reload();

    function reload() {
      const text = stored();
      if (!storage || text === null || text === known) return;
      const found = parse(text);
      if (found) {
        known = text;
        box = unwritten.size > 0 ? withUnwritten(found) : found;
      } else {
        // Somebody else's text, or a later edition's: left where it is, never written over.
        standing = "unreadable";
        storage = null;
      }
    }

    /** The text in the storage; null where there is none, or where the browser has begun to refuse. */
    function stored() {
      try {
        return storage ? storage.getItem(KEY) : null;
      } catch {
        standing = "refused";
        storage = null;
        return null;
      }
    }

    /** What another window wrote, with the cards that this one could not write. @param {Box} found @returns {Box} */
    function withUnwritten(found) {
      const ours = Object.entries(box.cards).filter(([id]) => unwritten.has(id));
      return { ...found, current: box.current, cards: { ...found.cards, ...Object.fromEntries(ours) } };
    }

    /** @param {(box: Box) => Box} step @param {string} [id] the card that the step changes */
    function change(step, id) {
      reload();
      box = step(box);
      if (id !== undefined) unwritten.add(id);
      write();
      for (const listener of listeners) listener();
    }

    function write() {
      if (!storage) return;
      const text = JSON.stringify(box);
      try {
        storage.setItem(KEY, text);
        known = text;
        unwritten.clear();
        if (standing === "full") standing = "kept";
      } catch {
        standing = "full";
      }
    }

    function current() {
      return box.current !== null && Object.hasOwn(box.cards, box.current) ? box.cards[box.current] : null;
    }

    return {
      standing: () => standing,
      /** Said by the page when a link named a card that this page's storage does not have. */
      notShared() {
        standing = "not-shared";
        for (const listener of listeners) listener();
      },
      current,
      /** @returns {Card[]} by name */
      cards: () => Object.values(box.cards).sort((a, b) => a.name.localeCompare(b.name)),
      /** @param {string} id */
      has: (id) => Object.hasOwn(box.cards, id),
      /** @param {string | null} id */
      choose: (id) => change((now) => ({ ...now, current: id })),
      /** Adds a card, or replaces the one of the same id, and makes it the current one. @param {Card} card */
      add: (card) => change((now) => ({ ...now, current: card.id, cards: { ...now.cards, [card.id]: card } }), card.id),
      /**
       * Changes the card that is current in this window: another window may have chosen another since, and what was
       * done here belongs to the one who sat here. Nothing happens where there is none, or where it was put away.
       * @param {(card: Card) => Card} step
       */
      edit(step) {
        const meant = box.current;
        if (meant === null) return;
        change((now) => Object.hasOwn(now.cards, meant) ? { ...now, cards: { ...now.cards, [meant]: step(now.cards[meant]) } } : now, meant);
      },
      /** Takes a card off this device. @param {string} id */
      clear: (id) => change((now) => {
        const { [id]: _, ...others } = now.cards;
        return { ...now, current: now.current === id ? null : now.current, cards: others };
      }),
      /** Another window changed the cards. */
      refresh() {
        reload();
        for (const listener of listeners) listener();
      },
      /** @param {() => void} listener */
      subscribe(listener) {
        listeners.add(listener);
      },
    };
  }

  /** @param {string} text @returns {Box | null} */
  function parse(text) {
    try {
      const found = JSON.parse(text);
      const sound = found?.format === FORMAT && typeof found.cards === "object" && found.cards !== null
        && Object.values(found.cards).every(CardRecord.isCard);
      return sound ? found : null;
    } catch {
      return null;
    }
  }

  return { open, KEY };
})();
/** @typedef {ReturnType<typeof CardStore.open>} Store */
