/** What the card says about reading and checks: on the route card, in a module's list, at the end of a lesson. */
const RouteView = (() => {
  "use strict";

  /**
   * @param {Store} store
   * @param {CardSheet} sheet
   * @param {{now: () => Date, language: string}} tools
   */
  function mount(store, sheet, { now, language }) {
    const ends = Dom.all(document, "[data-read-end]").map(atLessonEnd);
    store.subscribe(show);
    show();

    function show() {
      for (const place of Dom.all(document, "td.mark[data-module]")) markModule(place);
      for (const place of Dom.all(document, "td.mark[data-check]")) markCheck(place);
      for (const place of Dom.all(document, "[data-lesson-mark]")) markLesson(place);
      for (const link of Dom.all(document, "a[data-next]")) nextStep(/** @type {HTMLAnchorElement} */ (link));
      for (const place of Dom.all(document, "[data-time-left]")) timeLeft(place);
      for (const end of ends) end();
    }

    /** @param {Element} place @returns {CourseEntry} */
    function entry(place) {
      return CardRecord.of(store.current(), PageData.leaf(place)?.dataset.course || "");
    }

    /** @param {string} words @param {string} day */
    function ink(words, day) {
      return Dom.make("span", { class: "ink-entry" }, words, " ", Dom.make("small", {}, Dates.short(day, language)));
    }

    /** @param {HTMLElement} place */
    function markModule(place) {
      const lessons = (place.dataset.lessons || "").split(" ").filter(Boolean);
      const days = lessons.map((lesson) => CardRecord.dayOf(entry(place), lesson)).filter(Boolean).sort();
      place.replaceChildren(days.length === lessons.length && lessons.length > 0
        ? ink(Words.say("Read"), days[days.length - 1])
        : Dom.make("span", { class: "mark-box" }, days.length > 0 && Words.say("{read} of {total}", { read: days.length, total: lessons.length })));
    }

    /** @param {HTMLElement} place */
    function markCheck(place) {
      const { checks, session } = entry(place);
      const passed = checks.filter((check) => check.passed).pop();
      const last = checks[checks.length - 1];
      if (passed) {
        place.replaceChildren(ink(Words.say("Passed"), passed.day), Dom.make("span", { class: "mark-note" }, Words.say("self-recorded, as this card says")));
      } else if (session) {
        place.replaceChildren(Dom.make("span", { class: "mark-box" }, Words.say("Begun")));
      } else if (last) {
        place.replaceChildren(ink(Words.say("Not yet"), last.day), Dom.make("span", { class: "mark-note" }, Words.say("self-recorded, as this card says")));
      } else {
        place.replaceChildren(Dom.make("span", { class: "mark-box" }));
      }
    }

    /** @param {HTMLElement} place */
    function markLesson(place) {
      const day = CardRecord.dayOf(entry(place), place.dataset.lessonMark || "");
      place.replaceChildren(...(day ? [ink(Words.say("Read"), day)] : []));
    }

    /** The first lesson that is not read, then the check. @param {HTMLAnchorElement} link */
    function nextStep(link) {
      const leaf = PageData.leaf(link);
      /** @type {{id: string, title: string, minutes: number, module: string, operation: number}[]} */
      const lessons = PageData.of(link).lessons || [];
      if (!leaf || lessons.length === 0) return;
      const { read, checks, session } = entry(link);
      const lesson = lessons.find((each) => !Object.hasOwn(read, each.id));
      const check = leaf.querySelector("[data-route-check]");
      const passed = checks.some((each) => each.passed);
      const target = session ? check : lesson ? leaf.querySelector(`[data-route-lesson="${lesson.id}"]`) : passed ? null : check;
      link.hidden = !target;
      for (const row of Dom.all(leaf, "[data-operation]")) {
        row.classList.toggle("is-next", Boolean(target) && row.dataset.operation === (target === check ? "check" : lesson?.module));
      }
      if (!target) return;
      link.setAttribute("href", target.getAttribute("href") || "");
      const isCheck = target === check;
      Dom.one(link, "[data-next-label]").textContent = isCheck
        ? (session ? Words.say("Go on with the check") : Words.say("Next: the check"))
        : Object.keys(read).length > 0 ? Words.say("Go on with") : Words.say("Start here");
      Dom.one(link, "[data-next-title]").textContent = isCheck || !lesson ? Dom.text(target) : lesson.title;
      Dom.one(link, "[data-next-where]").textContent = isCheck || !lesson ? Words.say("Nothing is timed")
        : Words.say("Operation {operation}, {minutes} min", { operation: lesson.operation, minutes: lesson.minutes });
    }

    /** Reading time of what is not yet read. @param {HTMLElement} place */
    function timeLeft(place) {
      /** @type {{id: string, minutes: number}[]} */
      const lessons = PageData.of(place).lessons || [];
      const { read } = entry(place);
      if (lessons.length === 0) return;
      place.dataset.whole ??= place.textContent || "";
      if (Object.keys(read).length === 0) {
        place.textContent = place.dataset.whole;
        return;
      }
      const minutes = lessons.filter((lesson) => !Object.hasOwn(read, lesson.id)).reduce((sum, lesson) => sum + lesson.minutes, 0);
      const hours = Math.floor(minutes / 60);
      place.textContent = minutes === 0 ? Words.say("All read")
        : hours === 0 ? Words.say("{minutes} min left", { minutes })
          : Words.say("{hours} h {minutes} min left", { hours, minutes: minutes % 60 });
    }

    /** @param {HTMLElement} place */
    function atLessonEnd(place) {
      const lesson = place.dataset.lesson || "";
      const course = PageData.leaf(place)?.dataset.course || "";
      const said = Dom.make("p", { class: "read-said", role: "status" });
      const enter = Dom.button("", () => {
        const record = () => store.edit((card) => CardRecord.readLesson(card, course, lesson, Dates.day(now())));
        if (store.current()) record();
        else sheet.whose(record);
      }, "first");
      place.replaceChildren(enter, said);
      return () => {
        const card = store.current();
        const day = CardRecord.dayOf(entry(place), lesson);
        enter.hidden = Boolean(day);
        enter.textContent = card ? Words.say("I have read this: enter it on the card") : Words.say("I have read this: whose card?");
        said.replaceChildren(...(day ? [ink(Words.say("Read"), day), ` ${Words.say("entered on the card of {name}", { name: card?.name || "" })}`] : []));
      };
    }
  }

  return { mount };
})();
