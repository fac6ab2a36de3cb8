import { expect, test } from 'vitest';
import { backupsToKeep } from './backupsToKeep.ts';

const MS_A_DAY = 86_400_000;

test('of two years of daily backups, the newest ten, four weeks and twelve months are kept', () => {
  const last = Date.parse('2026-11-09T07:30:00.000Z');
  const madeAts = Array.from({ length: 730 }, (_, days) => new Date(last - days * MS_A_DAY).toISOString());
  const kept = [...backupsToKeep(madeAts)].sort().reverse();
  expect(kept.slice(0, 10)).toEqual(madeAts.slice(0, 10));
  // one more week and ten more months than the newest ten are of
  expect(kept).toHaveLength(10 + 1 + 10);
  expect(kept[10]).toBe('2026-10-25T07:30:00.000Z');
  expect(kept.map((madeAt) => madeAt.slice(0, 7))).toContain('2025-12');
  expect(kept.map((madeAt) => madeAt.slice(0, 7))).not.toContain('2025-10');
});

test('of a week without a day off nothing is dropped', () => {
  const madeAts = ['2026-11-09', '2026-11-08', '2026-11-07', '2026-10-31'].map((day) => `${day}T07:30:00.000Z`);
  expect(backupsToKeep(madeAts)).toEqual(new Set(madeAts));
});
