import type { z } from 'zod';
import type { zFinding } from '../../contract/machine.ts';
import type { ComeInBy } from '../../contract/recall.ts';
import { lastRead } from '../../reading/machineHours.ts';
import type { Finding } from '../../shop/finding.ts';
import { hoursSourceOn } from '../../shop/machineLife.ts';
import type { MachineOnRecord } from '../../shop/shopLife.ts';
import { type Day, day } from '../../units/day.ts';
import { dialGoneBy } from '../../way/dialGoneBy.ts';
import { isStop, openFindings } from '../../way/openFindings.ts';
import type { PointOutlook } from '../../way/pointForecast.ts';
import type { ShopSeries } from '../../way/shopSeries.ts';
import { findingSheet } from '../findingSheet.ts';
import { bySoonest } from '../machineLine.ts';

/** What a machine's owner is called for: worked out of the machine alone, and kept with its forecast. */
export type Due = {
  /** open findings that forbid its use, or stand where it tows or lifts; oldest first */
  safetyFindings: z.input<typeof zFinding>[];
  /** by which hours it comes in; null: nothing is forecast */
  comeInBy: ComeInBy | null;
  /** its first part by deciding hours, and about when; null: nothing is forecast */
  deciding: { hoursLeft: number; on: Day | null } | null;
  /** last day its meter was read, or its hours told some other way; null: never */
  hoursReadOn: Day | null;
  hasMeter: boolean;
};

export function dueOf(shop: ShopSeries, machine: MachineOnRecord, points: readonly PointOutlook[]): Due {
  const { machineId } = machine;
  const first = firstByHours(points);
  return {
    safetyFindings: safetyFindings(shop, machineId).map((finding) => findingSheet(finding, shop.life)),
    comeInBy: comeInBy(shop, machineId, points),
    deciding:
      first?.decidingHoursLeft == null
        ? null
        : { hoursLeft: first.decidingHoursLeft, on: dayOrNull(first.dateAtLimit[first.decides]) },
    hoursReadOn: lastToldOn(shop, machine),
    hasMeter: hoursSourceOn(machine.hoursSources ?? [], shop.asOf)?.kind !== 'yearly',
  };
}

/** When its meter was last read, or that it goes by; where nobody ever read one, when its hours were last told some other way. */
function lastToldOn(shop: ShopSeries, { machineId, dialEvents }: MachineOnRecord): Day | null {
  const machine = shop.hours.ofMachine(machineId);
  const read = machine && (dialGoneBy(shop.hours, machine, shop.asOf)?.readOn ?? lastRead(machine.line)?.takenOn);
  return read ?? dialEvents.findLast(({ kind, parked }) => kind === 'estimate' && !parked)?.takenOn ?? null;
}

const dayOrNull = (text: string | null): Day | null => (text === null ? null : day(text));

/** The part its machine is called in by. */
const firstByHours = (points: readonly PointOutlook[]): PointOutlook | undefined =>
  points.filter((point) => point.decidingHoursLeft !== null).sort(bySoonest)[0];

/** Open findings that forbid use, or stand where a machine tows or lifts; one on a whole assembly does if anything of it does. */
function safetyFindings(shop: ShopSeries, machineId: number): readonly Finding[] {
  const open = openFindings(shop.life, shop.asOf).ofMachine(machineId);
  if (open.length === 0) return open;
  const tows = shop.life.points.filter(({ safety }) => safety);
  const assemblies = new Set(tows.map(({ assemblyId }) => assemblyId));
  const positions = new Set(tows.map(({ positionId }) => positionId));
  const isSafety = ({ positionId, assemblyId }: Finding): boolean =>
    positionId === null ? assemblies.has(assemblyId) : positions.has(positionId);
  return open.filter((finding) => isStop(finding) || isSafety(finding));
}

/** By which hours a machine comes in, as its owner reads them; null: nothing is forecast. */
export function comeInBy(shop: ShopSeries, machineId: number, points: readonly PointOutlook[]): ComeInBy | null {
  const first = firstByHours(points);
  const at = first?.machineHoursAtLimit[first.decides];
  if (!first || first.decidingHoursLeft === null || at == null) return null;
  const machine = shop.hours.ofMachine(machineId);
  const dial = machine ? dialGoneBy(shop.hours, machine, shop.asOf) : null;
  const scale = dial && dial.of.meterDigits !== null ? 10 ** dial.of.meterDigits : null;
  const onDial = dial && dial.dialHoursNow + first.decidingHoursLeft / dial.hoursPerDialHour;
  const isAnothers = dial !== null && dial.of.machineId !== machineId;
  return {
    item: first.item,
    label: `${first.position}, ${first.point}`,
    decides: first.decides,
    dialHours: onDial === null ? at : scale !== null && onDial >= 0 ? onDial % scale : onDial,
    hoursAre: onDial === null ? 'machine' : 'dial',
    dialMachine: isAnothers ? dial.of.name : null,
    hoursLeft: first.hoursLeft,
    decidingHoursLeft: first.decidingHoursLeft,
    about: dayOrNull(first.dateAtLimit[first.decides]),
    guessed: first.ownReadings === 0 && first.pastLimitMm === null,
  };
}
