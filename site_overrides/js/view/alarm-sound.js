/** The alarms of a bench as sound. Silent until somebody has switched sound on; nothing is loaded, the tones are made here. */
const AlarmSound = (() => {
  "use strict";

  const LOUDNESS = 0.12;
  /** Hertz and seconds: two tones that alternate, and one slow one. @type {Record<string, { tones: number[], each: number, gap: number }>} */
  const PATTERNS = {
    "low-flow": { tones: [880, 660], each: 0.25, gap: 0 },
    "low-battery": { tones: [520], each: 0.4, gap: 1.2 },
  };

  /** @type {AudioContext | null} */
  let context = null;
  let timer = 0;
  let playing = "";
  /** Which bench has the sound; a second one takes it over. @type {object | null} */
  let owner = null;

  /** Whether this browser can make tones. */
  function possible() {
    return typeof AudioContext === "function";
  }

  /** @param {object} bench @param {string} alarm the name of a pattern, or empty for silence */
  function play(bench, alarm) {
    if (alarm === "" && owner !== bench) return;
    if (alarm === playing && owner === bench) return;
    stop();
    if (alarm === "") return;
    owner = bench;
    playing = alarm;
    context ??= new AudioContext();
    void context.resume();
    beep(PATTERNS[alarm], 0);
  }

  /** @param {{ tones: number[], each: number, gap: number }} pattern @param {number} number */
  function beep(pattern, number) {
    if (!context) return;
    const tone = context.createOscillator();
    const loudness = context.createGain();
    const { currentTime } = context;
    const end = currentTime + pattern.each;
    tone.frequency.value = pattern.tones[number % pattern.tones.length];
    loudness.gain.setValueAtTime(0, currentTime);
    loudness.gain.linearRampToValueAtTime(LOUDNESS, currentTime + 0.02);
    loudness.gain.setValueAtTime(LOUDNESS, end - 0.03);
    loudness.gain.linearRampToValueAtTime(0, end);
    tone.connect(loudness).connect(context.destination);
    tone.start();
    tone.stop(end);
    timer = setTimeout(() => beep(pattern, number + 1), (pattern.each + pattern.gap) * 1000);
  }

  function stop() {
    clearTimeout(timer);
    playing = "";
    owner = null;
  }

  return Object.freeze({ possible, play });
})();
