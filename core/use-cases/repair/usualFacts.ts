import type { RepairFacts } from '../../contract/repair.ts';
import type { ShopFigures } from '../../repair/shopFigures.ts';
import type { ShopNow } from '../shopNow.ts';
import { type JointPoints, lastSizes, limitsNow } from './jointPoints.ts';

/** Stations of a hole that are read square to each other, and their axes [deg]. */
const AXIS_OF_STATION: Readonly<Record<string, number>> = { '': 0, A: 0, B: 90 };

/** What is taken of a joint before anybody has said: sizes from its readings, nothing else known. */
export function usualFacts(now: Pick<ShopNow, 'asOf'>, points: JointPoints, figures: ShopFigures): RepairFacts {
  const pinNewMm = points.pin && limitsNow(points.pin, now).newSizeMm;
  const bore = points.bore && limitsNow(points.bore, now).newSizeMm >= LEAST_BORE_MM ? points.bore : null;
  const boreNewMm = bore && limitsNow(bore, now).newSizeMm;
  // where only the slack is measured nobody knows the sizes
  const standardMm = pinNewMm ?? (boreNewMm === null ? null : Math.floor(boreNewMm));
  const axesMm: (number | null)[] = [null, null, null, null];
  for (const { station, sizeMm } of lastSizes(bore)) {
    const axis = AXIS_OF_STATION[station];
    if (axis !== undefined) axesMm[axis / 45] = sizeMm;
  }
  return {
    ...{ run: 'across', use: 'greased-pivot', standardMm, newBoreMm: boreNewMm ?? standardMm },
    ...{ gauge: 'telescopic', axesMm, wornTowards: null, datum: null, mayMoveMm: null },
    ...{ aSideMm: figures.cleanUpASideMm, boredWith: null },
    ...{ bossOutsideMm: null, bossLengthMm: null, offMiddleMm: 0, centreToEdgeMm: null, material: null },
    yieldMpa: null,
    ...{ split: false, weldsNear: false, plate: 'not-looked-at' },
    ...{ pinMm: pinMeasured(points), pinLengthMm: null, pinRenewed: true, otherHalf: null },
    mustStayStandard: points.all.some((point) => point.mustStayStandard),
    oversizes: points.bore?.renewals.filter(({ kind }) => kind === 'oversize').length ?? 0,
    ...{ partKind: 'other', forgedOrHeatTreated: null, procedure: null },
    ...{ nylonNear: true, alignmentBar: true, pressKn: null },
  };
}

/** A hole of less new size is a gap written down as a hole, and nobody knows the hole's (common practice, no source). */
const LEAST_BORE_MM = 1;

/** The thinnest of a pin's last sizes. */
function pinMeasured({ pin }: JointPoints): number | null {
  const sizes = lastSizes(pin).map(({ sizeMm }) => sizeMm);
  return sizes.length === 0 ? null : Math.min(...sizes);
}
