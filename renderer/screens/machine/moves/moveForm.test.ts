import { describe, expect, it } from 'vitest';
import { day } from '#core/units/day.ts';
import { choicesOf, dialsAsked, goings, type Halves, type MoveForm, moveRequest } from './moveForm.ts';

const carrier = (first: number) => ({
  group: 'carrier',
  positions: [
    { positionId: first, item: 1, name: 'Slide strip, top' },
    { positionId: first + 1, item: 13, name: 'Hook' },
  ],
});
const halves: Halves = {
  assemblyId: 1,
  assembly: 'Pick-up hitch',
  machineId: 10,
  machine: 'Tarrow 90',
  kind: 'Telescopic pick-up hitch',
  halves: [carrier(100)],
  others: [{ assemblyId: 2, assembly: 'Pick-up hitch', machineId: 20, machine: 'Harrod 118', halves: [carrier(200)] }],
  shelf: [
    {
      ...carrier(300),
      since: day('2024-01-01'),
      last: { assemblyId: 3, assembly: 'Old hitch', machineId: null, machine: null },
    },
  ],
};
const form = (change: Partial<MoveForm>): MoveForm & { takenOn: ReturnType<typeof day> } => ({
  what: { is: 'half', half: halves.halves[0]! },
  to: 2,
  toShelf: false,
  theirs: 'in-exchange',
  dialHours: 2000,
  toDialHours: 6500,
  ...change,
  takenOn: day('2024-02-01'),
});
const name = () => 'Harrod 118';

describe('moving half of an assembly', () => {
  it('offers the whole, its halves and those on the shelf', () => {
    expect(choicesOf(halves).map(({ is }) => is)).toEqual(['whole', 'half', 'shelved']);
  });
  it('shows both halves changing places, each with its items', () => {
    expect(goings(halves, form({}), name)).toEqual([
      { group: 'carrier', items: [1, 13], from: 'Pick-up hitch, Tarrow 90', to: 'Pick-up hitch, Harrod 118' },
      { group: 'carrier', items: [1, 13], from: 'Pick-up hitch, Harrod 118', to: 'Pick-up hitch, Tarrow 90' },
    ]);
    expect(goings(halves, form({ theirs: 'shelf' }), name)[1]?.to).toBeNull();
    expect(goings(halves, form({ to: null, toShelf: true }), name)).toHaveLength(1);
  });
  it('brings one from the shelf here, and what is here goes to the shelf', () => {
    const shelved = form({ what: { is: 'shelved', half: halves.shelf[0]! }, to: null });
    expect(goings(halves, shelved, name).map(({ from, to }) => [from, to])).toEqual([
      [null, 'Pick-up hitch, Tarrow 90'],
      ['Pick-up hitch, Tarrow 90', null],
    ]);
    expect(dialsAsked(halves, shelved)).toEqual({ off: null, on: 10 });
    expect(moveRequest(halves, shelved)).toMatchObject({
      half: { positionIds: [300, 301], toAssemblyId: 1, dialHours: null, toDialHours: 6500, theirs: 'shelf' },
    });
  });
  it('asks for no dial of the shelf', () => {
    expect(moveRequest(halves, form({ to: null, toShelf: true }))).toMatchObject({
      half: { toAssemblyId: null, dialHours: 2000, toDialHours: null, theirs: null },
    });
    expect(moveRequest(halves, form({ what: { is: 'whole' }, to: 20 }))).toEqual({
      whole: { assemblyId: 1, takenOn: '2024-02-01', dialHours: 2000, toMachineId: 20, toDialHours: 6500 },
    });
  });
});
