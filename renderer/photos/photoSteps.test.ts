import { describe, expect, test } from 'vitest';
import { photoSteps } from './photoSteps.ts';

describe('ways to draw a photo small', () => {
  test('begin at 1600 px for the long side and lower the quality before the size', () => {
    const steps = photoSteps(4000, 3000);
    expect(steps[0]).toEqual({ widthPx: 1600, heightPx: 1200, quality: 0.86 });
    expect(steps[4]).toEqual({ widthPx: 1600, heightPx: 1200, quality: 0.5 });
    expect(steps[5]).toEqual({ widthPx: 1280, heightPx: 960, quality: 0.86 });
    expect(photoSteps(3000, 4000)[0]).toMatchObject({ widthPx: 1200, heightPx: 1600 });
  });

  test('draw nothing larger than it is, and always at least a pixel', () => {
    expect(photoSteps(200, 100)).toHaveLength(5);
    expect(photoSteps(200, 100)[0]).toMatchObject({ widthPx: 200, heightPx: 100 });
    expect(photoSteps(20_000, 3)[0]).toMatchObject({ widthPx: 1600, heightPx: 1 });
  });
});
