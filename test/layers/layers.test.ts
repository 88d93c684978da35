import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { globSync } from 'tinyglobby';
import { describe, expect, it } from 'vitest';
import { layers, violations } from './layers.ts';

const root = join(import.meta.dirname, '..', '..');
const files = globSync(['core/**/*.ts', 'extension/**/*.ts'], { cwd: root }).sort();

describe('layers', () => {
  it('finds the sources', () => {
    expect(files).toContain('core/text/span.ts');
    expect(files).toContain('extension/build/build.ts');
  });

  it('hold in every source file', () => {
    expect(files.flatMap((file) => violations(file, readFileSync(join(root, file), 'utf8')))).toEqual([]);
  });

  it('has no folder in core beside the layers', () => {
    const folders = new Set(
      files.filter((file) => file.startsWith('core/')).map((file) => file.split('/')[1]),
    );
    expect([...folders].filter((folder) => !(layers as readonly unknown[]).includes(folder))).toEqual([]);
  });
});

describe('a violation is caught', () => {
  const cases: readonly (readonly [what: string, path: string, text: string, said: string])[] = [
    ['a layer above', 'core/text/a.ts', "import { study } from '../study/study.ts';\n", 'above core/text'],
    [
      'a type from above',
      'core/quantity/a.ts',
      "import type { Cell } from '../casefile/tree.ts';\n",
      'above core/quantity',
    ],
    ['a re-export from above', 'core/text/a.ts', "export * from '../rules/rules.ts';\n", 'above core/text'],
    [
      'a named re-export from above',
      'core/text/a.ts',
      "export { a } from '../rules/rules.ts';\n",
      'above core/text',
    ],
    ['an import of effects only', 'core/text/a.ts', "import '../rules/rules.ts';\n", 'above core/text'],
    [
      'a dynamic import',
      'core/text/a.ts',
      "export const a = () => import('../rules/rules.ts');\n",
      'above core/text',
    ],
    [
      'an import inside a type',
      'core/text/a.ts',
      "export type A = import('../rules/rules.ts').Rule;\n",
      'above core/text',
    ],
    ['a node module', 'core/text/a.ts', "import { readFileSync } from 'node:fs';\n", 'imports node:fs'],
    ['a bare node module', 'core/text/a.ts', "import fs from 'fs';\n", 'imports fs'],
    [
      'an extension file',
      'core/service/a.ts',
      "import { main } from '../../extension/cli/main.ts';\n",
      'outside of core',
    ],
    ['vscode in core', 'core/service/a.ts', "import type { Uri } from 'vscode';\n", 'only extension/client'],
    [
      'vscode in the server',
      'extension/server/a.ts',
      "import * as vscode from 'vscode';\n",
      'only extension/client',
    ],
    ['yaml outside of casefile', 'core/study/a.ts', "import { parse } from 'yaml';\n", 'imports yaml'],
    ['zod outside of casefile', 'core/signals/a.ts', "import * as z from 'zod';\n", 'imports zod'],
    [
      'markdown-it outside of report',
      'core/teaching/a.ts',
      "import MarkdownIt from 'markdown-it';\n",
      'imports markdown-it',
    ],
    ['a missing extension', 'core/study/a.ts', "import { span } from '../text/span';\n", '.ts extension'],
    [
      'a folder that is no layer',
      'core/misc/a.ts',
      "import { span } from '../text/span.ts';\n",
      'not a layer',
    ],
    ['the console', 'core/text/a.ts', "console.log('x');\n", '`console`'],
    ['the clock', 'core/text/a.ts', 'export const now = () => Date.now();\n', '`Date`'],
    ['a date from the clock', 'core/text/a.ts', 'export const now = () => new Date();\n', '`Date`'],
    ['chance', 'core/text/a.ts', 'export const dice = () => Math.random();\n', '`random`'],
    [
      "the machine's locale",
      'core/text/a.ts',
      'export const a = (b: string, c: string) => b.localeCompare(c);\n',
      '`localeCompare`',
    ],
    ['a long file', 'core/text/a.ts', 'export {};\n'.repeat(401), '401 lines'],
    ['a file name', 'core/text/Span_helper.ts', 'export {};\n', 'camelCase'],
  ];

  it.each(cases)('%s', (_, path, text, said) => {
    expect(violations(path, text)).toEqual([expect.stringContaining(said)]);
  });

  it('names the line', () => {
    const text = "import { span } from '../text/span.ts';\n\nexport const now = () => Date.now();\n";
    expect(violations('core/study/a.ts', text)).toEqual(['core/study/a.ts:3: uses `Date`; core is pure.']);
  });
});

describe('what is allowed is not reported', () => {
  const fine: readonly (readonly [path: string, text: string])[] = [
    ['core/study/a.ts', "import type { Span } from '../text/span.ts';\nexport { a } from './b.ts';\n"],
    ['core/casefile/a.ts', "import * as z from 'zod';\nimport { Parser } from 'yaml';\n"],
    ['core/report/a.ts', "import MarkdownIt from 'markdown-it';\n"],
    [
      'core/study/a.ts',
      "// console, Date and Math.random in a comment\nexport const a = 'Date: console.log(1)';\n",
    ],
    [
      'core/study/a.ts',
      'export const a = (b: { Date: number; process: number }) => ({ Date: b.Date, process: b.process });\n',
    ],
    ['core/study/a.ts', 'export {};\n'.repeat(400)],
    ['extension/client/a.ts', "import * as vscode from 'vscode';\n"],
    [
      'extension/cli/a.ts',
      "import { readFileSync } from 'node:fs';\nconsole.log(Date.now(), readFileSync);\n",
    ],
  ];

  it.each(fine)('%s: %s', (path, text) => {
    expect(violations(path, text)).toEqual([]);
  });
});
