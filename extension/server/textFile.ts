import type { Written } from './written.ts';

/** A case that is open as text. */
export interface TextFile {
  readonly kind: 'text';
  readonly uri: string;
  readonly version: number;
  readonly text: string;
}

export function writtenFile({ uri, version, text }: TextFile): Written {
  const documents = [{ uri, version, text, isNote: false, of: undefined }];
  return { file: text, documents, starts: [0], isOneToOne: false };
}
