import type { assemblyHalves, assemblyMove, assemblyMoveHalf } from '#core/contract/machine.ts';
import type { AskOf, ReplyOf } from '#core/contract/operation.ts';
import type { Day } from '#core/units/day.ts';

export type Halves = ReplyOf<typeof assemblyHalves>;
type Half = Halves['halves'][number];

/** What is to be moved: the whole, one half, or a half that lies apart on the shelf and is brought to this assembly. */
export type What = { is: 'whole' } | { is: 'half'; half: Half } | { is: 'shelved'; half: Halves['shelf'][number] };

export type MoveForm = {
  what: What;
  /** id of a machine (of the whole) or of an assembly (of a half); null: to the shelf, or not chosen yet */
  to: number | null;
  toShelf: boolean;
  theirs: 'in-exchange' | 'shelf';
  takenOn: Day | null;
  dialHours: number | null;
  toDialHours: number | null;
};

/** Whatever may be moved of an assembly, in the order it is offered. */
export const choicesOf = ({ halves, shelf }: Halves): What[] => [
  { is: 'whole' },
  ...halves.map((half): What => ({ is: 'half', half })),
  ...shelf.map((half): What => ({ is: 'shelved', half })),
];

/** One line of what goes where: what, from where, to where; null: the shelf. */
export type Going = { group: string | null; items: number[]; from: string | null; to: string | null };

/** Where each thing would be after the move, for the person to look at before it is done. */
export function goings(halves: Halves, form: MoveForm, machineName: (machineId: number) => string): Going[] {
  const here = placeOf(halves);
  const { what, theirs } = form;
  if (what.is === 'whole')
    return [{ group: null, items: [], from: halves.machine, to: form.to === null ? null : machineName(form.to) }];
  const target = targetOf(halves, form);
  const there = halfThere(halves, form);
  const itemsOf = (half: Half) => half.positions.map(({ item }) => item);
  const from = what.is === 'shelved' ? null : here;
  return [
    { group: what.half.group, items: itemsOf(what.half), from, to: target && placeOf(target) },
    ...(target && there
      ? [
          {
            group: there.group,
            items: itemsOf(there),
            from: placeOf(target),
            to: theirs === 'in-exchange' && what.is === 'half' ? here : null,
          },
        ]
      : []),
  ];
}

type Place = { assembly: string; machine: string | null };
const placeOf = ({ assembly, machine }: Place): string => (machine === null ? assembly : `${assembly}, ${machine}`);

function targetOf(
  halves: Halves,
  { what, to }: MoveForm,
): (Place & { assemblyId: number; machineId: number | null; halves: Half[] }) | null {
  if (what.is === 'shelved') return halves;
  return halves.others.find(({ assemblyId }) => assemblyId === to) ?? null;
}

/** The same half of the assembly it would go to, which must go somewhere itself. */
export function halfThere(halves: Halves, form: MoveForm): Half | null {
  const { what } = form;
  if (what.is === 'whole') return null;
  return targetOf(halves, form)?.halves.find(({ group }) => group === what.half.group) ?? null;
}

/** Which machines' dials are asked for: the one it comes off, the one it goes on; null: none there. */
export function dialsAsked(halves: Halves, form: MoveForm): { off: number | null; on: number | null } {
  const { what, to } = form;
  if (what.is === 'whole') return { off: halves.machineId, on: to };
  const target = targetOf(halves, form);
  return { off: what.is === 'shelved' ? null : halves.machineId, on: target?.machineId ?? null };
}

/** Ready to be sent: a day, and somewhere to go. */
export const isWhole = ({ what, to, toShelf, takenOn }: MoveForm): boolean =>
  takenOn !== null && (what.is === 'shelved' || toShelf || to !== null);

export function moveRequest(
  halves: Halves,
  form: MoveForm & { takenOn: Day },
): { whole: AskOf<typeof assemblyMove> } | { half: AskOf<typeof assemblyMoveHalf> } {
  const { what, to, takenOn, theirs } = form;
  const asked = dialsAsked(halves, form);
  const dialHours = asked.off === null ? null : form.dialHours;
  const toDialHours = asked.on === null ? null : form.toDialHours;
  if (what.is === 'whole')
    return { whole: { assemblyId: halves.assemblyId, takenOn, dialHours, toMachineId: to, toDialHours } };
  const fate = what.is === 'shelved' ? 'shelf' : theirs;
  return {
    half: {
      positionIds: what.half.positions.map(({ positionId }) => positionId),
      takenOn,
      dialHours,
      toAssemblyId: what.is === 'shelved' ? halves.assemblyId : to,
      toDialHours,
      theirs: halfThere(halves, form) ? fate : null,
    },
  };
}
