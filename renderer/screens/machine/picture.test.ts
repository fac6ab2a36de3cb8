import { describe, expect, it } from 'vitest';
import { hoursToPx } from '#core/axis/scale.ts';
import { samplePictures } from '#renderer/screens/marks/samplePictures.ts';
import { widestRoom } from './ChosenNote.tsx';
import { pictureLayout } from './pictureLayout.ts';
import type { PictureProps } from './pictureProps.ts';

const props = (name: string): PictureProps => ({
  ...(samplePictures[name] as PictureProps),
  chosenId: 3,
  onChoose: () => {},
});

describe('the columns of the picture', () => {
  it('give a wider window to the rule', () => {
    const [narrower, wider] = [1100, 1900].map((width) => pictureLayout(props('ordinary'), width));
    const rulePx = (layout: typeof narrower) => (layout ? layout.hours.toPx - layout.hours.fromPx : 0);
    expect(rulePx(wider)).toBeGreaterThan(rulePx(narrower) + 500);
    expect(wider?.hours.fromHours).toBe(narrower?.hours.fromHours);
  });

  it('give long names more room, and never more than a quarter of the window', () => {
    const plain = pictureLayout(props('ordinary'), 1280);
    const long = pictureLayout(props('long-names'), 1280);
    expect(long.leftPx).toBeGreaterThan(plain.leftPx);
    expect(long.leftPx).toBeLessThanOrEqual(0.26 * 1280 + 1);
  });

  it('stand over the axis in a window too narrow for three columns', () => {
    const layout = pictureLayout(props('ordinary'), 640);
    expect(layout.kind).toBe('narrow');
    expect(layout.hours.toPx - layout.hours.fromPx).toBeGreaterThan(500);
  });

  it('leave room to show what has passed, what is planned and every middle', () => {
    const picture = props('ordinary');
    const { hours } = pictureLayout(picture, 1280);
    for (const row of picture.rows.filter((r) => r.doNotUse === null)) {
      expect(hoursToPx(hours, row.atLimit.middle ?? 0)).toBeLessThan(hours.toPx);
      expect(hoursToPx(hours, row.atLimit.low ?? 0)).toBeGreaterThan(hours.fromPx);
    }
    expect(hoursToPx(hours, picture.planLineHours ?? 0)).toBeLessThan(hours.toPx);
  });

  it('stand for a machine with no hours and no readings', () => {
    const bare = { ...props('no-hours'), rows: [] };
    expect(pictureLayout(bare, 1280).hours.toHours).toBeGreaterThan(0);
  });
});

describe('the note beside the chart', () => {
  it('stands in the widest room between the labels of the limits', () => {
    expect(widestRoom([20, 150, 210], 230)).toEqual({ from: 30, height: 110 });
    expect(widestRoom([200, 215], 230)).toEqual({ from: 0, height: 190 });
    expect(widestRoom([], 230)).toEqual({ from: 0, height: 230 });
  });
});
