import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import oniguruma from 'vscode-oniguruma';
import textmate, { type IGrammar } from 'vscode-textmate';

/** The editor's own tokenizer over the grammar as it is shipped. */
export async function loadGrammar(): Promise<IGrammar> {
  const require = createRequire(import.meta.url);
  const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
  const onigLib = oniguruma.loadWASM(wasm).then(() => ({
    createOnigScanner: (patterns: string[]) => new oniguruma.OnigScanner(patterns),
    createOnigString: (text: string) => new oniguruma.OnigString(text),
  }));
  const registry = new textmate.Registry({
    onigLib,
    loadGrammar: async (scope) => {
      // The editor has Markdown's own grammar; here one that only shows where it would be asked.
      if (scope === 'text.html.markdown') return textmate.parseRawGrammar(markdown, 'markdown.json');
      if (scope !== 'source.diag') return null;
      const text = readFileSync(new URL('../../syntaxes/diag.tmLanguage.json', import.meta.url), 'utf8');
      return textmate.parseRawGrammar(text, 'diag.tmLanguage.json');
    },
  });
  const grammar = await registry.loadGrammar('source.diag');
  if (grammar === null) throw new Error('there is no grammar');
  return grammar;
}

const markdown = JSON.stringify({
  scopeName: 'text.html.markdown',
  patterns: [{ match: String.raw`(?:^|\G)#{1,6} .*$`, name: 'markup.heading.markdown' }],
});

export interface Token {
  readonly line: number;
  readonly start: number;
  readonly text: string;
  /** The innermost scope that is no whole cell or file; nothing for what has none. */
  readonly scope: string;
  readonly scopes: readonly string[];
}

export function tokens(grammar: IGrammar, text: string): Token[] {
  const found: Token[] = [];
  let stack = textmate.INITIAL;
  for (const [line, words] of text.split('\n').entries()) {
    const { tokens: row, ruleStack, stoppedEarly } = grammar.tokenizeLine(words, stack);
    if (stoppedEarly) throw new Error(`line ${line + 1} took too long`);
    stack = ruleStack;
    for (const { startIndex, endIndex, scopes } of row) {
      const text = words.slice(startIndex, endIndex);
      const inner = scopes.at(-1) ?? '';
      const scope = /^(source\.diag|meta\.cell\..*)$/.test(inner) ? '' : inner.replace(/\.diag$/, '');
      found.push({ line: line + 1, start: startIndex, text, scope, scopes });
    }
  }
  return found;
}

/** The text with its scopes beneath: a caret line for each token that has one. */
export function annotated(grammar: IGrammar, text: string): string {
  const found = tokens(grammar, text).filter((token) => token.scope !== '' && token.text.trim() !== '');
  return text
    .split('\n')
    .flatMap((words, at) => [
      `>${words}`,
      ...found
        .filter((token) => token.line === at + 1)
        .map((token) => `#${' '.repeat(token.start)}${'^'.repeat(token.text.length)} ${token.scope}`),
    ])
    .join('\n');
}
