// The demo site with a check that is sure to ask what a test is about.
import assert from "node:assert/strict";
import { CHECK } from "./course.mjs";
import { serve, SITE } from "./harness.mjs";

/** The site with a check whose every form asks a question of a kind: the cell that has one draws it first. @param {string} kind */
export function asking(kind) {
  const cell = CHECK.plan.cells.find((/** @type {any} */ each) => each.questions.some((/** @type {string} */ id) => CHECK.keys[id].kind === kind));
  assert.ok(cell, `the check can ask a ${kind} question`);
  const [id] = cell.questions.filter((/** @type {string} */ each) => CHECK.keys[each].kind === kind);
  const narrowed = JSON.stringify([id, ...cell.questions.filter((/** @type {string} */ each) => each !== id).slice(0, cell.draw - 1)]);
  return serve(SITE, (path, body) => path.endsWith("/check.html")
    ? body.toString("utf8").replace(`"questions":${JSON.stringify(cell.questions)}`, `"questions":${narrowed}`) : body);
}
