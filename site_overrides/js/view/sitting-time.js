/** How much of the time has gone, said calmly: it never ends anything, and the record holds when somebody began and handed in. */
const SittingTime = (() => {
  "use strict";

  const EVERY = 15_000;

  /**
   * @param {string} started a moment as the record states it
   * @param {number} minutes allowed, extra time included
   * @param {() => Date} now
   */
  function start(started, minutes, now) {
    const words = Dom.make("p", { class: "sitting-time-words" });
    const track = Dom.make("div", { class: "sitting-time-track", "aria-hidden": "true" });
    const fill = Dom.make("div", { class: "sitting-time-fill" });
    track.append(fill);
    const element = Dom.make("div", { class: "sitting-time" }, Dom.make("p", { class: "label" }, Words.say("Time")), words, track);
    const timer = setInterval(show, EVERY);
    show();

    function show() {
      const gone = Math.max(0, Math.floor((now().getTime() - Date.parse(started)) / 60_000));
      const isOver = gone >= minutes;
      words.textContent = isOver
        ? Words.say("The {minutes} min are over. Nothing is cut off: tell the assessor, and finish as you are told.", { minutes })
        : Words.say("{gone} of {minutes} min", { gone, minutes });
      element.classList.toggle("is-over", isOver);
      fill.style.inlineSize = `${Math.min(100, Math.round((gone / minutes) * 100))}%`;
    }

    return { element, stop: () => clearInterval(timer) };
  }

  return { start };
})();
