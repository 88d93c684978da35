import type { WhyNoFile } from '../../core/recording/files.ts';
import { noFormat } from '../../core/recording/layout.ts';
import { captureFromFile } from '../../core/service/captureFromFile.ts';
import type { Study } from '../../core/study/types.ts';
import type { CaptureFromFileResult } from '../shared/protocol.ts';
import type { FilesOfCases } from './caseFiles.ts';

/** A capture and readings for a file beside a case, with names that the case does not have yet. */
export async function cellsFor(
  uri: string,
  file: string,
  study: Study | undefined,
  files: FilesOfCases,
): Promise<CaptureFromFileResult> {
  const read = files.of(uri);
  read(file);
  await files.settled(uri);
  const content = read(file);
  if (content.kind === 'none') return { why: inWords(content.why) };
  const taken = new Set(study?.memo.names.prefixes.keys());
  const made = captureFromFile({ file, content, format: noFormat, taken, at: undefined });
  if (!('why' in made)) return { cells: made.cells, readAs: made.readAs };
  return made.asks === undefined ? { why: made.why } : { cells: [made.asks.cell], asks: made.why };
}

function inWords(why: WhyNoFile): string {
  switch (why.is) {
    case 'not there':
      return 'it is not there';
    case 'a folder':
      return 'it is a folder';
    case 'outside':
      return 'it lies outside the case’s folder';
    case 'not saved':
      return 'the case is not saved yet, and files are looked for beside it';
    case 'too large':
    case 'too large inside':
      return 'it is larger than a capture may be. Export a shorter stretch or fewer channels';
    case 'packing damaged':
      return 'its packing is damaged or ends too early';
    case 'on its way':
      return 'it is still being fetched';
    case 'not readable':
      return why.reason;
  }
}
