import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { base64, largestPicture, pictureOf, pictureType } from '../../core/report/picture.ts';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('what a picture is', () => {
  // The marks: PNG (ISO/IEC 15948, 5.2), JPEG (ITU-T T.81, B.1.1.3), GIF 89a, WebP (RFC 9649, 2.5).
  it.each([
    ['\x89PNG\r\n\x1a\n….', 'image/png'],
    ['\xff\xd8\xff\xe0..JFIF', 'image/jpeg'],
    ['GIF87a…', 'image/gif'],
    ['GIF89a…', 'image/gif'],
    ['RIFF\x24\0\0\0WEBPVP8 ', 'image/webp'],
    ['<svg xmlns="http://www.w3.org/2000/svg">', undefined],
    ['<?xml version="1.0"?><svg>', undefined],
    ['%PDF-1.7', undefined],
    ['RIFF\x24\0\0\0WAVEfmt ', undefined],
    ['\x89PN', undefined],
    ['', undefined],
  ])('is told by its first bytes: %j', (start, type) => {
    expect(pictureType(bytes(start))).toBe(type);
  });
});

describe('a picture in a page', () => {
  it('carries its bytes', () => {
    expect(pictureOf('a.txt', 'A gasket.', () => bytes('GIF89a')).dataUri).toBe(
      'data:image/gif;base64,R0lGODlh',
    );
  });

  it.each([
    ['is not there', undefined, 'The file could not be read.'],
    [
      'is a drawing that could carry a program',
      bytes('<svg onload="x">'),
      'The file is no PNG, JPEG, GIF or WebP picture.',
    ],
    ['is too large', new Uint8Array(largestPicture + 1), 'The file is larger than 16 MiB.'],
  ])('says so when the file %s', (_, found, says) => {
    expect(pictureOf('a.png', 'A gasket.', () => found)).toEqual({
      kind: 'picture',
      file: 'a.png',
      alt: 'A gasket.',
      dataUri: undefined,
      missing: says,
    });
  });
});

describe('bytes as text', () => {
  it('are those of the platform’s own encoder', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (some) => {
        expect(base64(some)).toBe(Buffer.from(some).toString('base64'));
      }),
    );
    const large = Uint8Array.from({ length: 30_000 }, (_, i) => (i * 7) % 256);
    expect(base64(large)).toBe(Buffer.from(large).toString('base64'));
  });
});
