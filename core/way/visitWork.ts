import type { Because, VisitWork } from '../contract/plan.ts';
import type { MachineInPlan } from './machineInPlan.ts';

export type Extra = VisitWork['extras'][number];

/** Work done at some positions of a machine in one visit: every take-off once, and what the same is as visits of their own. */
export function workOfVisit(
  machine: MachineInPlan,
  positionIds: readonly number[],
  becauseOf: (positionId: number) => Because,
  rest: { extras?: readonly Extra[]; risk?: number; rebuildId?: number | null } = {},
): VisitWork {
  const { takeOffHours, visitHours } = machine.years;
  const parts = machine.parts.filter(({ partId }) => positionIds.includes(partId));
  const codes = [...new Set(parts.flatMap(({ takeOffs }) => takeOffs))];
  const { extras = [], risk = 0, rebuildId = null } = rest;
  const hoursOf = (code: string) => takeOffHours.get(code) ?? 0;
  const apart = parts.reduce(
    (sum, { takeOffs, ownHours }) => sum + visitHours + ownHours + takeOffs.reduce((so, code) => so + hoursOf(code), 0),
    extras.reduce((sum, { hours }) => sum + hours, parts.length === 0 ? visitHours : 0),
  );
  return {
    positions: parts.map(({ partId, ownHours, partsCost }) => ({
      ...{ positionId: partId, ownHours: toHundredth(ownHours), partsHours: toHundredth(partsCost) },
      because: becauseOf(partId),
    })),
    takeOffs: codes.map((code) => ({ code, name: machine.takeOffNames.get(code) ?? '', hours: hoursOf(code) })),
    ...{ visitHours, extras: [...extras], apartHours: toHundredth(apart), risk: toHundredth(risk), rebuildId },
  };
}

/** A position put in by hand, or that nothing is known of. */
export const becauseSaid = (reason: Because['reason']): Because => ({
  ...{ reason, lifeLeft: null, goodUntilHours: null, chancePast: null, openedWith: [] },
  ...{ leavingItCosts: null, moreStripDownHours: null, moreBreakdown: null },
});

/** Kept figures are told to a hundredth; more digits would only make the record longer. */
export const toHundredth = (value: number): number => Math.round(value * 100) / 100;
