import { describe, expect, it } from 'vitest';
import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import { day } from '../units/day.ts';
import { hoursLine } from './hoursLine.ts';
import { withSeenDials } from './seenDials.ts';

const anEvent = (takenOn: string, dialHours: number, more: Partial<DialEvent> = {}): DialEvent => ({
  id: 1,
  takenOn: day(takenOn),
  kind: 'reading',
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
  ...more,
});
const LIFE: MachineLife = {
  machineId: 1,
  meterDigits: 5,
  hoursBefore: null,
  workShares: [],
  dialEvents: [
    anEvent('2024-01-10', 3000),
    anEvent('2025-01-10', 3500, { kind: 'new-meter', newDialHours: 0 }),
    anEvent('2025-06-10', 200),
  ],
};
const seen = (takenOn: string, dialHours: number) => {
  const life = withSeenDials(LIFE, [{ takenOn: day(takenOn), dialHours }]);
  const line = hoursLine(life, day('2030-01-01'));
  return {
    rows: life.dialEvents.map((event) => event.dialHours),
    cautions: line.cautions,
    last: line.nodes.at(-1)!.machineHours,
  };
};

describe('a dial noted beside a size', () => {
  it('is a reading of its day', () => {
    expect(seen('2024-06-10', 3200)).toEqual({ rows: [3000, 3200, 3500, 200], cautions: [], last: 3700 });
    expect(seen('2026-06-10', 700)).toEqual({ rows: [3000, 3500, 200, 700], cautions: [], last: 4200 });
  });
  it('is not taken twice', () => {
    expect(seen('2024-01-10', 3000).rows).toEqual([3000, 3500, 200]);
    expect(seen('2025-01-10', 0).rows).toEqual([3000, 3500, 200]);
  });
  it('on the day of a new meter goes to the meter it belongs to', () => {
    expect(seen('2025-01-10', 3498)).toEqual({ rows: [3000, 3498, 3500, 200], cautions: [], last: 3700 });
    expect(seen('2025-01-10', 4)).toEqual({ rows: [3000, 3500, 4, 200], cautions: [], last: 3700 });
  });
});
