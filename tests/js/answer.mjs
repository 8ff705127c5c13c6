/**
 * Answers one request a line for as long as it is asked: {"do": operation, "given": {...}} -> {"value": ...}.
 */
import { createInterface } from 'node:readline';
import { OPERATIONS } from './operations.mjs';

for await (const line of createInterface({ input: process.stdin })) {
  const request = JSON.parse(line);
  let reply;
  try {
    reply = { value: OPERATIONS[request.do](request.given) };
  } catch (error) {
    reply = { threw: String(error) };
  }
  process.stdout.write(`${JSON.stringify(reply)}\n`);
}
