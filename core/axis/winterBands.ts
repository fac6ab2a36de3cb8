import { clampToScale, type HoursScale, hoursToPx, onScale } from './scale.ts';
import { textWidth } from './textWidth.ts';

/** A winter on the hours axis: from a machine's hours at its first day to those at its last. */
export type Winter = { name: string; fromHours: number; toHours: number };

export type WinterBand = { name: string; x0: number; x1: number; leftEdge: boolean; rightEdge: boolean };
export type WinterName = { name: string; x: number };
export type WinterBands = {
  bands: WinterBand[];
  names: WinterName[];
  /** the bands would run together into a grey: they are left out, and the caller says so */
  tooClose: boolean;
};

const LEAST_PITCH_PX = 5;
const NAME_CLEAR_PX = 4;

/**
 * Winters as bands, and the names that fit beside them on the rule's second scale. A machine worked little has its winters
 * close together: then every second, third ... is named, from the first on.
 *
 * @param namePx type size of the names [px]
 */
export function winterBands(winters: readonly Winter[], scale: HoursScale, namePx: number): WinterBands {
  const pitchPx = pitchOf(winters, scale);
  if (pitchPx !== null && pitchPx < LEAST_PITCH_PX) return { bands: [], names: [], tooClose: true };
  const bands = winters
    .filter((winter) => winter.toHours > scale.fromHours && winter.fromHours < scale.toHours)
    .map((winter) => ({
      name: winter.name,
      x0: clampToScale(scale, winter.fromHours),
      x1: clampToScale(scale, winter.toHours),
      leftEdge: onScale(scale, winter.fromHours),
      rightEdge: onScale(scale, winter.toHours),
    }));
  return { bands, names: namesOf(bands, scale, namePx), tooClose: false };
}

/** Hours from one winter's start to the next's [px]; null with fewer than two. */
function pitchOf(winters: readonly Winter[], scale: HoursScale): number | null {
  const first = winters[0];
  const last = winters.at(-1);
  if (!first || !last || first === last) return null;
  return (hoursToPx(scale, last.fromHours) - hoursToPx(scale, first.fromHours)) / (winters.length - 1);
}

function namesOf(bands: readonly WinterBand[], scale: HoursScale, namePx: number): WinterName[] {
  const names: WinterName[] = [];
  let freeFrom = Number.NEGATIVE_INFINITY;
  for (const band of bands) {
    const x = band.x1 + NAME_CLEAR_PX;
    const end = x + textWidth(band.name, namePx);
    if (x < freeFrom || end > scale.toPx + 2 * NAME_CLEAR_PX) continue;
    names.push({ name: band.name, x });
    freeFrom = end + NAME_CLEAR_PX;
  }
  return names;
}
