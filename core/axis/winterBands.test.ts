import { describe, expect, it } from 'vitest';
import { hoursScale, hoursToPx } from './scale.ts';
import { textWidth } from './textWidth.ts';
import { type Winter, winterBands } from './winterBands.ts';

const winters = (firstHours: number, hoursPerYear: number, count = 5): Winter[] =>
  Array.from({ length: count }, (_, i) => ({
    name: `${26 + i}/${27 + i}`,
    fromHours: firstHours + i * hoursPerYear,
    toHours: firstHours + i * hoursPerYear + 0.23 * hoursPerYear,
  }));

describe('winters on the axis', () => {
  const scale = hoursScale({ fromHours: 1500, toHours: 10600, fromPx: 0, toPx: 750 });

  it('lie where the machine will have run to, each with its name beside it', () => {
    const shown = winterBands(winters(6860, 780), scale, 14);
    expect(shown.bands).toHaveLength(5);
    expect(shown.bands[1]).toMatchObject({
      name: '27/28',
      x0: hoursToPx(scale, 7640),
      leftEdge: true,
      rightEdge: true,
    });
    expect(shown.names.map((name) => name.name)).toEqual(['26/27', '27/28', '28/29', '29/30', '30/31']);
  });

  it('are named every second or third where they lie close, and no name touches the next', () => {
    const shown = winterBands(winters(6860, 200, 15), scale, 14);
    expect(shown.bands).toHaveLength(15);
    expect(shown.names.length).toBeLessThan(9);
    expect(shown.names[0]?.name).toBe('26/27');
    for (const [i, name] of shown.names.entries()) {
      const next = shown.names[i + 1];
      if (next) expect(next.x).toBeGreaterThanOrEqual(name.x + textWidth(name.name, 14) + 4);
    }
  });

  it('are left out, and said to be, where they would run together', () => {
    expect(winterBands(winters(6860, 30, 30), scale, 14)).toEqual({ bands: [], names: [], tooClose: true });
  });

  it('have no edge where they go on off the scale', () => {
    const shown = winterBands(
      [
        { name: '26/27', fromHours: 1000, toHours: 1600 },
        { name: '27/28', fromHours: 10500, toHours: 10900 },
      ],
      scale,
      14,
    );
    expect(shown.bands).toMatchObject([
      { x0: 0, leftEdge: false, rightEdge: true },
      { x1: 750, leftEdge: true, rightEdge: false },
    ]);
    expect(shown.names.map((name) => name.name)).toEqual(['26/27']);
  });
});
