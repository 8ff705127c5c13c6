/** Who was watched, by whom, where and when: the lines of the sheet as boxes to write in. */
const PracticalWho = (() => {
  "use strict";

  const LONGEST = "200";

  /**
   * @param {string} slug @param {{write: (name: string, text: string) => void, take: (card: Card) => void, cards: Card[]}} host
   */
  function make(slug, host) {
    /** @type {Map<string, HTMLInputElement>} */
    const boxes = new Map();
    const groups = [
      group(Words.say("Person observed"), line("name", Words.say("Name"), "half"), line("number", Words.say("Number or id"), "half"),
        line("workplace", Words.say("Workplace")), fromCard(host)),
      group(Words.say("Unit, day and place"), line("unit", Words.say("Unit: make, mark or number")),
        line("day", Words.say("Day"), "half", "date"), line("place", Words.say("Place"), "half")),
      group(Words.say("Assessor"), line("assessor", Words.say("Name"), "half"), line("role", Words.say("Role"), "half"),
        line("basis", Words.say("What makes the assessor fit to judge this: training, experience, who named them"))),
      group(Words.say("Second observer, where there is one"), line("second", Words.say("Name"), "half"), line("second-role", Words.say("Role"), "half")),
    ];
    const part = Dom.make("div", { class: "watch-who screen-only" }, ...groups);

    /** @param {string} name @param {string} label @param {string} [width] @param {string} [type] */
    function line(name, label, width = "whole", type = "text") {
      const id = `${slug}-line-${name}`;
      const again = Dom.make("p", { class: "ask-again", id: `${id}-again` });
      const box = Dom.make("input", {
        id, type, maxlength: type === "text" && LONGEST, autocomplete: "off", "aria-describedby": again.id,
        input: () => {
          complain(name, "");
          host.write(name, box.value);
        },
      });
      boxes.set(name, box);
      return Dom.make("div", { class: `watch-line watch-${width}` }, Dom.make("label", { class: "label", for: id }, label), box, again);
    }

    /** @param {string} name @param {string} words */
    function complain(name, words) {
      const box = boxes.get(name);
      const again = document.getElementById(`${slug}-line-${name}-again`);
      if (!box || !again) return;
      again.textContent = words;
      if (words) box.setAttribute("aria-invalid", "true");
      else box.removeAttribute("aria-invalid");
    }

    return {
      part,
      complain,
      /** @param {string} name */
      focus: (name) => boxes.get(name)?.focus(),
      /** @param {Sheet} sheet @param {boolean} isLocked */
      show(sheet, isLocked) {
        for (const each of groups) each.disabled = isLocked;
        for (const [name, box] of boxes) {
          if (box.value !== sheet.lines[name]) box.value = sheet.lines[name];
        }
      },
    };
  }

  /** @param {string} title @param {...(Node | false)} lines */
  function group(title, ...lines) {
    return Dom.make("fieldset", { class: "watch-group" }, Dom.make("legend", { class: "label" }, title), ...lines);
  }

  /** Where this device holds cards, a name can be taken from one. @param {{take: (card: Card) => void, cards: Card[]}} host */
  function fromCard({ take, cards }) {
    return cards.length > 0 && Dom.make("details", { class: "watch-cards" },
      Dom.make("summary", {}, Words.say("Take the name from a card on this device")),
      Dom.make("div", { class: "watch-card-list" }, ...cards.map((card) =>
        Dom.make("button", { type: "button", class: "card-choice", click: () => take(card) },
          Dom.make("strong", {}, card.name), Dom.make("span", {}, card.workplace)))));
  }

  return { make };
})();
