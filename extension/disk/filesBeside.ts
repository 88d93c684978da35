import type { CaseFiles, FileContent } from '../../core/recording/files.ts';
import { placeBeside, readPlace } from './fileBeside.ts';

/**
 * The files beside a case. What was read is kept while the disk says that it is the same file of the same size and
 * time, so that a study after a keystroke costs a look at the disk and no more.
 */
export function filesBeside(folder: string): CaseFiles {
  const kept = new Map<string, { readonly stamp: string; readonly content: FileContent }>();
  return (file) => {
    const place = placeBeside(folder, file);
    if ('is' in place) {
      kept.delete(file);
      return { kind: 'none', why: place };
    }
    const { size, mtimeMs, ctimeMs, ino } = place.about;
    const stamp = [place.path, size, mtimeMs, ctimeMs, ino].join('\n');
    const known = kept.get(file);
    if (known?.stamp === stamp) return known.content;
    const content = readPlace(place);
    kept.set(file, { stamp, content });
    return content;
  };
}
