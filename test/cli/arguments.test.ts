import { describe, expect, it } from 'vitest';
import { readArguments } from '../../extension/cli/arguments.ts';

const options = {
  format: { type: 'string' },
  strict: { type: 'boolean' },
  output: { type: 'string', short: 'o' },
} as const;

describe('a command line', () => {
  it('has paths and options in any order', () => {
    const { paths, options: given } = readArguments(
      ['a.diag', '--strict', '--format', 'json', 'b', '-o', 'x'],
      options,
    );
    expect(paths).toEqual(['a.diag', 'b']);
    expect({ ...given }).toEqual({ strict: true, format: 'json', output: 'x' });
  });

  it('takes what stands behind -- as paths', () => {
    expect(readArguments(['--', '--odd.diag'], options).paths).toEqual(['--odd.diag']);
  });

  it.each([
    [['--stict'], 'There is no option `--stict`. Did you mean `--strict`?'],
    [['-x'], 'There is no option `-x`.'],
    [['--__proto__'], 'There is no option `--__proto__`.'],
    [['--format'], '`--format` needs something behind it.'],
    [['--format='], '`--format` needs something behind it.'],
    [['--strict=yes'], '`--strict` takes nothing behind it.'],
    [['--format', 'json', '--format', 'text'], '`--format` stands twice. Leave one of them out.'],
    [['-o', 'a', '--output=b'], '`--output` stands twice. Leave one of them out.'],
  ])('is told what is wrong: %j', (words, message) => {
    expect(() => readArguments(words, options)).toThrow(message);
  });
});
