import type { Rebuild } from '../../contract/rebuild.ts';
import type { FoundAtPlace } from '../../papers/rebuild/foundAtPlace.ts';
import { listAssemblies, positionsOf } from '../../record/assemblyStore.ts';
import { sizeRowsOfPoints } from '../../record/sizeStore.ts';
import { stripDownsOf } from '../../record/stripDownStore.ts';
import type { Day } from '../../units/day.ts';
import { type Context, recordOf } from '../context.ts';
import { pointsOnMachine } from '../pointsOnMachine.ts';
import { seriesAround } from '../seriesNow.ts';

/**
 * What was measured and seen on a job's machine from its intake to its hand-over, place by place in the order of items.
 * Sizes struck or put right since are as they stand now; findings are told whether they were closed or not.
 */
export function foundOnJob(
  context: Context,
  job: Pick<Rebuild, 'machineId' | 'takenInOn' | 'handedOverOn'>,
): FoundAtPlace[] {
  const record = recordOf(context);
  const isOfJob = ({ takenOn }: { takenOn: Day }) =>
    takenOn >= job.takenInOn && (job.handedOverOn === null || takenOn <= job.handedOverOn);
  const visits = stripDownsOf(record, job.machineId).filter(isOfJob);
  const positions = new Map(positionsOf(record).map((position) => [position.id, position]));
  const assemblies = new Map(listAssemblies(record).map(({ id, name }) => [id, name]));
  const places = new Map<string, FoundAtPlace>();
  const at = (positionId: number | null, assemblyId: number): FoundAtPlace => {
    const key = positionId === null ? `assembly ${assemblyId}` : `position ${positionId}`;
    const position = positionId === null ? undefined : positions.get(positionId);
    const named = { item: position?.item ?? null, place: position?.name ?? assemblies.get(assemblyId) ?? '' };
    const place = places.get(key) ?? { positionId, ...named, sizes: [], findings: [] };
    places.set(key, place);
    return place;
  };
  const points = new Map(visits.flatMap(({ takenOn }) => [...pointsOnMachine(context, job.machineId, takenOn)]));
  const ids = new Set(visits.map(({ id }) => id));
  for (const row of sizeRowsOfPoints(record, [...points.keys()])) {
    const point = points.get(row.pointId)?.details;
    if (!point || !ids.has(row.stripDownId) || row.undone || row.superseded || row.struck) continue;
    const { station, event, sizeMm, gaugeStepMm: stepMm, parked } = row;
    at(point.positionId, point.assemblyId).sizes.push({ point: point.name, station, event, sizeMm, stepMm, parked });
  }
  const { life } = seriesAround(context, job.machineId);
  for (const finding of life.findings.filter((one) => one.machineId === job.machineId && isOfJob(one)))
    at(finding.positionId, finding.assemblyId).findings.push(finding);
  return [...places.values()].sort((a, b) => (a.item ?? 0) - (b.item ?? 0));
}
