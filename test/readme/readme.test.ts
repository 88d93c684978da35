import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { languagePage } from '../../core/report/markdown/languagePage.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { casebookForTests } from '../cli/casebook.ts';
import { sampleFiles, samples } from '../support/samples.ts';

const root = join(import.meta.dirname, '..', '..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const { folder, run } = casebookForTests();

/** The README's blocks between fences, by the word behind the opening fence, in order. */
const blocks = [...readme.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)].map(([, word = '', text = '']) => ({
  word,
  text,
}));
const written = blocks.find(({ word }) => word === 'yaml')?.text ?? '';
const answers = blocks.slice(blocks.findIndex(({ word }) => word === 'yaml') + 1).map(({ text }) => text);

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

describe('the README', () => {
  it('quotes what the program answers to its case', () => {
    writeFileSync(join(folder, 'five-minutes.diag'), written);
    const printed = linesOf(run('check', 'five-minutes.diag').out).join('\n');
    expect(linesOf(answers[0] ?? '').length).toBeGreaterThan(1);
    expect(printed).toContain(linesOf(answers[0] ?? '').join('\n'));
  });

  it('quotes what it answers to the change that it proposes', () => {
    const [, from = '', to = ''] = /Change `([^`]+)` to `([^`]+)`/.exec(readme) ?? [];
    expect(written).toContain(from);
    writeFileSync(join(folder, 'changed.diag'), written.replace(from, to));
    expect(linesOf(answers[1] ?? '').length).toBeGreaterThan(0);
    const printed = linesOf(run('check', 'changed.diag').out);
    for (const line of linesOf(answers[1] ?? '')) expect(printed).toContain(line);
  });

  it('shows cells of a recording that are read and computed', () => {
    const cells = blocks.filter(({ word }) => word === 'yaml').at(-1)?.text ?? '';
    expect(cells).toContain('capture:');
    const header = 'diag: 1\ncase: A limp\nengine:\n  cylinders: 4\n  firing order: 1-3-4-2\n';
    const { findings, expectations } = checkCase(`${header}---\n${cells}`, undefined, sampleFiles);
    expect(findings.map(({ diagnostic }) => diagnostic.code)).toEqual([]);
    expect(expectations.map(({ truth }) => truth.verdict)).toEqual(['fails']);
  });

  it('counts the samples', () => {
    const words = [
      'Ten',
      'Eleven',
      'Twelve',
      'Thirteen',
      'Fourteen',
      'Fifteen',
      'Sixteen',
      'Seventeen',
      'Eighteen',
      'Nineteen',
      'Twenty',
      'Twenty-one',
      'Twenty-two',
      'Twenty-three',
      'Twenty-four',
    ];
    expect(readme).toContain(`${words[samples.size - 10]} cases from the workshop`);
    const open = [...samples.values()].filter((text) => /^outcome: open$/m.test(text));
    expect(open).toHaveLength(1);
    const broken = [...samples.values()].filter((text) =>
      checkCase(text, undefined, sampleFiles).findings.some(
        ({ diagnostic }) => diagnostic.severity === 'error',
      ),
    );
    expect(broken).toHaveLength(2);
  });

  it('links and shows what is there', () => {
    const paths = [...readme.matchAll(/\]\(([^)#]+)(?:#[^)]*)?\)/g)].map((match) => match[1] ?? '');
    expect(paths.length).toBeGreaterThan(4);
    for (const path of paths.filter((each) => !/^https?:/.test(each)))
      expect(existsSync(join(root, path)), path).toBe(true);
  });

  it('names every command of the program', () => {
    const help = run('--help').out;
    const commands = [...help.matchAll(/^ {2}casebook ([a-z]+) /gm)].map((match) => match[1] ?? '');
    expect(commands.length).toBeGreaterThan(3);
    for (const command of commands) expect(readme).toContain(`casebook ${command}`);
  });
});

it('the page of the language is as its tables say', () => {
  expect(readFileSync(join(root, 'samples', 'README.md'), 'utf8')).toBe(languagePage());
});
