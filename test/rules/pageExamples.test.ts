import { describe, expect, it } from 'vitest';
import type { Code } from '../../core/diagnostics/diagnostic.ts';
import { catalogue } from '../../core/diagnostics/rows.ts';
import { allRules } from '../../core/rules/allRules.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

/*
 * The examples on the rules' pages, typed into a case: the wrong one is found, the right one is not.
 * A line of dots parts what stands in the header from what stands in readings; what an example does not say
 * of engine and site is that of an ordinary car near the sea.
 */

/** What an example needs beside itself cannot be typed in a few lines: a record of samples. */
const needsCapture: readonly Code[] = ['rear-copies-front'];

/** With the weather report at hand another rule says which of the two barometers is wrong. */
const withoutSite: readonly Code[] = ['barometers-apart'];

const usual: Readonly<Record<string, string>> = {
  engine: 'engine:\n  displacement: 2.0 L\n  cylinders: 4\n  aspiration: natural\n',
  site: 'site:\n  altitude: 40 ft\n  sea level pressure: 29.92 inHg\n',
};
const headerSections = ['vehicle', 'engine', 'site', 'tools', 'codes'];

function caseOf(code: Code, example: string): string {
  // A cell of another kind is shown whole.
  if (example.startsWith('suspects:')) return `diag: 1\ncase: An example\n---\n${example}\n`;
  const parts = example.split(/^(?:# )?…\n/m);
  const sectionOf = (part: string) => /^(\w+):/.exec(part)?.[1] ?? '';
  const header = parts
    .filter((part) => headerSections.includes(sectionOf(part)))
    .map((part) => part.trimEnd());
  const readings = parts.filter((part) => !headerSections.includes(sectionOf(part)));
  const said = header.join('\n');
  const more = Object.entries(usual).flatMap(([section, text]) =>
    new RegExp(`^${section}:`, 'm').test(said) || (section === 'site' && withoutSite.includes(code))
      ? []
      : [text],
  );
  const cells = readings.map((part) => `---\nreadings: As on the page\nas: page\n${part.trimEnd()}\n`);
  return `diag: 1\ncase: An example\n${more.join('')}${said}\n${cells.join('')}`;
}

const found = (code: Code, example: string): string[] =>
  checkCase(caseOf(code, example)).findings.map(({ diagnostic }) => diagnostic.code);

describe('the examples on the rules’ pages', () => {
  const codes = allRules.map(({ code }) => code).filter((code) => !needsCapture.includes(code));

  it.each(codes)('%s: the wrong one is found, the right one is not', (code) => {
    expect(found(code, catalogue[code].wrong)).toContain(code);
    expect(found(code, catalogue[code].right)).not.toContain(code);
  });

  it.each(needsCapture)('%s is about samples', (code) => {
    expect(allRules.map((rule) => rule.code)).toContain(code);
    expect(catalogue[code].wrong).toMatch(/^channels:/m);
  });
});
