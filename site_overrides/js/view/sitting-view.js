/**
 * A sitting on this device, from the passphrase to the record: typed in, opened, answered, handed in.
 * @typedef {{person: {id: string, name: string, workplace: string}, form: FormLine[], avoid: string[], minutes: number, oral: boolean}} SittingPlace
 * @typedef {{sitting: string, assessor: string, places: Record<string, SittingPlace>, facts: Record<string, any>,
 *   questions: Record<string, string>, drawings: string, benches: Record<string, any>, drills: number}} SittingContent
 */
const SittingView = (() => {
  "use strict";

  /**
   * @param {HTMLElement} desk
   * @param {{record: any, beginnings: ReadonlySet<string>, now: () => Date, storage: () => Storage,
   *   subtle: SubtleCrypto | undefined, language: string}} tools
   */
  function mount(desk, { record, beginnings, now, storage, subtle }) {
    const about = Dom.one(desk, ".sitting-start");
    const entry = Dom.one(about, "[data-sitting-entry]");
    const stage = Dom.make("div", { class: "sitting-stage", hidden: true });
    desk.append(stage);
    /** What is open on this page, and under which passphrase: for the next person. @type {{content: SittingContent, form: string} | null} */
    let opened = null;
    /** @type {ReturnType<typeof SittingStore.open> | null} */
    let store = null;
    /** @type {{stop: () => void} | null} */
    let clock = null;
    // Where the device keeps nothing, leaving the page by a slip of the hand would lose it, after handing in no less.
    window.addEventListener("beforeunload", (event) => { if (store?.isUnkept()) event.preventDefault(); });
    showStart();

    function showStart() {
      clock?.stop();
      clock = null;
      stage.hidden = true;
      stage.replaceChildren();
      about.hidden = false;
      entry.replaceChildren(typed());
      Bounce.turned();
    }

    /** @param {...(Node | false)} parts */
    function stand(...parts) {
      about.hidden = true;
      stage.hidden = false;
      stage.replaceChildren(.../** @type {Node[]} */ (parts.filter(Boolean)));
      Bounce.turned();
    }

    /** The form in which passphrase and ticket are typed. */
    function typed() {
      const said = Dom.make("p", { class: "ask-again", id: "sitting-said", role: "status" });
      const passphrase = box("sitting-passphrase", { autocapitalize: "none" });
      const ticket = box("sitting-ticket", { autocapitalize: "characters" });
      const go = Dom.make("button", { type: "submit", class: "button" }, Words.say("Open"));
      const form = Dom.make("form", { class: "sitting-entry", novalidate: true, submit: (event) => { event.preventDefault(); void submit(); } },
        !opened && field(passphrase, Words.say("Passphrase"), Words.say("The assessor reads it out: six words. The first four letters of each are enough.")),
        field(ticket, Words.say("Ticket"), Words.say("It stands on your slip: two groups of five.")), said, go);

      async function submit() {
        const words = opened ? null : SittingTyped.passphrase(passphrase.value, beginnings);
        const slip = SittingTyped.ticket(ticket.value);
        if (words && words.count === 0) return refuse(passphrase, Words.say("Type the passphrase first."));
        if (words && words.unknown > 0) return refuse(passphrase, Words.say("Word {number}, “{word}”, is not one of the words used here. Ask the assessor to say it again.", { number: words.unknown, word: words.word }));
        // Said at once: opening with it in vain would take an old phone a minute.
        if (words && words.count !== SittingTyped.PASSPHRASE_WORDS) return refuse(passphrase, Words.say("The passphrase has six words; these are {count}. Ask the assessor to say it again.", { count: words.count }));
        if (slip.problem !== "") return refuse(ticket, ticketWords(slip));
        go.disabled = true;
        said.classList.add("is-under-way");
        said.textContent = Words.say("Opening. This takes a moment; on an older device up to a minute.");
        try {
          if (words) {
            const content = /** @type {SittingContent} */ (await SittingSeal.open(record, words.form, subtle));
            opened = { content, form: words.form };
            store = SittingStore.open(storage, content.sitting);
            prepare(content);
          }
        } catch (error) {
          go.disabled = false;
          if (!(error instanceof SittingSeal.NotOpened)) console.error(error);
          return refuse(passphrase, Words.say("That passphrase does not open it. Compare each word with the assessor, and their order."));
        }
        go.disabled = false;
        return find(slip.ticket, (problem) => refuse(ticket, problem));
      }

      /** @param {HTMLInputElement} input @param {string} words */
      function refuse(input, words) {
        for (const each of [passphrase, ticket]) each.removeAttribute("aria-invalid");
        input.setAttribute("aria-invalid", "true");
        said.classList.remove("is-under-way");
        said.textContent = words;
        input.focus();
      }
      return form;
    }

    /** @param {string} ticket @param {(problem: string) => void} refuse */
    function find(ticket, refuse) {
      if (!opened || !store) return;
      const name = Sha256.hex(`${opened.content.sitting}\n${ticket}`);
      const place = Object.hasOwn(opened.content.places, name) ? opened.content.places[name] : null;
      if (!place) return refuse(Words.say("No place of this sitting has the ticket {ticket}. Compare it with the slip, letter by letter.", { ticket }));
      const kept = store.read(name);
      if (kept && "record" in kept) return handedIn(name, kept.record, place);
      return ask(name, ticket, place, kept?.session ?? null);
    }

    /** @param {string} name @param {string} ticket @param {SittingPlace} place @param {SessionState | null} session */
    function ask(name, ticket, place, session) {
      const done = session ? session.form.length - CheckSession.unanswered(session).length : 0;
      const heading = Dom.make("h2", { tabindex: "-1" }, Words.say("Is this you?"));
      stand(Dom.make("section", { class: "sitting-you" }, heading,
        Dom.make("p", { class: "sitting-name" }, place.person.name),
        place.person.workplace !== "" && Dom.make("p", { class: "label" }, place.person.workplace),
        Dom.make("ul", { class: "check-terms" },
          Dom.make("li", {}, Words.say("{total} questions, {minutes} minutes. The time is shown and cuts nothing off.", { total: place.form.length, minutes: place.minutes })),
          place.oral && Dom.make("li", {}, Words.say("The questions are read out to you. The assessor knows.")),
          session && Dom.make("li", {}, Words.say("Begun on this device: {done} of {total} answered. Nothing is lost.", { done, total: session.form.length })),
          Dom.make("li", {}, Words.say("If the name is not yours, do not begin: call the assessor."))),
        Dom.make("div", { class: "buttons" },
          Dom.button(session ? Words.say("Yes, go on") : Words.say("Yes, begin"), () => run(name, ticket, place), "first"),
          Dom.button(Words.say("No, that is not me"), showStart, "second"))));
      Dom.focus(heading);
    }

    /** @param {string} name @param {string} ticket @param {SittingPlace} place */
    function run(name, ticket, place) {
      const { content } = /** @type {{content: SittingContent}} */ (opened);
      const keeper = /** @type {NonNullable<typeof store>} */ (store);
      const kept = keeper.read(name);
      if (kept && "record" in kept) return handedIn(name, kept.record, place);
      let state = kept?.session ?? CheckSession.begin({
        course: record.course, version: record.version, digest: record.digest, profile: record.profile, language: record.language,
        seed: ticket, avoid: place.avoid, form: place.form, started: Dates.instant(now()),
      });
      /** @returns {KeptPlace} */
      const latest = () => keeper.read(name) ?? { session: state };
      keeper.write(name, { session: state });
      clock?.stop();
      const time = clock = SittingTime.start(state.started, place.minutes, now);
      const paper = Dom.make("div", { class: "check" });
      const unkept = Dom.make("p", { class: "check-note sitting-unkept", hidden: keeper.isKept(name) },
        Words.say("This browser keeps nothing on the device: do not reload or close this page before you have handed in."));
      stand(time.element, unkept, paper);
      CheckRun.make(paper, {
        facts: /** @type {CheckFacts} */ (/** @type {unknown} */ ({ keys: content.facts })),
        owner: place.oral ? Words.say("{name}, read out", { name: place.person.name }) : place.person.name,
        question: (id) => question(content.questions[id]),
        read: () => state,
        write(step) {
          // Another window may have gone on with this place, or handed it in: its answers are not written over.
          const found = latest();
          if ("record" in found) return handedIn(name, found.record, place);
          state = step(found.session);
          keeper.write(name, { session: state });
          unkept.hidden = keeper.isKept(name);
        },
        leave: showStart,
        handIn() {
          const found = latest();
          if ("record" in found) return handedIn(name, found.record, place);
          const text = Canonical.write(CheckSession.attempt(found.session, place.person, Dates.instant(now())));
          keeper.write(name, { record: text });
          handedIn(name, text, place);
        },
      }).show(state.at);
    }

    /** @param {string} name of the place @param {string} text @param {SittingPlace} place */
    function handedIn(name, text, place) {
      clock?.stop();
      clock = null;
      const done = SittingHandedIn.make(
        { record: text, name: place.person.name, isKept: store?.isKept(name) ?? false, title: record.title },
        { nextPerson: showStart, clear });
      stand(done.page);
      Dom.focus(done.heading);
      window.scrollTo(0, 0);
    }

    function clear() {
      const { all, handedIn: finished } = store?.count() ?? { all: 0, handedIn: 0 };
      const heading = Dom.make("h2", { tabindex: "-1" }, Words.say("Clear this device?"));
      stand(Dom.make("section", { class: "sitting-you" }, heading,
        Dom.make("p", {}, Words.say("Kept here: {handed} handed in, {open} begun. Clear only when each record is with the employer: saved to a file or read as codes.", { handed: finished, open: all - finished })),
        Dom.make("div", { class: "buttons" },
          Dom.button(Words.say("Keep them"), showStart, "first"),
          Dom.button(Words.say("Every record is taken in: clear"), () => {
            store?.clear();
            opened = null;
            store = null;
            for (const each of Dom.all(desk, ".drawn-once")) each.remove();
            BenchesOnPage.receive({});
            showStart();
          }, "second"))));
      Dom.focus(heading);
    }

    /** @param {SittingContent} content */
    function prepare(content) {
      BenchesOnPage.receive(content.benches);
      for (const each of Dom.all(desk, ".drawn-once")) each.remove();
      desk.append(...parsed(content.drawings));
    }
  }

  /** @param {string} html @returns {HTMLElement} */
  function question(html) {
    return /** @type {HTMLElement} */ (parsed(html).find((node) => node instanceof HTMLElement));
  }

  /**
   * HTML that was sealed with the page: authenticated, and parsed in a document of its own, where nothing runs or loads.
   * @param {string} html
   */
  function parsed(html) {
    const inert = new DOMParser().parseFromString(html, "text/html");
    return [...inert.body.childNodes].map((node) => document.adoptNode(node));
  }

  /** @param {string} id @param {Record<string, string>} more */
  function box(id, more) {
    return Dom.make("input", { id, class: "sitting-box", type: "text", autocomplete: "off", spellcheck: "false", autocorrect: "off",
      "aria-describedby": `${id}-hint sitting-said`, ...more });
  }

  /** @param {HTMLInputElement} input @param {string} label @param {string} hint */
  function field(input, label, hint) {
    return Dom.make("div", { class: "sitting-field" }, Dom.make("label", { class: "label", for: input.id }, label), input,
      Dom.make("p", { class: "hint", id: `${input.id}-hint` }, hint));
  }

  /** @param {{problem: string, sign: string, length: number}} slip */
  function ticketWords({ problem, sign, length }) {
    if (length === 0) return Words.say("Type the ticket first.");
    switch (problem) {
      case "looks-alike": return Words.say("No ticket has “{sign}” in it, because it is taken for another sign. Look at the slip again.", { sign });
      case "odd": return Words.say("No ticket has “{sign}” in it. Look at the slip again.", { sign });
      default: return Words.say("A ticket has ten signs; these are {length}.", { length });
    }
  }

  return { mount };
})();
