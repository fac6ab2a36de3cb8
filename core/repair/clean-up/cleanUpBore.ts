import { type Circle, enclosingCircle, reachFrom } from '../../maths/enclosingCircle.ts';
import { type Caution, type Outcome, ok, refuse } from '../../outcome.ts';
import { type HoleRun, type Shift, type Toward, towards } from './wayRound.ts';
import { type WornBore, type WornOutline, wornOutline } from './wornOutline.ts';

/** What the old centre, and so the direction of a shift, was found from. */
export const DATUMS = ['unworn-lip', 'end-land', 'tram-to-other-bore'] as const;
export type Datum = (typeof DATUMS)[number];

/** What is said of a hole, or of several that one bar bores. */
export type CleanUpAsked = {
  run: HoleRun;
  /** one hole; or those bored on one bar, all about one centre */
  bosses: readonly WornBore[];
  /** metal taken off on each side beyond the worn outline [mm], 0 or more */
  aSideMm: number;
  /** how far the joint's centre may move [mm]; null: nobody has said */
  mayMoveMm: number | null;
  datum: Datum | null;
};

/** One way to clean up: where the centre goes, and what each boss is bored to. */
export type BoredAbout = {
  /** of each boss, in the order asked [mm] */
  boresMm: number[];
  /** the largest of them */
  boreMm: number;
  shift: Shift;
  shiftMm: number;
  /** the shift in the machine's words */
  toward: Toward[];
};

/** May the centre be put where the smallest bore has it? */
export type ShiftAllowed = 'yes' | 'no-shift-needed' | 'too-far' | 'limit-not-said' | 'datum-not-named';

export type CleanUp = {
  outlines: WornOutline[];
  onOldCentre: BoredAbout;
  /** smallest bore of all; null: the worn side is not known */
  onBestCentre: BoredAbout | null;
  /** as near to it as the centre may move, on the straight way; null: no shift may be made, or none is needed */
  withinLimit: BoredAbout | null;
  allowed: ShiftAllowed | null;
  datum: Datum | null;
  /** what boring about the old centre costs over the best [mm]; one-sided wear counts twice there */
  oldCentreCostsMm: number | null;
  cautions: Caution[];
};

/**
 * The smallest bore that takes in all that has worn: about the old centre, and about the best one.
 *   old centre:  D = 2 max reach  (one-sided wear w: D0 + 2 w)
 *   best centre: the smallest circle about every worn outline  (one-sided: D0 + w, moved w / 2;
 *                two bosses on one bar worn opposite ways: D0 + wA + wB, moved (wA - wB) / 2)
 * and twice the allowance a side on top. Bosses of unlike new sizes share the centre; each keeps its own size.
 *
 * @refuses clean-up-no-readings; clean-up-size-not-positive, with the size
 * @source own derivation; smallest circle: core/maths/enclosingCircle.ts
 * @checked tests/reference/bore-clean-up/cleanUpBore.test.ts
 */
export function cleanUpBore(asked: CleanUpAsked): Outcome<CleanUp> {
  const unsound = unsoundReading(asked);
  if (unsound) return refuse(unsound);
  const outlines = asked.bosses.map(wornOutline);
  const sideUnknown = outlines.some((outline) => outline.sideUnknown);
  const best = bestCentre(asked.bosses, outlines);
  const aboutAt = (shift: Shift) => boredAbout(asked, outlines, shift);
  const onOldCentre = aboutAt({ xMm: 0, yMm: 0 });
  const onBestCentre = sideUnknown ? null : aboutAt(best);
  const allowed = onBestCentre && shiftAllowed(onBestCentre.shiftMm, asked);
  return ok({
    ...{ outlines, onOldCentre, onBestCentre, allowed, datum: asked.datum },
    withinLimit: onBestCentre && withinLimit(onBestCentre, allowed, asked, aboutAt),
    oldCentreCostsMm: onBestCentre && onOldCentre.boreMm - onBestCentre.boreMm,
    cautions: distinct(outlines.flatMap(({ cautions }) => cautions)),
  });
}

/** Shifts smaller than this are no shift: a bar is not set finer [mm]. */
const NO_SHIFT_MM = 0.005;

function shiftAllowed(shiftMm: number, { mayMoveMm, datum }: CleanUpAsked): ShiftAllowed {
  if (shiftMm < NO_SHIFT_MM) return 'no-shift-needed';
  if (datum === null) return 'datum-not-named';
  if (mayMoveMm === null) return 'limit-not-said';
  return shiftMm <= mayMoveMm + 1e-9 ? 'yes' : 'too-far';
}

/** The best centre itself, or the furthest allowed on the way to it: every step of that way needs less than the one before. */
function withinLimit(
  best: BoredAbout,
  allowed: ShiftAllowed | null,
  { mayMoveMm }: CleanUpAsked,
  aboutAt: (shift: Shift) => BoredAbout,
): BoredAbout | null {
  if (allowed === 'yes') return best;
  if (allowed !== 'too-far' || !mayMoveMm) return null;
  const share = mayMoveMm / best.shiftMm;
  return aboutAt({ xMm: best.shift.xMm * share, yMm: best.shift.yMm * share });
}

/** Centre of the smallest circle about all bosses, each let out by what its new size is short of the largest. */
function bestCentre(bosses: readonly WornBore[], outlines: readonly WornOutline[]): Shift {
  const largestMm = Math.max(...bosses.map(({ newBoreMm }) => newBoreMm));
  const circles = outlines.flatMap(({ circles }, i) => {
    const shortMm = (largestMm - (bosses[i]?.newBoreMm ?? largestMm)) / 2;
    return circles.map((circle) => ({ ...circle, radius: circle.radius + shortMm }));
  });
  const around = enclosingCircle(circles);
  return { xMm: around.x, yMm: around.y };
}

function boredAbout({ run, aSideMm }: CleanUpAsked, outlines: readonly WornOutline[], shift: Shift): BoredAbout {
  const boresMm = outlines.map(({ circles }) => 2 * reachOf(circles, shift) + 2 * aSideMm);
  return {
    ...{ boresMm, boreMm: Math.max(...boresMm), shift },
    shiftMm: Math.hypot(shift.xMm, shift.yMm),
    toward: towards(run, shift, NO_SHIFT_MM),
  };
}

const reachOf = (circles: readonly Circle[], { xMm, yMm }: Shift): number =>
  Math.max(...circles.map((circle) => reachFrom({ x: xMm, y: yMm }, circle)));

const distinct = (cautions: readonly Caution[]): Caution[] =>
  cautions.filter((caution, i) => cautions.findIndex(({ code }) => code === caution.code) === i);

function unsoundReading({ bosses, aSideMm }: CleanUpAsked) {
  const sizes = bosses.flatMap(sizesOf);
  if (bosses.length === 0 || bosses.some((bore) => sizesOf(bore).length < 2)) return { code: 'clean-up-no-readings' };
  const odd = [...sizes, aSideMm === 0 ? 1 : aSideMm].find((sizeMm) => !(sizeMm > 0 && Number.isFinite(sizeMm)));
  return odd === undefined ? null : { code: 'clean-up-size-not-positive', facts: { sizeMm: odd } };
}

/** Every size of a bore: the new one, and what was read. */
function sizesOf(bore: WornBore): number[] {
  if (bore.by === 'slot') return [bore.newBoreMm, bore.lengthMm, bore.widthMm];
  if (bore.by === 'radii') return [bore.newBoreMm, ...bore.readings.map(({ radiusMm }) => radiusMm)];
  return [bore.newBoreMm, ...bore.stations.flatMap((readings) => readings.map(({ diameterMm }) => diameterMm))];
}
