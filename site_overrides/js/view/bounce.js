/**
 * A glove bounces: one tap arrives as two. Where the first has put another screen in place, the second would fall on whatever
 * stands there now, an answer for one. It is dropped: too soon after the screen was turned, and on the same spot.
 */
const Bounce = (() => {
  "use strict";

  /** Milliseconds after the turn; nobody has read the new screen by then. */
  const SOON = 450;
  /** CSS pixels from the first tap; wider than a gloved finger rolls, narrower than the way to another button. */
  const NEAR = 40;
  /** The last tap that was let through, and the one by which the screen was turned. @type {{x: number, y: number} | null} */
  let last = null;
  /** @type {{x: number, y: number} | null} */
  let turning = null;
  let turnedAt = -SOON;

  document.addEventListener("click", (event) => {
    // A key presses without a place.
    if (event.detail === 0) {
      last = null;
      return;
    }
    const { clientX: x, clientY: y } = event;
    if (turning && event.timeStamp - turnedAt < SOON && Math.hypot(x - turning.x, y - turning.y) < NEAR) {
      event.preventDefault();
      event.stopImmediatePropagation();
    } else last = { x, y };
  }, { capture: true });

  /** To be called when a screen takes the place of another. */
  function turned() {
    turning = last;
    turnedAt = performance.now();
  }

  return { turned };
})();
