/** setting: the bench above the question is what is answered with. Its script is there on every page that shows a bench. */
const ControlBench = (() => {
  "use strict";

  /** @param {HTMLElement} section @param {ControlHost} host @returns {Control} */
  function mount(section, host) {
    const bench = BenchesOnPage.mount(Dom.one(section, ".bench"), host.changed);
    return {
      arrange() {},
      read: () => bench?.read() ?? null,
      write(raw) {
        bench?.write(raw && typeof raw === "object" ? /** @type {Record<string, number>} */ (raw) : null);
      },
      draft: () => null,
      missing: () => Words.say("Set the bench first."),
      judge() {},
      unjudge() {},
    };
  }

  return { mount };
})();
