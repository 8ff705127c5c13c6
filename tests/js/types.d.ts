/** The shapes that the scripts share. DEVELOPERS.md, "Marking keys, answers, forms", is the contract. Never shipped. */

interface ChoiceKey { kind: 'choice'; options: string[]; right: string }
interface ChoicesKey { kind: 'choices'; options: string[]; right: string[]; whole: boolean }
interface OrderKey { kind: 'order'; steps: string[]; before: string[][]; critical: string[][] }
interface MatchKey { kind: 'match'; items: string[]; answers: string[]; pairs: Record<string, string> }

/** Both ends included; `n` or `n/d`. */
interface Interval { low: string; high: string }
interface NumberVariant extends Interval {
  /** Wrong numbers with a known cause, in the order of the question's slips. */
  slips?: Interval[];
}
interface NumberKey {
  kind: 'number';
  unit: string;
  'unit-needed': boolean;
  units: Record<string, string>;
  variants: NumberVariant[];
}
interface SpotKey { kind: 'spot'; spots: string[]; right: string }
/** A deed leads on, or is a critical error. */
type DrillDeed = { to: string; penalty: number } | { critical: true };
interface DrillKey {
  kind: 'drill';
  start: string;
  moments: Record<string, Record<string, DrillDeed>>;
  ends: Record<string, number>;
  deeds: string[];
}
interface TriageKey {
  kind: 'triage';
  places: string[];
  units: string[];
  right: Record<string, string>;
  dangerous: string[];
  whole: boolean;
}
interface SettingKey { kind: 'setting'; controls: string[]; counts: number[]; accepted: number[][] }
type Key = ChoiceKey | ChoicesKey | OrderKey | MatchKey | NumberKey | SpotKey | DrillKey | TriageKey | SettingKey;

interface NumberRemarks { kind: 'number'; read: string; problem: string; slip?: number }
type Remarks =
  | { kind: string; problem: string }
  | { kind: 'choice' }
  | { kind: 'choices'; missed: string[]; extra: string[] }
  | { kind: 'order'; broken: string[][]; critical: string[][]; moves: number }
  | { kind: 'match'; wrong: string[] }
  | { kind: 'spot' }
  | { kind: 'drill'; critical: string; end: string; penalty: number }
  | { kind: 'triage'; missed: string[]; needless: string[]; left: string[]; dangerous: string[] }
  | { kind: 'setting' }
  | NumberRemarks;
interface Marked { mark: number; remarks: Remarks }

/** One step in postfix order: a number, a name, a sign or `neg`, a call with how many values it takes. */
type CalculatorStep = ['n', string] | ['in', string] | ['op', string] | ['call', string, number];
interface CalculatorInputData { id: string; name: string; letter: string; least: string; most: string; start: string; places: number; choices?: [string, string][] }
interface CalculatorResultData { id: string; name: string; letter: string; label: string; unit: string; places: number }
/** A result, or why there is none. */
type CalculatorFound = { value: [bigint, bigint]; stopped: '' } | { value: null; stopped: string };
interface CalculatorData {
  inputs: CalculatorInputData[];
  results: CalculatorResultData[];
  programs: [string, CalculatorStep[]][];
}

/** What drawing must know of a question. */
interface Shape { kind: string; options: string[]; shuffle: boolean; variants: number; before?: string[][] }
interface Plan {
  'form-algorithm': number;
  gates: { fact: string; questions: string[] }[];
  cells: { outcome: string; level: string; draw: number; questions: string[] }[];
  questions: Record<string, Shape>;
}
/** One question of a form. */
interface Asked { q: string; variant: number; options: string[] }

interface AttemptRecord {
  format: string;
  course: string;
  version: string;
  digest: string;
  profile: string;
  language: string;
  seed: string;
  avoid: string[];
  form: Asked[];
  answers: Record<string, unknown>;
  shown: string[];
  started: string;
  ended: string;
  card: { id: string; name: string; workplace: string };
}

interface CheckResult {
  marks: number;
  of: number;
  percent: number;
  cut: number;
  passed: boolean;
  'must-pass': { fact: string; question: string; mark: number }[];
  /** Drills that a critical error ended. */
  critical: string[];
  outcomes: Record<string, { marks: number; of: number }>;
  questions: Record<string, number>;
}

/** The vendored libraries that open a sitting and write its codes: tools/vendor_entries. */
declare const NobleSeal: {
  pbkdf2Sha256: (password: Uint8Array, salt: Uint8Array, iterations: number, length?: number) => Uint8Array;
  pbkdf2Sha256Later: (password: Uint8Array, salt: Uint8Array, iterations: number, length?: number) => Promise<Uint8Array>;
  gcmOpen: (key: Uint8Array, iv: Uint8Array, data: Uint8Array, additional: Uint8Array) => Uint8Array;
};
declare const Fflate: { Inflate: new (options: { dictionary?: Uint8Array }, take: (piece: Uint8Array, last: boolean) => void) => { push: (piece: Uint8Array, last: boolean) => void }; gunzipSync: (data: Uint8Array) => Uint8Array; deflateSync: (data: Uint8Array, options?: { level: number }) => Uint8Array };
declare const QrCode: { encode: (text: string, options?: { ecc?: string; encoding?: string }) => boolean[][] };

/** Whether a signature (64 bytes) is that of a message by a key (32 bytes). */
type SignatureCheck = (signature: Uint8Array, message: Uint8Array, key: Uint8Array) => boolean | Promise<boolean>;
interface TrustedKey {
  did: string; holder: string; role: string; from: string; until: string; withdrawn: null | { on: string; reason: string }; demo: boolean;
}
interface TrustListFacts {
  issuer: string; signers: string[]; date: string; holder: string; number: number; keys: TrustedKey[];
  withdrawn: { id: string; on: string; reason: string }[];
}
interface VerdictFacts {
  kind: 'genuine' | 'example' | 'unknown-signer' | 'out-of-date' | 'withdrawn' | 'altered' | 'unreadable';
  certificate: any;
  key: TrustedKey | null;
  withdrawn: null | { on: string; reason: string };
}
/** Not in every browser, and not in TypeScript's own list: the Shape Detection draft. */
declare class BarcodeDetector {
  constructor(options: { formats: string[] });
  static getSupportedFormats(): Promise<string[]>;
  detect(image: ImageBitmap): Promise<{ rawValue: string }[]>;
}
declare const NobleEd25519: { verify(signature: Uint8Array, message: Uint8Array, key: Uint8Array): boolean };
