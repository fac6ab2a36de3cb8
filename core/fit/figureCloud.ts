import { normalLattice } from '../maths/lattice.ts';
import { type Mode, newtonMode } from '../maths/newtonMode.ts';
import { type SmoothSurface, smoothSurface } from '../maths/smoothSurface.ts';
import { figureGrid, type MeshOf, type Posterior } from './figureGrid.ts';
import {
  along,
  apart,
  type Cloud,
  type CloudPoint,
  lnScale,
  momentsOf,
  type Proposal,
  shares,
  weighsAnything,
} from './proposal.ts';

/** The mesh of a grid on which a class is weighed; absent: a surface is; see {@link figureCloud}. */
export type Grid = { mesh?: MeshOf | null };

/** A place where the posterior has been worked out. */
type Known = { x: readonly number[]; lnPosterior: number };

/** Points to be worked out are laid wider than the posterior looks: between them a surface is sure, beyond them it is a guess. */
const ASKED_SPREAD = 1.5;
/** Points that are read off the surface are laid a little wider than the posterior, so that its tails are met. */
const READ_SPREAD = 1.3;
/** Points read off the surface: first to find its middle, in the end to carry it. */
const ROUGH_READ = 256;
const FINE_READ = 1536;
/** No surface is given more than this many times the points it was to have. */
const MOST_ASKED = 3;
/** Points lighter than the heaviest by e to this hardly count. */
const COUNTS = 10;
/** Half a variance of less takes nothing off. */
const LEFT_OPEN = 0.1;
/** A surface has settled when so great a share of the points read off it count, and its middle moves by no more (sd). */
const LEAST_COUNTING = 0.4;
const LEAST_MOVE = 0.3;
/**
 * Places this far below the top weigh nothing. No surface is laid through them, which might be cliffs; what lies nearest to one of
 * them weighs nothing either.
 */
const FAR_BELOW = 25;

/**
 * A cloud that carries the posterior of a class's figures. The posterior is dear and smooth: it is worked out at a few points,
 * a surface is laid through their ln posteriors, and the cloud is read off that. Half of the points are laid where the
 * posterior is expected, the others by the middle and spread of the surface so far; more of them while it still moves.
 * @param lnPosterior asked about `count` times, in a fixed order
 * @param known where it is known already
 * @param mesh given where the posterior is cheap enough to be asked on a grid; no surface is in between
 * @source importance sampling of a fitted surface: A. O'Hagan, "Bayes-Hermite quadrature", Journal of Statistical Planning and
 *   Inference 29 (1991); C. E. Rasmussen and Z. Ghahramani, "Bayesian Monte Carlo" (2003)
 */
export function figureCloud(
  expected: Proposal,
  lnPosterior: Posterior,
  count: number,
  { known = [], mesh = null }: { known?: readonly Known[] } & Grid = {},
): Cloud {
  const d = expected.centre.length;
  if (mesh) return figureGrid(expected, lnPosterior, mesh(d));
  const quadratic = ((d + 1) * (d + 2)) / 2;
  const all = [...known];
  let asked = 0;
  const ask = (at: Proposal, points: number) => {
    for (const x of laid(at, points, ASKED_SPREAD, asked)) all.push({ x, lnPosterior: lnPosterior(x) });
    asked += points;
  };
  ask(expected, Math.max(Math.ceil(count / 2), Math.ceil(1.5 * quadratic) - known.length));
  let found = middleOf(surfaceThrough(all, expected), expected);
  for (;;) {
    ask(found, Math.ceil(count / 4));
    const surface = surfaceThrough(all, found);
    const next = middleOf(surface, found);
    const settled = counting(readOff(surface, next, ROUGH_READ)) > LEAST_COUNTING && apart(found, next) < LEAST_MOVE;
    if ((settled && asked >= count) || asked >= MOST_ASKED * count) {
      const cloud = readOff(surface, next, FINE_READ);
      return { cloud, found: next, settled: settled && weighsAnything(cloud) };
    }
    found = next;
  }
}

/**
 * The same without knowing what to expect: from the posterior's mode. Where no surface settles, the posterior itself is asked
 * at every point of the cloud.
 */
export function figureCloudFrom(
  start: readonly number[],
  lnPosterior: Posterior,
  count: number,
  grid: Grid = {},
): Cloud {
  const known: Known[] = [];
  const noted = (x: readonly number[]): number => {
    const value = lnPosterior(x);
    known.push({ x, lnPosterior: value });
    return value;
  };
  const mode = newtonMode(noted, start);
  const about = aboutMode(mode, noted);
  const laid = figureCloud(about, lnPosterior, count, { known, ...grid });
  if (laid.settled) return laid;
  const cloud = readOff(exactly(lnPosterior), about, FINE_READ);
  // a posterior too sharp for any cloud is its mode
  return { ...laid, cloud: weighsAnything(cloud) ? cloud : [{ x: mode.x, lnWeight: 0 }] };
}

const exactly = (lnPosterior: (x: readonly number[]) => number): SmoothSurface => ({
  mean: lnPosterior,
  variance: () => 0,
});

/** The share of all points the weights amount to: 1 / (n sum of squared shares). */
const counting = (points: readonly CloudPoint[]): number =>
  1 / (points.length * shares(points).reduce((sum, share) => sum + share * share, 0));

/** Where a posterior is to be expected about its mode. @param lnPosterior asked twice a coordinate */
function aboutMode(mode: Mode, lnPosterior: (x: readonly number[]) => number): Proposal {
  const side = (axis: number, sign: number): number => {
    const x = mode.x.map((entry, i) => entry + mode.axes[i]![axis]! * 1.5 * sign);
    const drop = mode.value - lnPosterior(x);
    return Math.min(2.5, Math.max(0.5, drop > 0 ? 1.5 / Math.sqrt(2 * drop) : 2.5));
  };
  return {
    centre: mode.x,
    axes: mode.axes,
    sides: mode.x.map((_, axis) => ({ up: side(axis, 1), down: side(axis, -1) })),
  };
}

const laid = (at: Proposal, count: number, spread: number, from = 0): number[][] =>
  normalLattice(count, at.centre.length, from).map((row) => {
    const x = [...at.centre];
    for (let axis = 0; axis < row.length; axis++) {
      const { up, down } = at.sides[axis]!;
      const z = spread * row[axis]! * (row[axis]! >= 0 ? up : down);
      for (let i = 0; i < x.length; i++) x[i] = x[i]! + at.axes[i]![axis]! * z;
    }
    return x;
  });

/** ln posterior anywhere, from where it is known; in coordinates in which the proposal is about 1 wide. */
function surfaceThrough(known: readonly Known[], at: Proposal): SmoothSurface {
  const top = known.reduce((most, { lnPosterior }) => Math.max(most, lnPosterior), Number.NEGATIVE_INFINITY);
  const near = known.filter(({ lnPosterior }) => lnPosterior > top - FAR_BELOW);
  const alongAxes = (x: readonly number[]): number[] =>
    at.centre.map((_, axis) => along(at, x, axis) / (0.5 * (at.sides[axis]!.up + at.sides[axis]!.down)));
  const surface = smoothSurface(
    near.map(({ x }) => alongAxes(x)),
    near.map(({ lnPosterior }) => lnPosterior),
  );
  const places = known.map(({ x, lnPosterior }) => ({ z: alongAxes(x), weighs: lnPosterior > top - FAR_BELOW }));
  const overNothing = (z: readonly number[]): boolean => near.length < known.length && !nearest(places, z).weighs;
  return {
    mean: (x) => {
      const z = alongAxes(x);
      return overNothing(z) ? Number.NEGATIVE_INFINITY : surface.mean(z);
    },
    variance: (x) => surface.variance(alongAxes(x)),
  };
}

function nearest<T extends { z: readonly number[] }>(places: readonly T[], z: readonly number[]): T {
  let best = places[0]!;
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    let square = 0;
    for (let i = 0; i < z.length; i++) square += (place.z[i]! - z[i]!) ** 2;
    if (square < least) {
      least = square;
      best = place;
    }
  }
  return best;
}

/** Mean and spread of what a surface carries, found from a proposal twice over. */
function middleOf(surface: SmoothSurface, from: Proposal): Proposal {
  const first = momentsOf(readOff(surface, from, ROUGH_READ)) ?? from;
  return momentsOf(readOff(surface, first, ROUGH_READ)) ?? first;
}

/**
 * Points laid by a proposal, each weighed by the surface over the density with which it was laid. Where a surface is a guess it
 * may bulge over nothing: half its variance is taken off, from the points that would count, where that is much.
 */
function readOff(surface: SmoothSurface, at: Proposal, count: number): CloudPoint[] {
  const scale = lnScale(at);
  const points = laid(at, count, READ_SPREAD).map((x) => ({ x, lnWeight: surface.mean(x) - scale - lnBell(at, x) }));
  const top = points.reduce((most, { lnWeight }) => Math.max(most, lnWeight), Number.NEGATIVE_INFINITY);
  return points.map(({ x, lnWeight }) =>
    lnWeight > top - COUNTS
      ? { x, lnWeight: lnWeight - Math.max(0, 0.5 * surface.variance(x) - LEFT_OPEN) }
      : { x, lnWeight },
  );
}

/** ln density with which a proposal lays a point at x, up to a constant of the proposal: {@link lnScale}. */
function lnBell(at: Proposal, x: readonly number[]): number {
  let ln = 0;
  for (let axis = 0; axis < at.centre.length; axis++) {
    const z = along(at, x, axis);
    const width = READ_SPREAD * (z >= 0 ? at.sides[axis]!.up : at.sides[axis]!.down);
    ln -= 0.5 * (z / width) ** 2 + Math.log(width);
  }
  return ln;
}
