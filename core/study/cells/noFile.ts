import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { largestFile, type WhyNoFile } from '../../recording/files.ts';

/** What is said of a file that the host does not hand over; nothing while it is on its way. */
export function noFile(why: WhyNoFile, name: string, { span }: TextNode): Diagnostic | undefined {
  const unreadable = (reason: string): Diagnostic =>
    diagnose('capture-file-unreadable', span, { file: name, why: reason });
  switch (why.is) {
    case 'on its way':
      return undefined;
    case 'not there':
      return diagnose('capture-file-missing', span, { file: name });
    case 'outside':
      return diagnose('capture-file-outside', span, { file: name, how: why.how });
    case 'too large':
    case 'too large inside':
      return diagnose('capture-file-too-large', span, {
        file: name,
        size: mebibytes(why.size),
        most: mebibytes(largestFile),
        packed: why.is === 'too large inside',
      });
    case 'a folder':
      return unreadable('it is a folder');
    case 'not saved':
      return unreadable('the case is not saved yet, and files are looked for beside it. Save the case first');
    case 'packing damaged':
      return unreadable(
        'it is packed, and its packing is damaged or ends too early. Copy it again, or unpack it and name the unpacked file',
      );
    case 'not readable':
      return unreadable(why.reason);
  }
}

const mebibytes = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MiB`;
