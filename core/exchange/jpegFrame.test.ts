import { describe, expect, test } from 'vitest';
import { aJpeg, anExifSegment } from '#tests/support/aJpeg.ts';
import { jpegFrame } from './jpegFrame.ts';

const segment = (marker: number, data: readonly number[]) => [0xff, marker, 0, data.length + 2, ...data];

describe('a JPEG read by its markers', () => {
  test('tells its width and height, in baseline and progressive frames', () => {
    expect(jpegFrame(aJpeg({ widthPx: 1600, heightPx: 901 }))).toEqual({ widthPx: 1600, heightPx: 901 });
    const progressive = aJpeg({ widthPx: 300, heightPx: 200 });
    progressive[progressive.indexOf(0xc0)] = 0xc2;
    expect(jpegFrame(progressive)).toEqual({ widthPx: 300, heightPx: 200 });
  });

  test('may say what it is and its colours, and nothing of place, time or camera', () => {
    const jfif = segment(0xe0, [0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0]);
    const profile = segment(0xe2, [...new TextEncoder().encode('ICC_PROFILE\0'), 1, 1]);
    expect(jpegFrame(aJpeg({ before: [...jfif, ...profile] }))).toEqual({ widthPx: 8, heightPx: 8 });
    expect(jpegFrame(aJpeg({ before: anExifSegment('54 12 N') }))).toBe('carries-data');
    expect(jpegFrame(aJpeg({ before: segment(0xed, [1, 2]) }))).toBe('carries-data');
    expect(jpegFrame(aJpeg({ before: segment(0xfe, [...new TextEncoder().encode('at the farm')]) }))).toBe(
      'carries-data',
    );
    expect(jpegFrame(Uint8Array.from([...aJpeg(), ...aJpeg()]))).toBe('carries-data'); // a second picture behind it
  });

  test('is none when it begins, ends or runs otherwise', () => {
    const jpeg = aJpeg();
    const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]);
    expect(jpegFrame(png)).toBe('not-a-jpeg');
    expect(jpegFrame(new Uint8Array())).toBe('not-a-jpeg');
    expect(jpegFrame(Uint8Array.from([0xff, 0xd8, 0xff, 0xd9]))).toBe('not-a-jpeg');
    for (let end = 0; end < jpeg.length; end++) expect(jpegFrame(jpeg.slice(0, end))).toBe('not-a-jpeg');
    const noFrame = aJpeg();
    noFrame[noFrame.indexOf(0xc0)] = 0xdb;
    expect(jpegFrame(noFrame)).toBe('not-a-jpeg');
  });
});
