import type { ShopLife } from './shopLife.ts';

/**
 * The shop as it is now, with every machine and point that reads as before being the very same object as before: what was
 * worked out of it need not be worked out again.
 */
export function sameLife(before: ShopLife, now: ShopLife): ShopLife {
  const machines = new Map(before.machines.map((machine) => [machine.machineId, machine]));
  const points = new Map(before.points.map((point) => [point.pointId, point]));
  return {
    ...now,
    machines: now.machines.map((machine) => same(machines.get(machine.machineId), machine)),
    points: now.points.map((point) => same(points.get(point.pointId), point)),
  };
}

const same = <T>(before: T | undefined, now: T): T => (before !== undefined && readsAlike(before, now) ? before : now);

/** Plain data alike in every value, down to the last. */
export function readsAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((one, i) => readsAlike(one, b[i]));
  if (Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && readsAlike(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}
