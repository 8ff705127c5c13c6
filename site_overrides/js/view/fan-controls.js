/**
 * The controls of a fan bench: a row of choices where there are few places, else a slider between two step buttons.
 * @typedef {{ of: string, label: string, start: number, places: string[], share: number[] }} FanControlData
 */
const FanControls = (() => {
  "use strict";

  /** So many places at most stand side by side. */
  const SIDE_BY_SIDE = 3;

  /**
   * @param {FanControlData} control
   * @param {string} name for ids and the names of fields
   * @param {(place: number) => void} move
   * @returns {{ element: HTMLElement, show: (place: number) => void, lock: () => void }}
   */
  function make(control, name, move) {
    return control.places.length <= SIDE_BY_SIDE ? choices(control, name, move) : slider(control, name, move);
  }

  /** @param {FanControlData} control @param {string} name @param {(place: number) => void} move */
  function choices(control, name, move) {
    const boxes = control.places.map((place, index) => Dom.make("input", {
      type: "radio", name: `${name}-choice`, value: String(index), change: () => move(index),
    }));
    const element = Dom.make("fieldset", { class: "fan-control", "data-control": control.of },
      Dom.make("legend", { class: "label" }, control.label),
      Dom.make("div", { class: "fan-choices" }, ...boxes.map((box, index) =>
        Dom.make("label", { class: "fan-choice" }, box, Dom.make("span", {}, control.places[index])))));
    return {
      element,
      /** @param {number} place */
      show(place) { boxes.forEach((box, index) => { box.checked = index === place; }); },
      lock() { for (const box of boxes) box.disabled = true; },
    };
  }

  /** @param {FanControlData} control @param {string} name @param {(place: number) => void} move */
  function slider(control, name, move) {
    const last = control.places.length - 1;
    const value = Dom.make("output", { class: "fan-place", for: name });
    const range = Dom.make("input", {
      type: "range", id: name, class: "fan-range", min: "0", max: String(last), step: "1", input: () => move(Number(range.value)),
    });
    /** @param {number} by @param {string} sign @param {string} words */
    const step = (by, sign, words) => Dom.make("button", {
      type: "button", class: "fan-step", "aria-label": words, click: () => move(Number(range.value) + by),
    }, sign);
    const less = step(-1, "−", Words.say("{control}: one step down", { control: control.label }));
    const more = step(1, "+", Words.say("{control}: one step up", { control: control.label }));
    const element = Dom.make("div", { class: "fan-control", "data-control": control.of },
      Dom.make("div", { class: "fan-control-head" }, Dom.make("label", { class: "label", for: name }, control.label), value),
      Dom.make("div", { class: "fan-slide" }, less, range, more),
      Dom.make("div", { class: "fan-ends", "aria-hidden": "true" },
        Dom.make("span", {}, control.places[0]), Dom.make("span", {}, control.places[last])));
    return {
      element,
      /** @param {number} place */
      show(place) {
        range.value = String(place);
        range.setAttribute("aria-valuetext", control.places[place]);
        value.textContent = control.places[place];
        // Not disabled: the focus of whoever has just pressed it must stay where it is.
        less.setAttribute("aria-disabled", String(place === 0));
        more.setAttribute("aria-disabled", String(place === last));
      },
      lock() { for (const each of [range, less, more]) each.disabled = true; },
    };
  }

  return Object.freeze({ make });
})();
