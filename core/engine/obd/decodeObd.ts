import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Answer, GivenCode } from './answer.ts';
import { codeAnswer, statusOf } from './codeAnswers.ts';
import { decodeParameter, type FullScale, hex } from './decodeParameter.ts';
import { joinFrames, type Message } from './isoTp.ts';
import type { Item } from './item.ts';
import { answersService } from './layouts.ts';
import { monitorTests, sensorTest, testBeforeCan } from './monitorTests.ts';
import { parameterRow } from './parameterTable.ts';
import { noProblems, type Problems, tell } from './problems.ts';
import { type Lines, readLines } from './readLines.ts';
import { pending, refusal } from './refusal.ts';
import { hexOnTape, spanOnTape, type Tape } from './tape.ts';
import { informationItems, joinInformation } from './vehicleInformation.ts';

/** A recording decoded. Answers and items point into the tape; `tape.ts` tells their bytes and places. */
export interface Decoded {
  readonly tape: Tape;
  readonly answers: readonly Answer[];
  readonly codes: readonly GivenCode[];
  readonly requests: number;
  /** Lines without data. */
  readonly noise: number;
  readonly diagnostics: readonly Diagnostic[];
}

/** UTF-16 units of one recording. */
export const longestRecording = 16 * 1024 * 1024;

interface Decoding {
  readonly tape: Tape;
  readonly problems: Problems;
  readonly answers: Answer[];
  readonly codes: GivenCode[];
  /** What was told once already. */
  readonly told: Set<string>;
  /** Where a controller's own full scales stand, by its id and the parameter. */
  readonly scales: Map<string, number>;
  /** Who numbers its oxygen sensors as four banks of two. */
  readonly fourBanks: ReadonlySet<string>;
}

/**
 * Decodes recorded answers of services 01 to 0A (SAE J1979 / ISO 15031-5): lines → frames → messages → answers → items.
 * Never throws; what cannot be read is told at its place and left out.
 */
export function decodeObd(text: string): Decoded {
  const problems = noProblems();
  if (text.length > longestRecording) {
    const facts = { most: `${longestRecording}` };
    tell(problems, 'obd-too-long', { start: 0, end: 1 }, facts);
    const tape = { bytes: new Uint8Array(0), places: new Int32Array(0), length: 0 };
    return { tape, answers: [], codes: [], requests: 0, noise: 0, diagnostics: problems.list };
  }
  const lines = readLines(text, problems);
  const { tape, requests, noise } = lines;
  const messages = joinInformation(tape, joinFrames(lines, problems), problems);
  const decoding: Decoding = {
    tape,
    problems,
    answers: [],
    codes: [],
    told: new Set(),
    scales: fullScalesIn(tape, messages),
    fourBanks: fourBanksIn(tape, messages),
  };
  for (const message of messages) decodeMessage(decoding, message);
  const diagnostics = [...problems.list, ...aboutAll(lines, problems, messages.length)];
  diagnostics.sort((a, b) => a.span.start - b.span.start);
  return { tape, answers: decoding.answers, codes: decoding.codes, requests, noise, diagnostics };
}

/** What is said of a recording as a whole. */
function aboutAll(lines: Lines, problems: Problems, messages: number): readonly Diagnostic[] {
  const about: Diagnostic[] = [];
  const { firstNoise, noise, requests } = lines;
  if (firstNoise !== undefined)
    about.push(diagnose('obd-noise', firstNoise.span, { lines: noise, first: firstNoise.text }));
  if (messages === 0 && problems.list.length === 0)
    about.push(diagnose('obd-nothing', { start: 0, end: 0 }, { requests }));
  const last = problems.list[problems.list.length - 1];
  if (problems.more > 0 && last !== undefined)
    about.push(diagnose('obd-more-problems', last.span, { more: problems.more }));
  return about;
}

/** Parameters 4F and 50 of service 01, wherever they stand: they hold for all that their controller answers. */
function fullScalesIn({ bytes }: Tape, messages: readonly Message[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { id, from, to } of messages) {
    const pid = bytes[from + 1];
    if (bytes[from] === 0x41 && (pid === 0x4f || pid === 0x50) && to - from >= 6)
      found.set(`${id} ${pid}`, from + 2);
  }
  return found;
}

/** Who answers parameter 1D, the oxygen sensors of four banks of two. */
function fourBanksIn({ bytes }: Tape, messages: readonly Message[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const { id, from, to } of messages)
    if (bytes[from] === 0x41 && bytes[from + 1] === 0x1d && to - from >= 3) found.add(id);
  return found;
}

function decodeMessage(decoding: Decoding, message: Message): void {
  const { tape, answers, problems } = decoding;
  const { id, from, to } = message;
  const first = tape.bytes[from] ?? 0;
  const service = first - 0x40;
  if (!answersService(first)) {
    const bytes = hexOnTape(tape, from, Math.min(to, from + 8));
    const say = () => tell(problems, 'obd-unknown-answer', spanOnTape(tape, from, to), { bytes });
    tellOnce(decoding, `unknown ${first}`, say);
  } else if (first === 0x7f) decodeRefusal(decoding, message);
  else if (service === 1 || service === 2) decodeParameters(decoding, message, service);
  else {
    const named = statusOf(service) === undefined && service !== 4;
    if (named && to - from < 2) {
      tell(problems, 'obd-short-answer', spanOnTape(tape, from, to), {
        what: 'The answer',
        needs: 2,
        has: 1,
      });
      return;
    }
    const parameter = named ? tape.bytes[from + 1] : undefined;
    const items = itemsOf(decoding, message, service);
    answers.push({ id, service, parameter, frame: undefined, items, from, to });
  }
}

/** What an answer of services 03 to 0A says; what is not known is told. */
function itemsOf(decoding: Decoding, message: Message, service: number): readonly Item[] {
  const { tape, codes, problems } = decoding;
  const { from, to } = message;
  const parameter = tape.bytes[from + 1] ?? 0;
  const status = statusOf(service);
  if (status !== undefined) {
    // A damaged line may hold more codes than a call takes arguments.
    for (const code of codeAnswer(tape, message, status, problems)) codes.push(code);
    return [];
  }
  // Codes and what was learned were cleared: there is nothing more to it.
  if (service === 4) return [];
  if ((service === 6 || service === 9) && parameter % 0x20 === 0) return supportMap(tape, message, parameter);
  const items =
    service === 5
      ? sensorTest(tape.bytes, from, to)
      : service === 9
        ? informationItems(tape, message, problems)
        : [];
  if (service === 6) {
    const tests = monitorTests(tape.bytes, from, to);
    if (tests.items.length > 0 && tests.unread < to && message.delimited === true) {
      const facts = { what: 'A test', needs: 9, has: to - tests.unread };
      tell(problems, 'obd-short-answer', spanOnTape(tape, tests.unread, to), facts);
    }
    if (tests.items.length > 0) return tests.items;
    const before = message.delimited === true ? [] : testBeforeCan(tape.bytes, from, to);
    if (before.length > 0) return before;
  }
  if (items.length === 0) {
    const what = service === 6 ? 'monitor' : service === 9 ? 'kind' : 'test';
    unknown(decoding, message, service, `${what} ${hex(parameter)}`, from + 2);
  }
  return items;
}

/** Which tests or kinds a controller has: the last four bytes of the answer. */
function supportMap(tape: Tape, { from, to }: Message, base: number): readonly Item[] {
  const row = parameterRow(0);
  if (row === undefined || to - from < 6) return [];
  return decodeParameter({ ...row, pid: base }, tape.bytes, to - 4);
}

/** One or, on CAN networks, several parameters behind each other. */
function decodeParameters(decoding: Decoding, message: Message, service: 1 | 2): void {
  const { tape, problems, answers, scales, fourBanks } = decoding;
  const { id, from, to } = message;
  const { bytes } = tape;
  const fullScale: FullScale = (pid, byte) => {
    const at = scales.get(`${id} ${pid}`);
    return at === undefined ? undefined : bytes[at + byte];
  };
  const scaling = scales.size === 0 ? undefined : fullScale;
  const layout = fourBanks.has(id) ? 'four banks of two' : 'two banks of four';
  let at = from + 1;
  if (at >= to) {
    tell(problems, 'obd-short-answer', spanOnTape(tape, from, to), {
      what: 'The answer',
      needs: service + 2,
      has: 1,
    });
    return;
  }
  while (at < to) {
    if (at > from + 1 && message.delimited !== true && isFiller(bytes, at, to)) return;
    const pid = bytes[at] ?? 0;
    const frame = service === 2 ? bytes[at + 1] : undefined;
    const data = at + service;
    const row = parameterRow(pid, layout);
    if (row === undefined) {
      unknown(decoding, message, service, hex(pid), data);
      answers.push({ id, service, parameter: pid, frame, items: [], from: at, to });
      return;
    }
    if (data + row.bytes > to) {
      const facts = { what: `${row.meaning} (${hex(pid)})`, needs: row.bytes, has: Math.max(0, to - data) };
      tell(problems, 'obd-short-answer', spanOnTape(tape, at, to), facts);
      return;
    }
    const items = decodeParameter(row, bytes, data, scaling);
    // Of one parameter alone, one byte more is the trim of bank 3 or 4: no parameter is so short.
    const more = row.furtherBank === true && at === from + 1 && data + row.bytes + 1 === to ? 1 : 0;
    const end = data + row.bytes + more;
    answers.push({ id, service, parameter: pid, frame, items, from: at, to: end });
    at = end;
  }
}

/** Lines that show all eight bytes of a frame end in filler. */
function isFiller(bytes: Uint8Array, from: number, to: number): boolean {
  const first = bytes[from] ?? 0;
  if (![0x00, 0x55, 0xaa, 0xcc, 0xff].includes(first)) return false;
  for (let at = from; at < to; at++) if (bytes[at] !== first) return false;
  return true;
}

function decodeRefusal(decoding: Decoding, { id, from, to }: Message): void {
  const { tape, problems } = decoding;
  const [, service = 0, code = 0] = tape.bytes.subarray(from, to);
  if (to - from < 3) {
    const facts = { what: 'A refusal (7F)', needs: 2, has: to - from - 1 };
    tell(problems, 'obd-short-answer', spanOnTape(tape, from, to), facts);
    return;
  }
  if (code === pending) return;
  tellOnce(decoding, `refused ${id} ${service} ${code}`, () => {
    const facts = { service: hex(service), code: hex(code), why: refusal(code) };
    tell(problems, 'obd-refused', spanOnTape(tape, from, from + 3), facts);
  });
}

function unknown(decoding: Decoding, { from, to }: Message, service: number, id: string, data: number): void {
  const { tape, problems } = decoding;
  tellOnce(decoding, `parameter ${service} ${id}`, () => {
    const bytes = hexOnTape(tape, Math.min(data, to), Math.min(to, data + 12));
    tell(problems, 'obd-unknown-parameter', spanOnTape(tape, from, to), { service: hex(service), id, bytes });
  });
}

function tellOnce({ told }: Decoding, what: string, say: () => void): void {
  if (told.has(what)) return;
  told.add(what);
  say();
}
