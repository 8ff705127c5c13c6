/** The time there is to act: in words, as a bar, and told aloud only where it is needed. It stands still while nobody sees it. */
const DrillClock = (() => {
  "use strict";

  const TICK = 200;
  /** So many seconds before the end it is said that time runs out, where there were more than twice as many. */
  const SOON = 5;

  /**
   * @param {number} seconds
   * @param {{tell: (words: string) => void, up: () => void}} host
   * @returns {{element: HTMLElement, stop: () => void}}
   */
  function start(seconds, { tell, up }) {
    const words = Dom.make("span", { class: "clock-words" });
    const bar = Dom.make("progress", { class: "clock-bar", max: String(seconds), "aria-hidden": "true" });
    const element = Dom.make("div", { class: "clock" }, words, bar);
    let left = seconds * 1000;
    let last = performance.now();
    let isTold = seconds <= 2 * SOON;
    const timer = setInterval(tick, TICK);
    show();

    function tick() {
      const now = performance.now();
      const passed = Math.min(now - last, 1000);
      last = now;
      if (!element.isConnected) return stop();
      if (document.hidden || element.getClientRects().length === 0) return undefined;
      left -= passed;
      if (left <= 0) {
        stop();
        return up();
      }
      if (!isTold && left <= SOON * 1000) {
        isTold = true;
        tell(inWords(SOON));
      }
      return show();
    }

    function show() {
      const whole = Math.ceil(left / 1000);
      element.classList.toggle("is-soon", whole <= SOON);
      words.textContent = inWords(whole);
      bar.value = left / 1000;
    }

    function stop() {
      clearInterval(timer);
    }

    return { element, stop };
  }

  /** @param {number} seconds */
  function inWords(seconds) {
    return seconds === 1 ? Words.say("1 second left") : Words.say("{seconds} seconds left", { seconds });
  }

  return { start, inWords };
})();
