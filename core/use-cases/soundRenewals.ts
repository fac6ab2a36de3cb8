import type { StripDownDraft } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import type { BenchPoint } from './pointsOnMachine.ts';

type Entry = StripDownDraft['renewals'][number];

/**
 * Refuses what cannot have been done to a part.
 * @throws RefusedError renewed-twice (the whole, or one station), unknown-station, must-stay-standard (an oversize part where
 *   others have to fit), oversize-needs-size, oversize-of-what (neither a pin nor a bore, or one station of it), turned-what
 *   (no strip), turned-needs-size (nobody measured what is left)
 */
export function refuseOddRenewals(
  draft: Pick<StripDownDraft, 'renewals' | 'sizes'>,
  pointAt: (pointId: number, path: string) => BenchPoint,
): void {
  const renewed = new Set<string>();
  for (const [place, renewal] of draft.renewals.entries()) {
    const { pointId, station } = renewal;
    const path = `renewals.${place}`;
    const point = pointAt(pointId, `${path}.pointId`);
    const whole = `${pointId} `;
    const others = [...renewed].some((key) => key.startsWith(whole));
    if (renewed.has(whole) || (station === '' && others) || renewed.has(`${whole}${station}`))
      throw new RefusedError({ code: 'renewed-twice', facts: { path: `${path}.pointId`, pointId } });
    renewed.add(`${whole}${station}`);
    refuseUnknownStation(renewal, point, path);
    refuseOddKind(renewal, point, path);
    if (renewal.kind === 'turned') refuseUnmeasured(renewal, draft.sizes, path);
  }
}

function refuseUnknownStation({ station, pointId }: Entry, { life, details }: BenchPoint, path: string): void {
  if (station === '' || details.stations.includes(station)) return;
  if (life.sizes.some((size) => size.station === station)) return;
  throw new RefusedError({ code: 'unknown-station', facts: { path: `${path}.station`, pointId, station } });
}

function refuseOddKind(entry: Entry, { life, details }: BenchPoint, path: string): void {
  const facts = { path: `${path}.kind`, pointId: entry.pointId, position: life.position };
  if (entry.kind === 'turned' && details.measures !== 'thickness')
    throw new RefusedError({ code: 'turned-what', facts });
  if (entry.kind !== 'oversize') return;
  if (life.mustStayStandard) throw new RefusedError({ code: 'must-stay-standard', facts });
  if (entry.station !== '' || (details.measures !== 'diameter' && details.measures !== 'bore'))
    throw new RefusedError({ code: 'oversize-of-what', facts });
  if (entry.sizeMm === null)
    throw new RefusedError({ code: 'oversize-needs-size', facts: { ...facts, path: `${path}.sizeMm` } });
}

/** A strip turned over goes on from what is left of it: somebody has to say how thick that is. */
function refuseUnmeasured({ pointId, sizeMm }: Entry, sizes: StripDownDraft['sizes'], path: string): void {
  if (sizeMm !== null || sizes.some((size) => size.pointId === pointId)) return;
  throw new RefusedError({ code: 'turned-needs-size', facts: { path: `${path}.sizeMm`, pointId } });
}
