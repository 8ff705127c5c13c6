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

    try {
      storage = findStorage();
      storage?.getItem(KEY);
    } catch {
      storage = null;
    }
    if (!storage) standing = "refused";
    reload();

    function reload() {
      if (!storage || standing === "full") return;
      const text = storage.getItem(KEY);
      if (text === null) return;
      const found = parse(text);
      if (found) {
        box = found;
      } else {
        // Somebody else's text, or a later edition's: left where it is, never written over.
        standing = "unreadable";
        storage = null;
      }
    }

    /** @param {(box: Box) => Box} step */
    function change(step) {
      reload();
      box = step(box);
      write();
      for (const listener of listeners) listener();
    }

    function write() {
      if (!storage) return;
      try {
        storage.setItem(KEY, JSON.stringify(box));
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
      add: (card) => change((now) => ({ ...now, current: card.id, cards: { ...now.cards, [card.id]: card } })),
      /** @param {(card: Card) => Card} step applied to the current card; nothing happens where there is none */
      edit: (step) => change((now) => {
        const card = now.current !== null && Object.hasOwn(now.cards, now.current) ? now.cards[now.current] : null;
        return card ? { ...now, cards: { ...now.cards, [card.id]: step(card) } } : now;
      }),
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
