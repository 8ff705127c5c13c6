/** The open check from the first look to the certificate; everything it knows stands on the card. */
const CheckView = (() => {
  "use strict";

  /**
   * @param {HTMLElement} desk the element with `data-check-desk`
   * @param {Store} store
   * @param {CardSheet} sheet
   * @param {{now: () => Date, newSeed: () => string, language: string}} tools
   */
  function mount(desk, store, sheet, { now, newSeed, language }) {
    const leaf = PageData.leaf(desk);
    const facts = PageData.of(desk).check;
    if (!leaf || !facts) return;
    const root = leaf;
    const course = facts.course;
    const start = Dom.one(desk, ".check-start");
    const begin = Dom.one(start, "[data-check-begin]");
    const stage = Dom.make("div", { class: "check-stage", hidden: true });
    desk.append(stage);
    /** Whose check is on the stage; empty while the start is shown. */
    let onStage = "";
    /** The seed of the check that runs on the stage; empty where none runs. */
    let running = "";
    store.subscribe(() => {
      const isOver = running !== "" && entry().session?.seed !== running;
      if (onStage === "" || store.current()?.id !== onStage || isOver) showStart();
    });
    showStart();

    function entry() {
      return CardRecord.of(store.current(), course);
    }

    /** @param {string} id a fresh copy of a question of the page */
    function question(id) {
      const template = /** @type {HTMLTemplateElement} */ (Dom.one(root, `template[data-check-question="${id}"]`));
      return Dom.one(/** @type {DocumentFragment} */ (template.content.cloneNode(true)), ".question");
    }

    /** A line of the card that says something else than its answers earn is put right before it is shown; the route card shows it too. */
    function putRight() {
      const { checks } = entry();
      if (HandedIn.trued(checks, facts) === checks) return;
      store.edit((card) => CardRecord.withChecks(card, course, HandedIn.trued(CardRecord.of(card, course).checks, facts)));
    }

    function showStart() {
      putRight();
      onStage = running = "";
      stage.hidden = true;
      stage.replaceChildren();
      start.hidden = false;
      begin.replaceChildren(...startParts());
    }

    /** @returns {Node[]} */
    function startParts() {
      const card = store.current();
      if (!card) return [Dom.make("p", {}, Words.say("The check is entered on a card, and the certificate carries its name.")), Dom.button(Words.say("Whose card?"), () => sheet.whose(), "first")];
      const { session, checks } = entry();
      return [
        ...(session ? underWay(session) : [Dom.button(checks.length > 0 ? Words.say("Take the check again") : Words.say("Begin the check"), beginNew, "first")]),
        ...(checks.length > 0 ? [earlier(checks)] : []),
      ];
    }

    /** @param {SessionState} session @returns {Node[]} */
    function underWay(session) {
      if (!CheckSession.fits(session, facts.digest, facts.plan)) {
        // Two steps, as for a card put away: a file that the browser did not save must not take the answers with it.
        const again = Dom.button(Words.say("The file is there: start the check again"), beginNew, "second");
        again.hidden = true;
        return [Dom.make("p", { class: "check-note" },
          Words.say("The course was changed since you began. What you answered belongs to the earlier state and is not marked here. Save it to a file; then the check starts again.")),
        Dom.button(Words.say("Save what was answered to a file"), () => {
          const card = store.current();
          if (card) saveRecord(CheckSession.attempt(session, card, Dates.instant(now())));
          again.hidden = false;
        }, "first"), again];
      }
      const done = session.form.length - CheckSession.unanswered(session).length;
      return [Dom.make("p", {}, Words.say("Begun: {done} of {total} answered.", { done, total: session.form.length })),
        Dom.button(Words.say("Go on with question {number}", { number: session.at + 1 }), () => run(session.at), "first")];
    }

    /** @param {CheckEntry[]} checks */
    function earlier(checks) {
      return Dom.make("div", { class: "check-earlier" }, Dom.make("h3", { class: "label" }, Words.say("Handed in with this card")),
        Dom.make("ul", {}, ...checks.map((check, index) => Dom.make("li", {},
          Dom.button(Words.say("{day}: {result}", {
            day: Dates.short(check.day, language), result: check.passed ? Words.say("passed, self-recorded") : Words.say("not yet passed"),
          }), () => showResult(index), "second")))));
    }

    function beginNew() {
      const seed = newSeed();
      store.edit((card) => {
        const avoid = CardRecord.seenQuestions(card, course);
        return CardRecord.withSession(card, course, CheckSession.begin({
          course, version: facts.version, digest: facts.digest, profile: facts.profile, language: facts.language,
          seed, avoid, form: Draw.form(facts.plan, seed, avoid), started: Dates.instant(now()),
        }));
      });
      run(0);
    }

    /** @param {number} index */
    function run(index) {
      const card = store.current();
      const { session } = entry();
      if (!card || !session) return;
      const { seed } = session;
      let last = session;
      onStage = card.id;
      running = seed;
      start.hidden = true;
      stage.hidden = false;
      CheckRun.make(stage, {
        facts, question, handIn, owner: card.name,
        read: () => last = sessionOf(seed) || last,
        write: (step) => store.edit((each) => CardRecord.stepSession(each, course, seed, step)),
        leave: () => { showStart(); Dom.focus(begin); },
      }).show(index);
    }

    /** The check with that seed as the card holds it; null once another window has handed it in. @param {string} seed */
    function sessionOf(seed) {
      const { session } = entry();
      return session?.seed === seed ? session : null;
    }

    function handIn() {
      // What another window answered meanwhile is handed in too; where it handed in itself, the start is shown.
      store.refresh();
      const card = store.current();
      const session = sessionOf(running);
      if (!card || !session) return;
      const moment = now();
      const record = CheckSession.attempt(session, card, Dates.instant(moment));
      const result = HandedIn.mark(facts, record);
      const line = {
        ended: record.ended, day: Dates.day(moment), marks: result.marks, of: result.of, percent: result.percent, passed: result.passed,
        version: record.version, digest: record.digest, fingerprint: Attempt.fingerprint(Attempt.bytes(record)),
        questions: record.form.map((each) => each.q), attempt: Canonical.write(record),
      };
      running = "";
      store.edit((each) => CardRecord.handIn(each, course, line));
      showResult(entry().checks.length - 1);
    }

    /** @param {number} index among the checks of the card */
    function showResult(index) {
      const card = store.current();
      const line = entry().checks[index];
      if (!card || !line) return;
      onStage = card.id;
      const check = HandedIn.read(line, index + 1, facts);
      const template = /** @type {HTMLTemplateElement} */ (Dom.one(root, "template[data-check-certificate]"));
      const certificate = CertificateView.make(template, check, facts, language);
      stage.replaceChildren(CheckResultView.make(root, check, {
        facts, question, certificate,
        save: () => saveText(line.attempt, check.attempt), retake: beginNew, back: () => { showStart(); Dom.focus(begin); },
      }));
      start.hidden = true;
      stage.hidden = false;
      if (certificate) CertificateView.fit(certificate);
      const heading = Dom.one(stage, ".result-title");
      Dom.focus(heading);
      heading.scrollIntoView({ block: "start" });
    }

    /** @param {AttemptRecord} record */
    function saveRecord(record) {
      saveText(Canonical.write(record), record);
    }

    /** @param {string} text canonical, saved without a line end @param {AttemptRecord} record */
    function saveText(text, record) {
      Files.save(`${Files.name(Words.say("attempt"), record.card.name, record.course, record.ended.slice(0, 10))}.json`, text);
    }
  }

  return { mount };
})();
