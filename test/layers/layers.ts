import { posix } from 'node:path';
import { type ParseResult, parseSync, Visitor } from 'oxc-parser';

/** The folders of core, from the ground up: each may import only from itself and from those before it. */
export const layers: readonly string[] = [
  'text',
  'diagnostics',
  'quantity',
  'casefile',
  'expression',
  'signals',
  'waveform',
  'engine',
  'recording',
  'study',
  'rules',
  'chart',
  'teaching',
  'library',
  'report',
  'service',
];

/** The only packages that core may use, and where. */
const packages: ReadonlyMap<string, string> = new Map([
  ['yaml', 'casefile'],
  ['zod', 'casefile'],
  ['markdown-it', 'report'],
]);

/** What would let the machine, the clock, the locale or chance into a result. */
const forbiddenNames = new Set(
  'console Date globalThis process performance crypto Intl eval Function fetch require setTimeout setInterval queueMicrotask'.split(
    ' ',
  ),
);
const forbiddenMembers = /^(random|localeCompare|toLocale\w*)$/;

const longest = 400;

/**
 * What a source file does that its place does not allow, one sentence each with the line; none when it is in order.
 * `path` is relative to the repository and uses `/`.
 */
export function violations(path: string, text: string): string[] {
  const parsed = parseSync(path, text);
  const found = parsed.errors.map(({ message }) => `${path}: cannot be parsed: ${message}`);
  const tell = (offset: number, what: string) => {
    found.push(`${path}:${text.slice(0, offset).split('\n').length}: ${what}`);
  };
  const inCore = path.startsWith('core/');
  for (const { start, request } of imports(parsed, text)) {
    if (request === 'vscode' && !path.startsWith('extension/client/')) {
      tell(start, 'imports vscode; only extension/client may.');
    } else if (inCore) {
      const what = wrongImport(path, request);
      if (what !== undefined) tell(start, what);
    }
  }
  if (!inCore) return found;
  for (const { start, name } of impureNames(parsed)) tell(start, `uses \`${name}\`; core is pure.`);
  const lines = text.replace(/\n$/, '').split('\n').length;
  if (lines > longest) found.push(`${path}: has ${lines} lines; over ${longest} it is usually two things.`);
  const file = posix.basename(path);
  if (!/^[a-z][A-Za-z0-9]*\.ts$/.test(file)) found.push(`${path}: is not named in camelCase.`);
  return found;
}

function wrongImport(path: string, request: string): string | undefined {
  const own = path.split('/')[1] ?? '';
  const height = layers.indexOf(own);
  if (height < 0) return `stands in core/${own}, which is not a layer.`;
  if (!request.startsWith('.')) {
    const [scope, name] = request.split('/');
    const where = packages.get(scope?.startsWith('@') ? `${scope}/${name}` : (scope ?? ''));
    return where === own ? undefined : `imports ${request}, which core/${own} may not use.`;
  }
  if (!request.endsWith('.ts')) return `imports ${request} without its .ts extension.`;
  const target = posix.join(posix.dirname(path), request).split('/');
  if (target[0] !== 'core') return `imports ${request}, which is outside of core.`;
  const other = layers.indexOf(target[1] ?? '');
  return other >= 0 && other <= height ? undefined : `imports ${request}, which is above core/${own}.`;
}

interface Import {
  readonly start: number;
  readonly request: string;
}

/** Every module that a file names: static and dynamic imports, types as well as values, and re-exports. */
function imports({ module }: ParseResult, text: string): Import[] {
  return [
    ...module.staticImports.map(({ start, moduleRequest }) => ({ start, request: moduleRequest.value })),
    ...module.staticExports.flatMap(({ start, entries }) => {
      const request = entries.find(({ moduleRequest }) => moduleRequest !== null)?.moduleRequest?.value;
      return request === undefined ? [] : [{ start, request }];
    }),
    ...module.dynamicImports.map(({ start, moduleRequest }) => ({
      start,
      request: text.slice(moduleRequest.start, moduleRequest.end).replace(/^['"`]|['"`]$/g, ''),
    })),
    ...[...text.matchAll(/\bimport\(\s*(['"])(.*?)\1\s*\)\s*[.[<]/g)].map((match) => ({
      start: match.index,
      request: match[2] ?? '',
    })),
  ];
}

/** Free uses of names that are not pure; a property or a key of the same name is something else. */
function impureNames({ program }: ParseResult): { start: number; name: string }[] {
  const found: { start: number; name: string }[] = [];
  const keys = new Set<number>();
  const key = (node: { computed: boolean; key: { start: number } }) => {
    if (!node.computed) keys.add(node.key.start);
  };
  new Visitor({
    MemberExpression({ computed, property }) {
      if (computed || !('name' in property)) return;
      keys.add(property.start);
      if (forbiddenMembers.test(property.name)) found.push({ start: property.start, name: property.name });
    },
    Property: key,
    MethodDefinition: key,
    PropertyDefinition: key,
    TSPropertySignature: key,
    TSMethodSignature: key,
    Identifier({ start, name }) {
      if (forbiddenNames.has(name) && !keys.has(start)) found.push({ start, name });
    },
  }).visit(program);
  return found;
}
