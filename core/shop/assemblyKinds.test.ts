import { describe, expect, it } from 'vitest';
import { builtInAssemblyKinds } from './assemblyKinds.ts';

/** A ring on screen at 230 px width, the narrowest the drawing is shown [px] */
const SHOWN_WIDTH_PX = 230;
const RING_RADIUS_PX = 9;

describe.each(builtInAssemblyKinds.map((kind) => [kind.name, kind] as const))('%s', (_name, kind) => {
  const sketch = kind.sketch!;

  it('numbers its positions from 1 and names each once', () => {
    expect(kind.positions.length).toBeGreaterThanOrEqual(8);
    expect(kind.positions.map((at) => at.item)).toEqual(kind.positions.map((_, i) => i + 1));
    expect(new Set(kind.positions.map((at) => at.name)).size).toBe(kind.positions.length);
    for (const position of kind.positions)
      expect(new Set(position.points.map((at) => at.name)).size, position.name).toBe(position.points.length);
  });

  it('wears from its new size towards renew-at, and on to reject-at', () => {
    for (const point of kind.positions.flatMap((at) => at.points)) {
      if (point.renewAtMm === null) continue;
      const way = point.wears === 'up' ? 1 : -1;
      expect(way * (point.renewAtMm - point.newSizeMm), point.name).toBeGreaterThan(0);
      expect(way * (point.rejectAtMm! - point.renewAtMm), point.name).toBeGreaterThan(0);
      // a limit without whose figure it is may not be printed
      expect(point.limitSource, point.name).not.toBeNull();
    }
  });

  it('has a ring on its drawing for every position, none on another, none off the sheet', () => {
    expect(sketch.items.map((at) => at.item)).toEqual(kind.positions.map((at) => at.item));
    const pxPerUnit = SHOWN_WIDTH_PX / sketch.width;
    for (const item of sketch.items) {
      const x = item.ring.x * pxPerUnit;
      const y = item.ring.y * pxPerUnit;
      expect(Math.min(x, y), `ring ${item.item}`).toBeGreaterThanOrEqual(RING_RADIUS_PX);
      expect(x, `ring ${item.item}`).toBeLessThanOrEqual(SHOWN_WIDTH_PX - RING_RADIUS_PX);
      expect(y, `ring ${item.item}`).toBeLessThanOrEqual(sketch.height * pxPerUnit - RING_RADIUS_PX);
      for (const other of sketch.items.filter((at) => at.item > item.item)) {
        const apart = Math.hypot(item.ring.x - other.ring.x, item.ring.y - other.ring.y) * pxPerUnit;
        expect(apart, `rings ${item.item} and ${other.item}`).toBeGreaterThan(2 * RING_RADIUS_PX);
      }
    }
  });

  it('is drawn inside its sheet', () => {
    for (const { x, y } of sketch.items.flatMap((at) => [at.at, at.ring])) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(sketch.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(sketch.height);
    }
    for (const shape of sketch.shapes) expect(shape.d).toMatch(/^M[\dMLHVCSQAaZ .-]+$/);
  });
});

describe('the built-in kinds', () => {
  it('carry no limit of their own for hook and ring: it belongs to the part number', () => {
    const towing = builtInAssemblyKinds
      .flatMap((kind) => kind.positions)
      .flatMap((at) => at.points)
      .filter((point) => /hook|ring/i.test(point.partClass));
    expect(towing.length).toBeGreaterThan(4);
    for (const point of towing) expect([point.renewAtMm, point.rejectAtMm]).toEqual([null, null]);
  });

  it('mark what tows or holds a load as a safety part', () => {
    const safety = builtInAssemblyKinds.flatMap((kind) =>
      kind.positions.filter((at) => at.safety).map((at) => at.name),
    );
    for (const name of ['Hook', 'Ring', 'Keeper', 'Latch pin, left', 'Tool lock pin, right', 'Drawbar pivot, left'])
      expect(safety).toContain(name);
  });
});
