import type { Picture } from './blocks.ts';

/** Hands over the bytes of a file that a case names; undefined when there is none, or when it may not be read. */
export type Pictures = (file: string) => Uint8Array | undefined;

/** Larger pictures are named and not embedded: a report of many cases must still open. */
export const largestPicture = 16 * 1024 * 1024;

/** A picture ready to stand in a page. The file's name says nothing about what it is: its first bytes do. */
export function pictureOf(file: string, alt: string, pictures: Pictures): Picture {
  const bytes = pictures(file);
  const missing = (why: string): Picture => ({
    kind: 'picture',
    file,
    alt,
    dataUri: undefined,
    missing: why,
  });
  if (bytes === undefined) return missing('The file could not be read.');
  if (bytes.length > largestPicture) return missing('The file is larger than 16 MiB.');
  const type = pictureType(bytes);
  if (type === undefined) return missing('The file is no PNG, JPEG, GIF or WebP picture.');
  return { kind: 'picture', file, alt, dataUri: `data:${type};base64,${base64(bytes)}`, missing: undefined };
}

/** By the marks that the formats start with. A drawing that can carry a program (SVG) is none of them. */
export function pictureType(bytes: Uint8Array): string | undefined {
  const starts = (mark: string, at = 0): boolean =>
    [...mark].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));
  if (starts('\x89PNG\r\n\x1a\n')) return 'image/png';
  if (starts('\xff\xd8\xff')) return 'image/jpeg';
  if (starts('GIF87a') || starts('GIF89a')) return 'image/gif';
  if (starts('RIFF') && starts('WEBP', 8)) return 'image/webp';
  return undefined;
}

const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** RFC 4648, section 4. */
export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  let part = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i;
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    part += digits.charAt(three >> 18) + digits.charAt((three >> 12) & 63);
    part += left > 1 ? digits.charAt((three >> 6) & 63) : '=';
    part += left > 2 ? digits.charAt(three & 63) : '=';
    if (part.length > 8192) {
      parts.push(part);
      part = '';
    }
  }
  parts.push(part);
  return parts.join('');
}
