import { type Buffer, isUtf8 } from 'node:buffer';
import { readFileSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { decode } from '../../core/casefile/decode.ts';
import { limits } from '../../core/casefile/limits.ts';
import { checkCharts } from '../../core/chart/checkCharts.ts';
import { type Diagnostic, diagnose } from '../../core/diagnostics/diagnostic.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { withFindings } from '../../core/study/studyOf.ts';
import type { Study } from '../../core/study/types.ts';
import { readFileBeside } from '../disk/fileBeside.ts';
import { reasonOf } from './reasonOf.ts';

/** In UTF-8 a UTF-16 unit takes three bytes at most; before the first may stand a byte-order mark. */
const mostBytes = limits.fileLength * 3 + 3;

const start = { start: 0, end: 0 };

/** A case from its file. A file that cannot be read, or is no text, is a case with that finding. */
export function studyFile(path: string): Study {
  const bytes = bytesOf(path);
  if (!(bytes instanceof Uint8Array)) return unread([bytes]);
  // What is plainly UTF-8 needs no closer look; a zero byte may be UTF-16 without its mark.
  if (isUtf8(bytes) && !bytes.includes(0)) return studied(bytes.toString('utf8'), path);
  const { value, diagnostics } = decode(bytes);
  if (value === undefined) return unread(diagnostics);
  return studied(value, path);
}

function studied(text: string, path: string): Study {
  return checkCharts(checkCase(text, undefined, (file) => readFileBeside(dirname(path), file)));
}

/** The whole file, unless its size says that it is no case: that is not read. */
function bytesOf(path: string): Buffer | Diagnostic {
  try {
    // Asked before it is opened: opening a pipe waits until someone writes to it.
    const about = statSync(path);
    if (about.isDirectory()) return diagnose('unreadable-file', start, { why: 'it is a folder' });
    if (!about.isFile()) return diagnose('unreadable-file', start, { why: 'it is a device and no file' });
    if (about.size > mostBytes) {
      return diagnose('file-too-large', start, {
        size: mebibytes(about.size),
        most: mebibytes(limits.fileLength),
      });
    }
    return readFileSync(path);
  } catch (error) {
    return diagnose('unreadable-file', start, { why: reasonOf(error) });
  }
}

const mebibytes = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MiB`;

function unread(diagnostics: readonly Diagnostic[]): Study {
  return withFindings(
    checkCase(''),
    diagnostics.map((diagnostic) => ({ cell: undefined, diagnostic })),
    [],
  );
}
