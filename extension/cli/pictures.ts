import { readFileSync } from 'node:fs';
import { largestPicture, type Pictures } from '../../core/report/picture.ts';
import { placeBeside } from '../disk/fileBeside.ts';

/** The pictures in a case's own folder or below. A path that leads out of it, or to no file, gives none. */
export function picturesBeside(folder: string): Pictures {
  return (file) => {
    const place = placeBeside(folder, file);
    if ('is' in place) return place.is === 'too large' ? tooLarge() : undefined;
    try {
      return place.about.size > largestPicture ? tooLarge() : readFileSync(place.path);
    } catch {
      return undefined;
    }
  };
}

/** One byte too many is enough for the report to say that it is too large. */
const tooLarge = (): Uint8Array => new Uint8Array(largestPicture + 1);
