/**
 * What the shared vectors and the two-languages test ask of the scripts, by name. Twin of tests/vectors/operations.py.
 */
import { loadPure } from './load.mjs';

const { Assembly, Attempt, BenchTable, Calculate, Canonical, Draw, Mark, Numbers, Observation, Observed, RecordCodes, Result, Sha256, SittingTyped, Stream } = loadPure();

/**
 * What `act` returns, or the one-word reason for which it refused.
 * @param {() => unknown} act
 */
function orReason(act) {
  try {
    return { value: act() };
  } catch (error) {
    if (error instanceof Canonical.Refused) return { refused: /** @type {any} */ (error).reason };
    throw error;
  }
}

/**
 * What `act` returns, or that it refused; the reasons differ between the languages when reading.
 * @param {() => unknown} act
 */
function orRefused(act) {
  const found = orReason(act);
  return 'refused' in found ? { refused: true } : found;
}

/** @type {Record<string, (given: any) => unknown>} */
export const OPERATIONS = {
  sha256: ({ text }) => Sha256.hex(text),
  'sha256-bytes': ({ hex }) => Sha256.hex(Uint8Array.from(Buffer.from(hex, 'hex'))),
  stream: ({ state, count }) => {
    const run = new Stream.Run(state);
    return Array.from({ length: count }, () => run.next());
  },
  below: ({ seed, question, purpose, bounds }) => {
    const run = Stream.of(seed, question, purpose);
    return bounds.map((/** @type {number} */ bound) => run.below(bound));
  },
  'below-from-state': ({ state, bounds }) => {
    const run = new Stream.Run(state);
    return bounds.map((/** @type {number} */ bound) => run.below(bound));
  },
  'shuffle-from-digest': ({ seed, things }) => new Stream.Run(Sha256.words(Sha256.utf8(seed))).shuffled(things),
  rank: ({ seed, questions, count }) =>
    questions
      .slice()
      .sort((/** @type {string} */ a, /** @type {string} */ b) => (Stream.rank(seed, a) < Stream.rank(seed, b) ? -1 : 1))
      .slice(0, count),
  typed: ({ text }) => {
    const { problem, read } = Numbers.readTyped(text);
    return { problem, read };
  },
  mark: ({ key, variant, answer }) => Mark.mark(key, variant, answer),
  form: ({ plan, seed, avoid }) => Draw.form(plan, seed, avoid),
  arranged: ({ shape, seed, question }) => Draw.arranged(shape, seed, question),
  result: (given) => Result.check(given),
  'canonical-write': ({ value }) => orReason(() => Canonical.write(value)),
  'canonical-read': ({ text }) => orRefused(() => Canonical.read(text)),
  fingerprint: ({ text }) => Attempt.fingerprint(Sha256.utf8(text)),
  'read-off': ({ counts, along, steps, places }) => BenchTable.at(BenchTable.column(counts, { along, steps }), places),
  refused: ({ key, done, step }) => Assembly.refused(key, done, step),
  calculate: ({ programs, inputs, places }) => {
    const values = new Map(Object.entries(inputs).map(([name, text]) => [name, Calculate.read(text)]));
    return Object.fromEntries(
      Array.from(Calculate.all(programs, values), ([name, found]) => [
        name,
        found.value === null
          ? { stopped: found.stopped }
          : { value: Calculate.write(found.value), ...Calculate.decimal(found.value, places) },
      ]),
    );
  },
  'codes-of-packed': ({ hex, fingerprint }) => RecordCodes.texts(new Uint8Array(), fingerprint, () => Uint8Array.from(Buffer.from(hex, 'hex'))),
  'typed-passphrase': ({ text }) => SittingTyped.passphrase(text, new Set()).form,
  'place-of-ticket': ({ sitting, ticket }) => Sha256.hex(`${sitting}\n${ticket}`),
  'against-competent': (given) => Observed.against(given),
  'observation-file': ({ facts }) => {
    const text = Observation.text(Observation.build(facts));
    return { text, fingerprint: Attempt.fingerprint(Sha256.utf8(text)) };
  },
  'attempt-file': ({ facts }) => {
    const bytes = Attempt.bytes(Attempt.build(facts));
    return { text: Buffer.from(bytes).toString('utf8'), fingerprint: Attempt.fingerprint(bytes) };
  },
};
