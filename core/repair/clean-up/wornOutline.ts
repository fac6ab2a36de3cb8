import type { Circle } from '../../maths/enclosingCircle.ts';
import type { Caution } from '../../outcome.ts';
import { type AxisReading, wearFromAxes } from './wearFromAxes.ts';

/** What read the hole. A three-jaw gauge gives a mean diameter, whatever the shape. */
export const BORE_GAUGES = ['two-point', 'telescopic', 'calliper', 'three-jaw'] as const;
export type BoreGauge = (typeof BORE_GAUGES)[number];

/** A worn hole as it was measured; angles in the picture of {@link HoleRun} [deg]. */
export type WornBore =
  | {
      by: 'axes';
      newBoreMm: number;
      gauge: BoreGauge;
      /** front, middle, rear of the hole, or one of them; each with its own axes */
      stations: readonly (readonly AxisReading[])[];
      /** the side it wore towards, told by the unworn lip; null: not known */
      wornTowardsDeg: number | null;
    }
  | {
      by: 'slot';
      newBoreMm: number;
      /** across the wear, and square to it */
      lengthMm: number;
      widthMm: number;
      /** the side it wore towards; null: not known */
      wornTowardsDeg: number | null;
      /** of the wear, what went to the opposite side [mm] */
      oppositeMm: number;
    }
  | {
      by: 'radii';
      newBoreMm: number;
      /** from the old centre, found by the unworn lip or land */
      readings: readonly { angleDeg: number; radiusMm: number }[];
    };

/** What the bored circle must take in, about the old centre. */
export type WornOutline = {
  /** the new hole, circles it has worn to, and single points that were measured (radius 0) [mm] */
  circles: Circle[];
  /** furthest a measured point lies out past the new hole [mm] */
  wearMm: number;
  /** true: which end of the wear's line it wore towards is not known, so no shift can be named */
  sideUnknown: boolean;
  cautions: Caution[];
};

const RAD = Math.PI / 180;

/** Axes wanted on a worn hole, 45 degrees apart. */
export const AXES_WANTED = 4;

/**
 * A worn hole as circles about its old centre. One-sided wear w of a pin as large as the hole is the new hole moved by w; wear to
 * both sides is two such. Every reading is a measured point besides, so that what is bored takes in what was read even where
 * the readings fit no plain slot.
 *
 * @source own derivation; common practice: four axes, no three-jaw gauge on an oval hole
 * @checked tests/reference/bore-clean-up/cleanUpBore.test.ts
 */
export function wornOutline(bore: WornBore): WornOutline {
  if (bore.by === 'axes') return fromAxes(bore);
  if (bore.by === 'slot') return fromSlot(bore);
  const points = bore.readings.map(({ angleDeg, radiusMm }) => pointAt(angleDeg, radiusMm));
  const furthestMm = Math.max(...bore.readings.map(({ radiusMm }) => radiusMm));
  return {
    circles: [...points],
    wearMm: Math.max(0, furthestMm - bore.newBoreMm / 2),
    sideUnknown: false,
    cautions: [],
  };
}

const pointAt = (angleDeg: number, radiusMm: number): Circle => ({
  x: radiusMm * Math.cos(angleDeg * RAD),
  y: radiusMm * Math.sin(angleDeg * RAD),
  radius: 0,
});

const newHole = (newBoreMm: number): Circle => ({ x: 0, y: 0, radius: newBoreMm / 2 });

/** The new hole moved by the wear. */
const movedHole = (newBoreMm: number, wearMm: number, towardsDeg: number): Circle => ({
  ...pointAt(towardsDeg, wearMm),
  radius: newBoreMm / 2,
});

function fromSlot(bore: Extract<WornBore, { by: 'slot' }>): WornOutline {
  const wornMm = Math.max(0, bore.lengthMm - bore.newBoreMm);
  // a slot wider than new has worn all round too
  const roundMm = Math.max(bore.newBoreMm, bore.widthMm);
  const oppositeMm = Math.min(Math.max(0, bore.oppositeMm), wornMm);
  const alongMm = Math.max(0, bore.lengthMm - roundMm) - oppositeMm;
  const sideUnknown = bore.wornTowardsDeg === null && Math.abs(alongMm - oppositeMm) > 0;
  const towardsDeg = bore.wornTowardsDeg ?? 0;
  const circles = [newHole(roundMm), movedHole(roundMm, Math.max(0, alongMm), towardsDeg)];
  if (oppositeMm > 0) circles.push(movedHole(roundMm, oppositeMm, towardsDeg + 180));
  const wearMm = (roundMm - bore.newBoreMm) / 2 + Math.max(alongMm, oppositeMm, 0);
  return { circles, wearMm, sideUnknown, cautions: sideUnknown ? [{ code: 'worn-side-not-known' }] : [] };
}

function fromAxes(bore: Extract<WornBore, { by: 'axes' }>): WornOutline {
  const parts = bore.stations
    .filter((readings) => readings.length > 0)
    .map((readings) => ofStation(bore.newBoreMm, readings, bore.wornTowardsDeg));
  const wearMm = Math.max(0, ...parts.map((part) => part.wearMm));
  const sideUnknown = bore.wornTowardsDeg === null && wearMm > 0;
  return {
    circles: [newHole(bore.newBoreMm), ...parts.flatMap(({ circles }) => circles)],
    wearMm,
    sideUnknown,
    cautions: [
      ...(bore.gauge === 'three-jaw' ? [{ code: 'three-jaw-averages-ovality' }] : []),
      ...axesCautions(bore),
      ...(sideUnknown ? [{ code: 'worn-side-not-known' }] : []),
    ],
  };
}

/** One station: the new hole moved along each line its axes may mean, and each reading as a point on the worn side. */
function ofStation(newBoreMm: number, readings: readonly AxisReading[], wornTowardsDeg: number | null) {
  const lines = wearFromAxes(newBoreMm, readings);
  const moved = lines.flatMap(({ wearMm, lineDeg }) =>
    endsOf(lineDeg, wornTowardsDeg).map((towardsDeg) => movedHole(newBoreMm, wearMm, towardsDeg)),
  );
  const points = readings.flatMap(({ axisDeg, diameterMm }) =>
    endsOf(axisDeg, wornTowardsDeg).map((towardsDeg) => pointAt(towardsDeg, diameterMm - newBoreMm / 2)),
  );
  const readMm = Math.max(...readings.map(({ diameterMm }) => diameterMm - newBoreMm));
  return { circles: [...moved, ...points], wearMm: Math.max(readMm, ...lines.map(({ wearMm }) => wearMm)) };
}

/** The end of a line on the worn side: both when it lies square to that side, or when no side is known. */
function endsOf(lineDeg: number, wornTowardsDeg: number | null): number[] {
  const ends = [lineDeg, lineDeg + 180];
  if (wornTowardsDeg === null) return ends;
  const facing = ends.filter((end) => Math.cos((end - wornTowardsDeg) * RAD) > 1e-9);
  return facing.length > 0 ? facing : ends;
}

/** Fewer than four axes; and two square ones that read alike, which a slot at 45 degrees to both does too. */
function axesCautions({ newBoreMm, stations }: Extract<WornBore, { by: 'axes' }>): Caution[] {
  const axes = Math.min(...stations.map((readings) => new Set(readings.map(({ axisDeg }) => axisDeg % 180)).size));
  const cautions: Caution[] = [];
  if (axes < AXES_WANTED) cautions.push({ code: 'four-axes-wanted', facts: { axes, wanted: AXES_WANTED } });
  const round = stations.find((readings) => readsRound(newBoreMm, readings));
  if (round) {
    const readMm = Math.max(...round.map(({ diameterMm }) => diameterMm - newBoreMm));
    cautions.push({
      code: 'square-axes-read-round',
      facts: { readMm, mayBeMm: readMm * Math.SQRT2, hiddenShare: 1 - Math.SQRT1_2 },
    });
  }
  return cautions;
}

/** Two square axes that read alike and over the new size: nearer than a tenth of what they are over, or 0.02 mm. */
function readsRound(newBoreMm: number, readings: readonly AxisReading[]): boolean {
  const [one, other, third] = readings;
  if (!one || !other || third) return false;
  const square = Math.abs(Math.cos((one.axisDeg - other.axisDeg) * RAD)) < 0.1;
  const overMm = Math.max(one.diameterMm, other.diameterMm) - newBoreMm;
  return square && overMm > 0.02 && Math.abs(one.diameterMm - other.diameterMm) <= Math.max(0.02, 0.1 * overMm);
}
