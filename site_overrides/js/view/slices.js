/** Work that can wait a moment, done in short slices between which the browser can paint and answer a tap. */
const Slices = (() => {
  "use strict";

  /** A slice begins no further step after so many milliseconds; a step is meant to be shorter than that on a slow phone. */
  const LONGEST = 8;

  /** @type {(() => void)[]} */
  const steps = [];
  const channel = new MessageChannel();
  let asked = false;
  channel.port1.onmessage = run;

  /** Does the steps later, in the order in which they were given. A step must not throw. @param {...() => void} later */
  function add(...later) {
    steps.push(...later);
    ask();
  }

  /** A message, because a timer waits the longer the more often it is set, and not every browser tells when it is idle. */
  function ask() {
    if (asked || steps.length === 0) return;
    asked = true;
    channel.port2.postMessage(null);
  }

  function run() {
    asked = false;
    const end = performance.now() + LONGEST;
    do steps.shift()?.(); while (steps.length > 0 && performance.now() < end);
    ask();
  }

  return { add };
})();
