import { readFileSync, realpathSync, statSync } from 'node:fs';
import { isAbsolute, join, relative, sep } from 'node:path';
import { largestPicture, type Pictures } from '../../core/report/picture.ts';

/**
 * The pictures in a case's own folder or below. A path that leads out of it, by `..`, from the root, by a scheme or
 * through a link, is not followed.
 */
export function picturesBeside(folder: string): Pictures {
  return (file) => {
    if (isAbsolute(file) || /^[A-Za-z][\w+.-]*:/.test(file) || file.split(/[\\/]/).includes('..'))
      return undefined;
    try {
      const home = realpathSync(folder);
      const path = realpathSync(join(home, file));
      const inside = relative(home, path);
      if (inside === '' || inside === '..' || inside.startsWith(`..${sep}`) || isAbsolute(inside))
        return undefined;
      const { size } = statSync(path);
      // One byte too many is enough for the report to say that it is too large.
      return size > largestPicture ? new Uint8Array(largestPicture + 1) : readFileSync(path);
    } catch {
      return undefined;
    }
  };
}
