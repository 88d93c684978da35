import { checkCase } from '../../../core/rules/checkCase.ts';
import type { Fault } from './fault.ts';
import { faults, type OneFault } from './faults.ts';
import { generate } from './generate.ts';

/** What the rules said of one generated engine: the codes of all findings, and of those that warn. */
export interface Heard {
  readonly seed: number;
  readonly codes: ReadonlySet<string>;
  readonly warnings: readonly { readonly code: string; readonly line: string }[];
}

export function hear(seed: number, fault?: OneFault): Heard {
  const { text } = generate(seed, fault);
  const { findings, file } = checkCase(text);
  const codes = new Set<string>();
  const warnings: { code: string; line: string }[] = [];
  for (const { cell, diagnostic } of findings) {
    codes.add(diagnostic.code);
    if (diagnostic.severity === 'info') continue;
    const at = cell === undefined ? '' : (file.cells[cell]?.raw.text ?? '');
    warnings.push({ code: diagnostic.code, line: at.slice(diagnostic.span.start, diagnostic.span.end) });
  }
  return { seed, codes, warnings };
}

/** How often a fault of one size was told by a rule that is right about it, and how often another rule warned. */
export interface Judged {
  readonly fault: Fault;
  readonly size: number;
  readonly engines: number;
  readonly told: number;
  readonly otherwise: number;
}

/** Judges every fault and size on these seeds. */
export function judgeFaults(seeds: readonly number[]): readonly Judged[] {
  return faults.flatMap((fault: Fault) => fault.sizes.map((size) => judgeFault(fault, size, seeds)));
}

/** Judges one fault of one size. */
export function judgeFault(fault: Fault, size: number, seeds: readonly number[]): Judged {
  let told = 0;
  let otherwise = 0;
  for (const seed of seeds) {
    const { codes, warnings } = hear(seed, { name: fault.name as OneFault['name'], size });
    if (fault.codes.some((code) => codes.has(code))) told += 1;
    const right: readonly string[] = [...fault.codes, ...(fault.follows ?? [])];
    if (warnings.some(({ code }) => !right.includes(code))) otherwise += 1;
  }
  return { fault, size, engines: seeds.length, told, otherwise };
}

/** Whether the size is one that must be told. */
export function mustBeTold({ fault, size }: Judged): boolean {
  return fault.sizes.indexOf(size) >= fault.sizes.indexOf(fault.tellable);
}
