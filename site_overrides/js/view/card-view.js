/** The current card on every page, and a plain sentence where this browser does not keep it. */
const CardView = (() => {
  "use strict";

  const MARK = "#card=";

  /** @param {Store} store @param {CardSheet} sheet */
  function mount(store, sheet) {
    arrive(store);
    const places = [...Dom.all(document, "[data-cards]").map(onRouteCard), ...Dom.all(document, ".strip").map(onStrip)];
    const notice = Dom.make("div", { class: "card-notice", role: "status" });
    document.querySelector("main")?.before(notice);
    store.subscribe(show);
    addEventListener("storage", (event) => {
      if (event.key === CardStore.KEY) store.refresh();
    });
    carry(store);
    show();

    function show() {
      for (const place of places) place();
      notice.replaceChildren(...noticeParts());
    }

    function noticeParts() {
      const words = standingWords(store.standing());
      if (!words) return [];
      return [Dom.make("p", {}, words), store.current()
        ? Dom.button(Words.say("Save the card to a file"), sheet.saveToFile, "second")
        : null].filter((part) => part !== null);
    }

    /** @param {HTMLElement} place */
    function onRouteCard(place) {
      return () => {
        const card = store.current();
        place.replaceChildren(
          Dom.make("p", { class: "label" }, Words.say("Card of")),
          card ? Dom.make("p", { class: "card-name" }, card.name) : Dom.make("p", { class: "card-blank" }),
          ...(card?.workplace ? [Dom.make("p", { class: "label" }, card.workplace)] : []),
          Dom.make("div", { class: "card-buttons" }, ...(card
            ? [Dom.button(Words.say("Another card"), () => sheet.whose(), "second"), Dom.button(Words.say("Put the card away"), sheet.putAway, "second")]
            : [Dom.button(Words.say("Whose card?"), () => sheet.whose(), "first")])));
      };
    }

    /** @param {HTMLElement} strip */
    function onStrip(strip) {
      const cell = Dom.make("div", { class: "strip-cell strip-card" });
      if (!document.querySelector("main[data-leaf] [data-cards]")) strip.append(cell);
      return () => {
        const card = store.current();
        cell.classList.toggle("is-nobody", !card);
        cell.replaceChildren(Dom.make("span", { class: "label" }, Words.say("Card of")),
          Dom.make("button", { type: "button", class: "strip-value card-switch", click: () => sheet.whose() },
            card ? card.name : Words.say("Whose card?")));
      };
    }
  }

  /** @param {Standing} standing */
  function standingWords(standing) {
    switch (standing) {
      case "refused": return Words.say("This browser keeps nothing from page to page. What you do is lost when you leave this page. Save the card to a file first, or use the one-file edition.");
      case "full": return Words.say("This browser has no room left. What you do now is lost when you close this page: save the card to a file, then put away cards that are finished.");
      case "unreadable": return Words.say("The cards on this device cannot be read here; they are left untouched. What you do now is lost when you close this page, so save the card to a file first.");
      case "not-shared": return Words.say("This browser does not carry your card from page to page when the course is opened from a folder. Use the one-file edition, or take the card out of a file on each page.");
      default: return "";
    }
  }

  /**
   * Opened from a folder, a page cannot know whether the next page sees the same storage. So each link carries
   * the card's id, and the page that is reached says so where it does not have that card.
   * @param {Store} store
   */
  function arrive(store) {
    if (!location.hash.startsWith(MARK)) return;
    const id = location.hash.slice(MARK.length);
    if (!store.has(id)) {
      store.notShared();
    } else if (store.current()?.id !== id) {
      store.choose(id);
    }
    try {
      history.replaceState(null, "", location.pathname + location.search);
    } catch {
      // Some browsers forbid this for files; the mark then stays in the address, where it does no harm.
    }
  }

  /** @param {Store} store */
  function carry(store) {
    if (location.protocol !== "file:") return;
    document.addEventListener("click", (event) => {
      const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
      const card = store.current();
      if (!(link instanceof HTMLAnchorElement) || !card || link.hash || link.hasAttribute("download")) return;
      if (link.protocol === "file:" && link.pathname.endsWith(".html")) link.hash = `card=${card.id}`;
    });
  }

  return { mount };
})();
