import * as z from 'zod';
import type { Cell } from './cell.ts';
import { isName } from './isName.ts';
import { type Fixed, type Holds, type Keys, propertyOf } from './kinds/key.ts';
import { type KindName, kinds } from './kinds/kinds.ts';
import { isState, stateParts } from './stateParts.ts';
import type { MapNode, Node } from './tree.ts';

/** What is wrong with the shape of a value. */
export interface ShapeProblem {
  readonly node: Node;
  readonly wrong: 'shape' | 'word';
  readonly holds: Holds;
}

/**
 * Reads a cell's tree into its typed form, whatever is wrong with it (`readPlain` reads what is all right). Keys that are not the kind's are passed over here (`checkKeys` names them);
 * values of a wrong shape are problems, each with the very node it is about, and then there is no cell.
 */
export function readShape(
  kind: KindName,
  tree: MapNode,
): { readonly cell: Cell } | { readonly problems: readonly ShapeProblem[] } {
  const result = schemaOf(kind).safeParse(tree);
  if (result.success) return { cell: result.data };
  return {
    problems: result.error.issues.flatMap((issue) => (issue.code === 'custom' ? [shapeProblem(issue)] : [])),
  };
}

function shapeProblem(issue: z.core.$ZodIssueCustom): ShapeProblem {
  return issue.params as unknown as ShapeProblem;
}

const built = new Map<KindName, z.ZodType<Cell>>();

function schemaOf(kind: KindName): z.ZodType<Cell> {
  let schema = built.get(kind);
  if (schema === undefined) {
    // A browser's worker may forbid the evaluation of generated code.
    z.config({ jitless: true });
    schema = cellSchema(kind);
    built.set(kind, schema);
  }
  return schema;
}

function cellSchema(kind: KindName): z.ZodType<Cell> {
  const row = kinds[kind];
  const title = schemaFor(row.title);
  const read = fieldReader(row.keys);
  // The table gives both the schema and the type; the compiler cannot see through the loop between them.
  return z.transform((tree: MapNode, ctx) => {
    const fields = read(tree, ctx);
    fields.kind = kind;
    fields.title = parsed(title, tree.entries[0]?.value, ctx);
    return fields;
  }) as unknown as z.ZodType<Cell>;
}

type Context = z.core.ParsePayload<unknown>;

/**
 * Reads the known keys of a map into an object without a prototype, so that no key of the file means anything to the
 * language. Each key's schema is built when it is first met, and only keys that are there cost anything.
 */
function fieldReader(keys: Keys): (node: MapNode, ctx: Context) => Record<string, unknown> {
  const fieldsByKey = new Map<string, Field | undefined>();
  return (node, ctx) => {
    const fields: Record<string, unknown> = Object.create(null);
    fields.node = node;
    for (const { key, value } of node.entries) {
      let field = fieldsByKey.get(key.text);
      if (field === undefined) {
        const row = Object.hasOwn(keys, key.text) ? keys[key.text] : undefined;
        if (row === undefined) continue;
        field = { property: propertyOf(key.text, row), schema: schemaFor(row.holds) };
        fieldsByKey.set(key.text, field);
      }
      if (fields[field.property] === undefined) fields[field.property] = parsed(field.schema, value, ctx);
    }
    return fields;
  };
}

interface Field {
  readonly property: string;
  readonly schema: z.ZodType;
}

/** A part read by its own schema; what is wrong with it is wrong with the whole. */
function parsed(schema: z.ZodType, value: unknown, ctx: Context): unknown {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  for (const issue of result.error.issues) ctx.issues.push({ ...issue, input: value } as z.core.$ZodRawIssue);
  return undefined;
}

const simple = new Map<Holds, z.ZodType>();

function schemaFor(holds: Holds): z.ZodType {
  if (typeof holds !== 'string') return compound(holds);
  let schema = simple.get(holds);
  if (schema === undefined) {
    schema = single(holds);
    simple.set(holds, schema);
  }
  return schema;
}

function single(holds: Extract<Holds, string>): z.ZodType {
  switch (holds) {
    case 'anything':
      return z.custom<Node>();
    case 'map':
      return leaf(holds, (node) => (node.kind === 'map' ? undefined : 'shape'));
    case 'state':
      return z.pipe(
        leaf(holds, (node) => (isState(node) ? undefined : 'shape')),
        z.transform(stateParts),
      );
    case 'name':
      return leaf(holds, (node) => (node.kind === 'text' && isName(node.text) ? undefined : 'shape'));
    case 'sentence':
    case 'markdown':
    case 'text':
    case 'quantity':
    case 'expression':
    case 'table':
      return leaf(holds, (node) => (node.kind === 'text' ? undefined : 'shape'));
  }
}

function compound(holds: Exclude<Holds, string>): z.ZodType {
  if ('words' in holds) {
    const { words } = holds;
    return leaf(holds, (node) => {
      if (node.kind !== 'text') return 'shape';
      return words.includes(node.text) ? undefined : 'word';
    });
  }
  if ('list' in holds) {
    // One item may stand without its list.
    return z.preprocess(
      (node: Node) => (node.kind === 'list' ? node.items : [node]),
      z.array(schemaFor(holds.list)),
    );
  }
  if ('named' in holds) {
    const value = schemaFor(holds.named);
    return z.pipe(
      leaf(holds, (node) => (node.kind === 'map' ? undefined : 'shape')),
      z.pipe(
        z.transform((node: Node): unknown => (node.kind === 'map' ? node.entries : [])),
        z.array(z.object({ key: z.custom<Node>(), value })),
      ),
    );
  }
  return fixed(holds);
}

function fixed(holds: Fixed): z.ZodType {
  const read = fieldReader(holds.keys);
  const shortKey = holds.short === undefined ? undefined : holds.keys[holds.short];
  const short =
    holds.short === undefined || shortKey === undefined ? undefined : propertyOf(holds.short, shortKey);
  return z.transform((node: Node, ctx) => {
    if (node.kind === 'map') return read(node, ctx);
    if (short === undefined || node.kind !== 'text') {
      ctx.issues.push(issueAbout({ node, wrong: 'shape', holds }));
      return z.NEVER;
    }
    const fields: Record<string, unknown> = Object.create(null);
    fields.node = node;
    fields[short] = node;
    return fields;
  });
}

/** A node of the tree, kept as it is unless something is wrong with it. */
function leaf(holds: Holds, problem: (node: Node) => 'shape' | 'word' | undefined): z.ZodType<Node> {
  return z.custom<Node>().check((ctx) => {
    const wrong = problem(ctx.value);
    if (wrong === undefined) return;
    ctx.issues.push(issueAbout({ node: ctx.value, wrong, holds }));
  });
}

function issueAbout(problem: ShapeProblem): z.core.$ZodRawIssue {
  return { code: 'custom', input: problem.node, params: { ...problem } };
}
