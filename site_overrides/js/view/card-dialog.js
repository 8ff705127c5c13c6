/** Whose card? A sheet laid over the page: choose a card, begin one, take one out of a file, put one away. */
const CardDialog = (() => {
  "use strict";

  /**
   * @param {Store} store
   * @param {{newId: () => string, now: () => Date}} tools
   */
  function make(store, { newId, now }) {
    const dialog = Dom.make("dialog", { class: "card-dialog", "aria-labelledby": "card-dialog-title" });
    document.body.append(dialog);
    /** @type {() => void} */
    let whenChosen = () => {};
    /** What opened the sheet, and what that stood in, outwards: the opener itself may be gone when the sheet closes. @type {HTMLElement[]} */
    let cameFrom = [];
    dialog.addEventListener("close", giveFocusBack);

    /** @param {string} title @param {...(Node | null)} parts */
    function show(title, ...parts) {
      const heading = Dom.make("h2", { id: "card-dialog-title", tabindex: "-1" }, title);
      const close = Dom.button(Words.say("Close"), () => dialog.close(), "quiet");
      dialog.replaceChildren(Dom.make("div", { class: "card-dialog-head" }, heading, close),
        Dom.make("div", { class: "card-dialog-body" }, ...parts));
      if (!dialog.open) {
        cameFrom = outwards(document.activeElement);
        dialog.showModal();
      }
      Dom.focus(heading);
    }

    /** The browser gives the focus back to the opener; where a chosen card has put something else there, that gets it. */
    function giveFocusBack() {
      const now = document.activeElement;
      if (now && now !== document.body && now.checkVisibility()) return;
      const place = cameFrom.find((each) => each.isConnected && each.checkVisibility());
      if (place) Dom.focus(Dom.all(place, "button, a[href]").find((each) => each.checkVisibility()) || place);
    }

    function done() {
      dialog.close();
      whenChosen();
    }

    /** @param {() => void} [then] called once a card is current */
    function whose(then = () => {}) {
      whenChosen = then;
      const cards = store.cards();
      const current = store.current();
      const list = cards.length > 0 && Dom.make("ul", { class: "card-list" }, ...cards.map((card) =>
        Dom.make("li", {}, Dom.make("button", {
          type: "button", class: "card-choice", "aria-current": card.id === current?.id && "true",
          click: () => { store.choose(card.id); done(); },
        }, Dom.make("strong", {}, card.name), Dom.make("span", {}, card.workplace)))));
      show(Words.say("Whose card?"), list || null, newCard(cards.length === 0), fromFile(), away());
    }

    /** @param {boolean} open */
    function newCard(open) {
      const name = field(Words.say("Name"), "name", "name");
      const workplace = field(Words.say("Workplace"), "workplace", "organization");
      const form = Dom.make("form", {
        class: "card-new", submit: (event) => {
          event.preventDefault();
          if (!name.input.value.trim()) return name.ask(Words.say("Write your name. It goes on the certificate."));
          store.add(CardRecord.blank({ id: newId(), name: name.input.value, workplace: workplace.input.value, made: Dates.day(now()) }));
          done();
        },
      }, name.row, workplace.row, Dom.make("button", { type: "submit", class: "button" }, Words.say("Begin this card")));
      const details = Dom.make("details", { class: "card-part", open }, Dom.make("summary", {}, Words.say("Begin a new card")), form);
      return details;
    }

    /** @param {string} label @param {string} name @param {string} complete */
    function field(label, name, complete) {
      const id = `card-dialog-${name}`;
      const input = Dom.make("input", { id, name, type: "text", maxlength: "120", autocomplete: complete, "aria-describedby": `${id}-again` });
      const again = Dom.make("p", { class: "ask-again", id: `${id}-again`, role: "status" });
      input.addEventListener("input", () => {
        again.textContent = "";
        input.removeAttribute("aria-invalid");
      });
      return {
        input,
        row: Dom.make("div", { class: "card-field" }, Dom.make("label", { class: "label", for: id }, label), input, again),
        /** @param {string} words */
        ask(words) {
          again.textContent = words;
          input.setAttribute("aria-invalid", "true");
          input.focus();
        },
      };
    }

    function fromFile() {
      const said = Dom.make("p", { class: "ask-again", role: "status" });
      const input = Dom.make("input", {
        type: "file", id: "card-dialog-file", accept: ".json,application/json",
        change: async () => {
          const file = input.files?.[0];
          if (!file) return;
          const card = file.size > CardRecord.LARGEST_FILE ? null : CardRecord.fromFile(await file.text());
          if (!card) {
            said.textContent = Words.say("This file holds no card. Choose the file that was saved with “Put the card away”.");
          } else if (store.has(card.id)) {
            replace(card);
          } else {
            store.add(card);
            done();
          }
        },
      });
      return Dom.make("details", { class: "card-part" },
        Dom.make("summary", {}, Words.say("Take a card out of a file")),
        Dom.make("div", { class: "card-field" },
          Dom.make("label", { class: "label", for: "card-dialog-file" }, Words.say("File of the card")), input, said));
    }

    /** @param {Card} card */
    function replace(card) {
      show(Words.say("This device already has that card"),
        Dom.make("p", {}, Words.say("The card of {name} is here and in the file. Taking it out of the file replaces the one here.", { name: card.name })),
        Dom.make("div", { class: "buttons" },
          Dom.button(Words.say("Keep the one here"), () => { store.choose(card.id); done(); }, "first"),
          Dom.button(Words.say("Replace it with the file’s"), () => { store.add(card); done(); }, "second")));
    }

    function away() {
      const card = store.current();
      return card && Dom.make("div", { class: "card-part card-away" },
        Dom.button(Words.say("Put the card of {name} away", { name: card.name }), putAway, "second"));
    }

    function putAway() {
      const card = store.current();
      if (!card) return;
      const clear = Dom.button(Words.say("The file is there: clear the card from this device"), () => {
        store.clear(card.id);
        dialog.close();
      }, "second");
      clear.hidden = true;
      show(Words.say("Put the card away"),
        Dom.make("p", {}, Words.say("First save the card of {name} to a file. Then clear it from this device, so that nobody goes on with it by mistake.", { name: card.name })),
        Dom.make("div", { class: "buttons" },
          Dom.button(Words.say("Save the card to a file"), () => { saveToFile(); clear.hidden = false; }, "first"), clear));
    }

    function saveToFile() {
      const card = store.current();
      if (card) Files.save(`${Files.name(Words.say("card"), card.name, Dates.day(now()))}.json`, CardRecord.toFile(card));
    }

    return { whose, putAway, saveToFile };
  }

  /** @param {Element | null} from @returns {HTMLElement[]} the element and all that it stands in, short of the body */
  function outwards(from) {
    return from instanceof HTMLElement && from !== document.body ? [from, ...outwards(from.parentElement)] : [];
  }

  return { make };
})();
/** @typedef {ReturnType<typeof CardDialog.make>} CardSheet */
