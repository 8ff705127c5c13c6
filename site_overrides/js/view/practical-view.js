/**
 * The sheet of a practical as a form: filled in on the screen, kept on the device, saved as a record. The paper under it
 * stays what it is; the parts of the form stand beside those of the sheet and show on screens only.
 */
const PracticalView = (() => {
  "use strict";

  /**
   * @param {HTMLElement} leaf
   * @param {{now: () => Date, storage: () => Storage, language: string}} tools
   */
  function mount(leaf, { now, storage, language }) {
    const root = Dom.one(leaf, ".practical");
    const slug = leaf.dataset.leaf || "";
    /** @type {PracticalFacts} */
    const facts = PageData.of(leaf).practical;
    const store = ObservationStore.open(storage, facts);
    const results = Dom.all(root, ".result-word").map((each) => Dom.text(each));
    const today = () => Dates.day(now());
    const instant = () => Dates.instant(now());
    const written = {
      day: (/** @type {string} */ day) => Dates.long(day, language),
      clock: (/** @type {string} */ moment) => new Intl.DateTimeFormat(language === "en" ? "en-GB" : language, { hour: "2-digit", minute: "2-digit" }).format(new Date(moment)),
    };
    let { sheet, record, isCarried } = opened();

    const keeps = Dom.one(root, ".practical-keeps");
    const notice = Dom.make("p", { class: "check-note screen-only", role: "status" });
    keeps.after(notice);
    const who = PracticalWho.make(slug, {
      write: (name, text) => step((now) => ObservationSheet.write(now, name, text)),
      cards: CardStore.open(storage).cards(),
      take: (card) => {
        for (const [name, text] of [["name", card.name], ["workplace", card.workplace], ["number", card.id]]) {
          step((now) => ObservationSheet.write(now, name, text));
          who.complain(name, "");
        }
        who.focus("name");
      },
    });
    Dom.one(root, ".practical-who").append(who.part);
    const conditions = PracticalSteps.conditions(root, slug, (index, isSo) => step((now) => ObservationSheet.confirm(now, facts, index, isSo, instant())));
    const steps = PracticalSteps.make(root, slug, facts, {
      mark: (id, change) => step((now) => ObservationSheet.mark(now, facts, id, change, instant())),
      toConditions: () => conditions.focus(),
    });
    const bar = PracticalResult.bar({
      stop: () => step((now) => ObservationSheet.stop(now, facts, instant())),
      goOn: () => step((now) => ObservationSheet.goOn(now, facts)),
      clock: written.clock,
    });
    Dom.one(root, ".observed").after(bar.part);
    const ended = PracticalResult.ended();
    Dom.one(root, ".practical-result > h2 + p").after(ended.part);
    const result = PracticalResult.make(root, slug, facts, {
      choose: (word) => step((now) => ObservationSheet.choose(now, facts, word)),
      write: (name, text) => step((now) => ObservationSheet.write(now, name, text)),
    });
    const saving = PracticalSaved.saving({ save, goTo });
    Dom.one(root, ".practical-result").append(result.part, saving.part);
    const saved = PracticalSaved.make(facts.draft, { change, next: () => ask("next"), fileName });
    const question = Dom.make("div", { class: "watch-question", hidden: true });
    const clear = Dom.button(Words.say("Clear this sheet"), () => ask("clear"), "quiet");
    const foot = Dom.make("section", { class: "watch-foot screen-only" }, question, clear);
    Dom.one(root, ".practical-result").after(saved.part, foot);

    show();
    addEventListener("storage", (event) => {
      if (event.key !== store.key) return;
      ({ sheet, record, isCarried } = opened());
      show();
    });
    root.classList.add("live");

    /** What this device keeps, or a blank sheet. @returns {{sheet: Sheet, record: string | null, isCarried: boolean}} */
    function opened() {
      const kept = store.read();
      if (!kept) return { sheet: ObservationSheet.blank(facts, today()), record: null, isCarried: false };
      if (ObservationSheet.fits(kept.sheet, facts)) return { ...kept, isCarried: false };
      return { sheet: ObservationSheet.onto(kept.sheet, facts, today()), record: null, isCarried: true };
    }

    /** @param {(sheet: Sheet) => Sheet} change */
    function step(change) {
      if (record !== null) return;
      sheet = change(sheet);
      saving.ask([]);
      keep();
    }

    function keep() {
      store.write({ sheet, record });
      show();
    }

    function show() {
      const isLocked = record !== null;
      who.show(sheet, isLocked);
      conditions.show(sheet, isLocked);
      steps.show(sheet, isLocked);
      bar.show(sheet, facts, isLocked);
      ended.show(sheet);
      result.show(sheet, isLocked);
      saving.show(sheet, facts, isLocked);
      saved.show(record, results);
      root.classList.toggle("is-saved", isLocked);
      root.classList.toggle("is-open", ObservationSheet.isSafe(sheet) || sheet.ended !== "" || ObservationSheet.count(sheet, facts).marked > 0);
      clear.hidden = !isLocked && !ObservationSheet.isBegun(sheet);
      keeps.textContent = store.isKept() ? Words.say("Nothing is sent. The sheet is kept on this device until you clear it.")
        : Words.say("Nothing is sent, and this browser keeps nothing: save the record before this page is closed.");
      const words = noticeWords(isLocked);
      notice.hidden = words === "";
      if (notice.textContent !== words) notice.textContent = words;
      const found = Observation.from(record);
      if (found && record !== null) PracticalPaper.fill(root, slug, found, Attempt.fingerprint(Sha256.utf8(record)), written);
      else PracticalPaper.empty(root);
    }

    /** @param {boolean} isLocked */
    function noticeWords(isLocked) {
      if (isLocked) return Words.say("This sheet is saved. Its fingerprint stands at its end.");
      return isCarried ? Words.say("This sheet was begun on an earlier state of the course. The names are still there; each condition and each step has to be marked again.") : "";
    }

    function save() {
      const missing = ObservationSheet.missing(sheet);
      saving.ask(missing);
      for (const name of ["name", "day", "assessor"]) who.complain(name, missing.includes(name) ? Words.say("This is needed.") : "");
      if (missing.length > 0) return goTo(missing[0]);
      const found = ObservationSheet.record(sheet, facts, instant());
      sheet = { ...sheet, started: found.started, ended: found.ended };
      record = Observation.text(found);
      isCarried = false;
      keep();
      Files.save(fileName(found, Attempt.fingerprint(Sha256.utf8(record))), record);
      saved.focus();
      saved.part.scrollIntoView({ block: "start" });
    }

    /** @param {string} name */
    function goTo(name) {
      if (name === "result") result.focus();
      else who.focus(name);
    }

    function change() {
      if (record === null) return;
      sheet = { ...sheet, replaces: Attempt.fingerprint(Sha256.utf8(record)) };
      record = null;
      keep();
      who.focus("name");
    }

    /** @param {ObservationRecord} found @param {string} fingerprint */
    function fileName(found, fingerprint) {
      return `${Files.name(Words.say("practical"), found.practical, found.person.name, fingerprint.slice(0, 9))}.json`;
    }

    /** Nothing goes from the device without a question. @param {"next" | "clear"} why */
    function ask(why) {
      const heading = Dom.make("h2", { tabindex: "-1" }, why === "next" ? Words.say("A blank sheet for the next person?") : Words.say("Clear this sheet?"));
      question.replaceChildren(heading,
        Dom.make("p", {}, record !== null
          ? Words.say("The record goes from this device. Go on only when it is in a file or its codes are read, and its fingerprint is on the paper.")
          : Words.say("What stands on it goes from this device, and is not saved anywhere.")),
        Dom.make("div", { class: "buttons" },
          Dom.button(Words.say("Keep it"), () => answer(null), "first"),
          Dom.button(why === "next" ? Words.say("It is saved: next person") : Words.say("Clear it"), () => answer(why), "second")));
      question.hidden = false;
      clear.hidden = true;
      Dom.focus(heading);
    }

    /** @param {"next" | "clear" | null} what */
    function answer(what) {
      question.hidden = true;
      question.replaceChildren();
      if (what === null) {
        show();
        return clear.focus();
      }
      sheet = what === "next" ? ObservationSheet.next(sheet, facts, today()) : ObservationSheet.blank(facts, today());
      record = null;
      isCarried = false;
      saving.ask([]);
      steps.shutNotes();
      if (what === "clear") {
        store.clear();
        show();
      } else keep();
      scrollTo(0, 0);
      who.focus("name");
    }
  }

  return { mount };
})();
