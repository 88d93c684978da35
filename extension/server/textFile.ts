import type { Written } from './written.ts';

/** A case that is open as text. */
export interface TextFile {
  readonly kind: 'text';
  readonly uri: string;
  readonly version: number;
  readonly text: string;
}

export function writtenFile({ uri, version, text }: TextFile): Written {
  return { text, documents: [{ uri, version, start: 0, end: text.length, isNote: false, of: undefined }] };
}
