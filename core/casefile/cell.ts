import type { Keys } from './kinds/key.ts';
import type { KindName, kinds } from './kinds/kinds.ts';
import type { MapNode, Node, TextNode } from './tree.ts';

/**
 * A cell that was understood, by kind. Its properties are the keys of `kinds` in one word (`if fails` → `ifFails`);
 * what they hold are the tree's own nodes, so every value knows its place.
 * Keys that are wrong are left out here and reported.
 */
export type Cell = { readonly [K in KindName]: CellOf<K> }[KindName];

export type CellOf<K extends KindName> = {
  readonly kind: K;
  /** The kind's own value: the title, a note's Markdown, the header's format version. May be empty. */
  readonly title: TextNode;
  readonly node: MapNode;
} & Optional<(typeof kinds)[K]['keys']>;

export type HeaderCell = CellOf<'diag'>;
export type NoteCell = CellOf<'note'>;
export type ReadingsCell = CellOf<'readings'>;
export type ReferenceCell = CellOf<'reference'>;
export type CaptureCell = CellOf<'capture'>;
export type CheckCell = CellOf<'check'>;
export type TestCell = CellOf<'test'>;
export type PictureCell = CellOf<'picture'>;
export type ChartCell = CellOf<'chart'>;
export type SuspectsCell = CellOf<'suspects'>;
export type QuestionCell = CellOf<'question'>;
export type RepairCell = CellOf<'repair'>;

/** An entry of an open map: the author's name for it and what it holds. */
export interface Named<T> {
  readonly key: TextNode;
  readonly value: T;
}

/** An engine state: a text, or a map with `state` and further facts (gear, loop). */
export interface StateNode {
  readonly name: TextNode;
  readonly more: readonly Named<TextNode>[];
  readonly node: Node;
}

/** What a key's value is read into. */
export type Read<H> = H extends 'state'
  ? StateNode
  : H extends 'map'
    ? MapNode
    : H extends 'anything'
      ? Node
      : H extends { readonly list: infer Item }
        ? readonly Read<Item>[]
        : H extends { readonly named: infer Item }
          ? readonly Named<Read<Item>>[]
          : H extends { readonly keys: infer K extends Keys }
            ? { readonly node: Node } & Present<K>
            : TextNode;

/** All keys of a cell may be missing. */
type Optional<K extends Keys> = {
  readonly [N in keyof K & string as Property<N, K[N]>]: Read<K[N]['holds']> | undefined;
};

/** In the items of a list those that are required are there: an item without them is left out and reported. */
type Present<K extends Keys> = {
  readonly [N in keyof K & string as Property<N, K[N]>]:
    | Read<K[N]['holds']>
    | (K[N] extends { readonly required: true } ? never : undefined);
};

type Property<N extends string, K> = K extends { readonly property: infer P extends string } ? P : OneWord<N>;

type OneWord<N extends string> = N extends `${infer First} ${infer Rest}`
  ? `${First}${Capitalize<OneWord<Rest>>}`
  : N;
