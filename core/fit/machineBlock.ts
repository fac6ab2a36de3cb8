import { invertPositive } from '../maths/cholesky.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { type BlockRoom, blockRoom } from './blockRoom.ts';
import type { ModelSettings } from './modelSettings.ts';
import { type ClassFigures, clearSite, type PartSite, partSite, setTimes } from './partSite.ts';
import { keepNodes, makeTilt, type PartLaws, setReadings, sumUnknowns, type Tilt, weighBell } from './partTilt.ts';
import type { Slice } from './slice.ts';
import { MOST_NODES } from './tiltRoom.ts';

/**
 * The parts of one class on one machine, with what they share: u, the ln rate to be expected of that class there,
 * and e_1 .. e_V, the errors of the visits in which more than one size was taken.
 *   u ~ N(p, q),  e ~ N(0, sv^2);  each part speaks through its site (a normal in its own few of these unknowns)
 */
export type MachineBlock = {
  readonly machineId: number;
  /** ln harshness expected of the machine before its parts are heard: the shop's word on it */
  readonly expected: number;
  /** parts with readings first to last in an order that comes from the readings alone */
  readonly read: readonly PartSite[];
  readonly unread: readonly PartSite[];
  /** the tails of its parts' bells are gone over too; see {@link TAILS} */
  readonly tails: boolean;
  /** unknowns: 1 + shared visits */
  readonly size: number;
  readonly precision: Float64Array;
  readonly shift: Float64Array;
  readonly cov: Float64Array;
  readonly mean: Float64Array;
  /** the visit whose shared error is widest beside the wear measured in it: its place among the unknowns; 0: there is none */
  readonly bent: { readonly place: number; readonly leastWearMm: number };
  /** prior of its unknowns: u first, N(p, q), then the visits' errors */
  readonly priorMean: Float64Array;
  readonly priorVar: Float64Array;
  /** what the block says of u: exp(kappa + eta u - lambda u^2 / 2) */
  kappa: number;
  eta: number;
  lambda: number;
};

/** All that was read of a part, as text: two parts that read alike are alike. */
export function contentKey(series: WearSeries): string {
  const readings = series.readings.map(
    (r) => `${r.takenOn} ${r.workedHours} ${r.wearMm} ${r.errorSdMm} ${r.workedHoursSd}`,
  );
  const told = series.expectedLnHarshness ? [`told ${series.expectedLnHarshness}`] : [];
  return [series.newSizeSdMm, series.startHoursSd, ...readings, ...told].join(' | ');
}

/** Orders parts by what was read, so that neither numbering nor order of entry shows in the answers. */
function byContent(a: WearSeries, b: WearSeries): number {
  const counted = a.readings.length - b.readings.length;
  if (counted !== 0) return counted;
  for (let i = a.readings.length - 1; i >= 0; i--) {
    const p = a.readings[i]!;
    const q = b.readings[i]!;
    const apart =
      p.wearMm - q.wearMm ||
      p.workedHours - q.workedHours ||
      (p.takenOn < q.takenOn ? -1 : p.takenOn > q.takenOn ? 1 : 0) ||
      p.errorSdMm - q.errorSdMm ||
      p.workedHoursSd - q.workedHoursSd;
    if (apart !== 0) return apart;
  }
  return a.newSizeSdMm - b.newSizeSdMm || a.startHoursSd - b.startHoursSd;
}

export const byText = <T>(text: (item: T) => string) => {
  const texts = new Map<T, string>();
  const of = (item: T): string => {
    let found = texts.get(item);
    if (found === undefined) {
      found = text(item);
      texts.set(item, found);
    }
    return found;
  };
  return (a: T, b: T): number => (of(a) < of(b) ? -1 : of(a) > of(b) ? 1 : 0);
};

/**
 * @param series of one class on one machine
 * @param sharedErrors false: errors shared by a visit are left out for this class
 * @param fewParts of the class: what each may be counts for much in what is held of the class
 */
export function machineBlock(
  machineId: number,
  series: readonly WearSeries[],
  { sharedErrors, fewParts }: { sharedErrors: boolean; fewParts: boolean },
): MachineBlock {
  const sorted = [...series].sort(byContent);
  const places = sharedErrors ? sharedVisits(sorted) : new Map<string, number>();
  const sites = sorted.map((one) => {
    const own: number[] = [];
    const ownVisit = one.readings.map((reading) => {
      const place = places.get(reading.visit);
      if (place === undefined) return 0;
      if (!own.includes(place)) own.push(place);
      return own.indexOf(place) + 1;
    });
    return partSite(one, own, ownVisit);
  });
  const size = 1 + places.size;
  return {
    machineId,
    expected: series[0]?.expectedLnHarshness ?? 0,
    read: sites.filter((site) => site.n > 0),
    unread: sites.filter((site) => site.n === 0),
    tails: fewParts,
    size,
    precision: new Float64Array(size * size),
    shift: new Float64Array(size),
    cov: new Float64Array(size * size),
    mean: new Float64Array(size),
    bent: bentVisit(sorted, places),
    priorMean: new Float64Array(size),
    priorVar: new Float64Array(size),
    kappa: 0,
    eta: 0,
    lambda: 0,
  };
}

/** Visits in which two sizes of the class or more were taken, numbered from 1. A visit with one size is part of its error. */
function sharedVisits(sorted: readonly WearSeries[]): Map<string, number> {
  const sizes = new Map<string, number>();
  for (const one of sorted)
    for (const reading of one.readings) sizes.set(reading.visit, (sizes.get(reading.visit) ?? 0) + 1);
  const places = new Map<string, number>();
  for (const [visit, count] of sizes) if (count > 1) places.set(visit, places.size + 1);
  return places;
}

/** Less wear than so many sd of its gauge says no more of a rate than that it is small. */
const LEAST_TOLD_GAUGES = 4;

/** Among visits that hold some part's last size the one with the least wear. */
function bentVisit(sorted: readonly WearSeries[], places: ReadonlyMap<string, number>): MachineBlock['bent'] {
  let bent = { place: 0, leastWearMm: Number.POSITIVE_INFINITY };
  for (const { readings } of sorted) {
    const last = readings.at(-1);
    const place = last && places.get(last.visit);
    if (!place) continue;
    const leastWearMm = Math.max(last.wearMm, LEAST_TOLD_GAUGES * last.errorSdMm);
    if (leastWearMm < bent.leastWearMm) bent = { place, leastWearMm };
  }
  return bent;
}

export function clearBlock(block: MachineBlock): void {
  for (const part of block.read) clearSite(part);
  block.kappa = 0;
  block.eta = 0;
  block.lambda = 0;
}

export function setBlockTimes(block: MachineBlock, hRefHours: number, figures: ClassFigures): void {
  for (const part of block.read) setTimes(part, hRefHours, figures);
  for (const part of block.unread) setTimes(part, hRefHours, figures);
}

/** The laws of a part's ln rate about its machine's: like parts, and the odd one. */
export const partLaws = (partScatter: number, settings: ModelSettings): PartLaws => ({
  share: [1 - settings.oddPartShare, settings.oddPartShare],
  sd: [partScatter, settings.oddPartWidth * partScatter],
});

const found: Tilt = makeTilt();

function setPrior(
  { priorMean, priorVar }: MachineBlock,
  p: number,
  q: number,
  visitErrorMm: number,
  slice?: Slice,
): void {
  priorMean.fill(0);
  priorVar.fill(visitErrorMm ** 2);
  priorMean[0] = p;
  priorVar[0] = q;
  if (!slice) return;
  priorMean[slice.place] = slice.mean;
  priorVar[slice.place] = slice.sd ** 2;
}

/** Prior of the block's unknowns with all sites on top, as mean and variance. @returns ln|precision|, NaN when it makes no normal */
function gatherSites(block: MachineBlock): number {
  const { size, precision, shift, cov, mean, priorMean, priorVar } = block;
  const { spoilt } = blockRoom(size);
  precision.fill(0);
  for (let a = 0; a < size; a++) {
    precision[a * size + a] = 1 / priorVar[a]!;
    shift[a] = priorMean[a]! / priorVar[a]!;
  }
  for (const part of block.read) addSite(block, part);
  for (let i = 0; i < size * size; i++) spoilt[i] = precision[i]!;
  const lnDet = invertPositive(spoilt, cov, size);
  for (let a = 0; a < size; a++) {
    let at = 0;
    for (let b = 0; b < size; b++) at += cov[a * size + b]! * shift[b]!;
    mean[a] = at;
  }
  return lnDet;
}

function addSite(block: MachineBlock, part: PartSite): void {
  const { size, precision, shift } = block;
  const { d, place } = part;
  for (let a = 0; a < d; a++) {
    const row = place[a]!;
    shift[row] = shift[row]! + part.shift[a]!;
    for (let b = 0; b < d; b++) {
      const at = row * size + place[b]!;
      precision[at] = precision[at]! + part.precision[a * d + b]!;
    }
  }
}

/**
 * What is held of a part's z, V and m of the block's, without its own word: C = (V^-1 - W)^-1, C (V^-1 m - w).
 * @returns false when the others' sites alone make no normal: then the answer is the block's prior, and the part
 *   keeps its site for this sweep
 */
function cavity(block: MachineBlock, part: PartSite): boolean {
  const { size, cov, mean } = block;
  const { d, place, precision, shift } = part;
  const room = blockRoom(size);
  const { spoilt, known, knownMean, knownPrecision, cavityCov, cavityMean, cavityPrecision, cavityShift } = room;
  for (let a = 0; a < d; a++) {
    const row = place[a]! * size;
    knownMean[a] = mean[place[a]!]!;
    for (let b = 0; b < d; b++) known[a * d + b] = cov[row + place[b]!]!;
  }
  for (let i = 0; i < d * d; i++) spoilt[i] = known[i]!;
  let lnDet = invertPositive(spoilt, knownPrecision, d);
  for (let a = 0; a < d; a++) {
    let at = -shift[a]!;
    for (let b = 0; b < d; b++) {
      const entry = knownPrecision[a * d + b]! - precision[a * d + b]!;
      cavityPrecision[a * d + b] = entry;
      spoilt[a * d + b] = entry;
      at += knownPrecision[a * d + b]! * knownMean[b]!;
    }
    cavityShift[a] = at;
  }
  if (!Number.isNaN(lnDet)) lnDet = invertPositive(spoilt, cavityCov, d);
  if (Number.isNaN(lnDet)) {
    cavityCov.fill(0, 0, d * d);
    for (let a = 0; a < d; a++) {
      cavityMean[a] = block.priorMean[place[a]!]!;
      cavityCov[a * d + a] = block.priorVar[place[a]!]!;
    }
    return false;
  }
  room.cavityLnDet = -lnDet;
  for (let a = 0; a < d; a++) {
    let at = 0;
    for (let b = 0; b < d; b++) at += cavityCov[a * d + b]! * cavityShift[b]!;
    cavityMean[a] = at;
  }
  return true;
}

/** ln rates beyond this of the centre are no wear of this world; keeps exp() and its square finite. */
const WILDEST_LN_RATE = 60;

/**
 * How a bell of ln rate is gone over: how far nodes run either way [its sd] and how many they are, how many steps wide it must be to
 * count as resolved, and how much of it on the end nodes says that it lies further off.
 * Sums over equal nodes of a bell are good to e^(-2 pi^2 / step^2), and its spread to some twenty times that: to 1e-5 with
 * steps of 1.13 sd. Steps of 1.3 sd, 4e-4, will do but where the parts of a class are few.
 */
type BellNodes = { reach: number; count: number; resolved: number; onEnds: number };
const FINE_BELL: BellNodes = { reach: 4.5, count: 9, resolved: 0.8, onEnds: 2e-3 };
const QUICK_BELL: BellNodes = { reach: 3.9, count: 7, resolved: 0.7, onEnds: 1e-2 };

/**
 * More than this on the end nodes is more than a normal has there: a bell of two laws, one wide and one narrow, as of a part that wore
 * next to nothing and may be an odd one. In a class of few parts it is gone over further out, and closer: hours far ahead are by a few
 * per cent off else.
 */
const TAILS = 3e-5;
const TAIL_REACH = 7;
const TAIL_NODES = 25;

/** Where a part's bell is to be looked for. */
type Look = { centre: number; half: number; count: number };

/**
 * Where the last size and the cavity would have it, the size as wear at an even rate: ln(y / t), good to sd(y) / y. A size that
 * says little of a rate is no guess: then the whole of what the cavity holds possible is scanned.
 */
function firstLook(
  part: PartSite,
  { reach, count }: BellNodes,
  { cavityMean, cavityCov }: BlockRoom,
  figures: ClassFigures,
  laws: PartLaws,
): Look {
  const last = part.n - 1;
  const y = part.wearMm[last]!;
  const t = part.t[last]!;
  const b = y / t;
  const own = part.ownVisit[last]! * (part.d + 1);
  const path = figures.pathScatter ** 2 * t + (part.startHoursVar + part.hoursVar[last]!) * part.slope[last]! ** 2;
  const doubt = part.newSizeVar + part.noiseVar[last]! + (own > 0 ? cavityCov[own]! : 0) + b * b * path;
  const ofSize = doubt / (y * y);
  const widest = laws.sd[laws.sd.length - 1]! ** 2;
  if (!(y > 0 && t > 0 && ofSize < LEAST_TOLD ** 2))
    return { centre: cavityMean[0]!, half: 5 * Math.sqrt(cavityCov[0]! + widest), count: SCAN_NODES };
  const off = Math.log(b) - cavityMean[0]!;
  const like = cavityCov[0]! + laws.sd[0]! ** 2;
  // too far off to be like the others: it may be an odd part
  const ofCavity = off * off > 9 * (like + ofSize) ? cavityCov[0]! + widest : like;
  return {
    centre: cavityMean[0]! + (off * ofCavity) / (ofCavity + ofSize),
    half: reach * Math.sqrt((ofCavity * ofSize) / (ofCavity + ofSize)),
    count,
  };
}

/** A size good to less than this share of itself says where the rate lies. */
const LEAST_TOLD = 0.4;
const SCAN_NODES = 31;

/** Looks for the part's bell of ln rate: nodes over where it should be, again until they resolve it. Ask after a cavity. */
function findBell(part: PartSite, tails: boolean, room: BlockRoom, figures: ClassFigures, laws: PartLaws): void {
  const { cavityMean, cavityCov } = room;
  const bell = tails ? FINE_BELL : QUICK_BELL;
  setReadings(part, figures, cavityMean, cavityCov);
  let { centre, half, count } =
    part.bellSd > 0
      ? { centre: part.bellMean, half: bell.reach * part.bellSd, count: bell.count }
      : firstLook(part, bell, room, figures, laws);
  for (let look = 0; look < 25; look++) {
    centre = Math.min(WILDEST_LN_RATE, Math.max(-WILDEST_LN_RATE, centre));
    weighBell(part, laws, cavityMean[0]!, cavityCov[0]!, centre, half, count, found);
    const spacing = (2 * half) / (count - 1);
    const onEnd = found.ends > bell.onEnds;
    if (!onEnd && found.bellSd > bell.resolved * spacing) break;
    centre = found.bellMean;
    if (found.ends > 0.5) {
      half *= 2;
      continue;
    }
    half = bell.reach * Math.max(found.bellSd * (onEnd ? 1.5 : 1), 0.6 * spacing);
    count = bell.count;
  }
  if (tails && found.ends > TAILS)
    weighBell(part, laws, cavityMean[0]!, cavityCov[0]!, found.bellMean, TAIL_REACH * found.bellSd, TAIL_NODES, found);
  part.bellMean = found.bellMean;
  part.bellSd = found.bellSd;
}

/** F(m, V) = (m^T V^-1 m + ln|V|) / 2 of a normal. */
function normalHeight(mean: Float64Array, precision: Float64Array, lnDetCov: number, d: number): number {
  let quad = 0;
  for (let a = 0; a < d; a++) for (let b = 0; b < d; b++) quad += mean[a]! * precision[a * d + b]! * mean[b]!;
  return 0.5 * (quad + lnDetCov);
}

/**
 * New site of a part: what its readings add to its cavity, as a normal. W = C*^-1 - C^-1, w = C*^-1 m* - C^-1 m.
 * @returns false when there is none: the old one stays
 */
function renewSite(part: PartSite, room: BlockRoom): boolean {
  const { d, precision, shift } = part;
  const { mean: newMean, cov: newCov, lnZ } = found;
  const { spoilt, newPrecision, cavityPrecision, cavityShift, cavityMean, cavityLnDet } = room;
  for (let i = 0; i < d * d; i++) spoilt[i] = newCov[i]!;
  const lnDetNew = invertPositive(spoilt, newPrecision, d);
  if (Number.isNaN(lnDetNew) || !Number.isFinite(lnZ)) return false;
  for (let a = 0; a < d; a++) {
    let at = -cavityShift[a]!;
    for (let b = 0; b < d; b++) {
      const entry = newPrecision[a * d + b]!;
      precision[a * d + b] = entry - cavityPrecision[a * d + b]!;
      at += entry * newMean[b]!;
    }
    shift[a] = at;
  }
  part.lnScale =
    lnZ + normalHeight(cavityMean, cavityPrecision, cavityLnDet, d) - normalHeight(newMean, newPrecision, lnDetNew, d);
  return true;
}

/**
 * Carries a part's new mean m* and variance V* of z on to the whole block: of z itself they are what is held now; of the other
 * unknowns x and between x and z, with G = C_xz V^-1,
 *   m_x + G (m* - m),  C_xx + G (V* - V) G^T,  C_xz + G (V* - V)
 */
function spreadNews(block: MachineBlock, part: PartSite, room: BlockRoom): void {
  const { size, cov, mean } = block;
  const { d, place } = part;
  const { mean: newMean, cov: newCov } = found;
  const { known, knownMean, knownPrecision, gain, gained, others } = room;
  const count = unknownsBeside(part, size, others);
  for (let i = 0; i < count; i++) {
    const x = others[i]!;
    let moved = 0;
    for (let a = 0; a < d; a++) {
      let entry = 0;
      for (let b = 0; b < d; b++) entry += cov[x * size + place[b]!]! * knownPrecision[b * d + a]!;
      gain[i * d + a] = entry;
      moved += entry * (newMean[a]! - knownMean[a]!);
    }
    mean[x] = mean[x]! + moved;
    for (let a = 0; a < d; a++) {
      let entry = 0;
      for (let b = 0; b < d; b++) entry += gain[i * d + b]! * (newCov[b * d + a]! - known[b * d + a]!);
      gained[i * d + a] = entry;
    }
  }
  for (let i = 0; i < count; i++) {
    const x = others[i]!;
    for (let j = 0; j <= i; j++) {
      const y = others[j]!;
      let entry = cov[x * size + y]!;
      for (let a = 0; a < d; a++) entry += gained[i * d + a]! * gain[j * d + a]!;
      cov[x * size + y] = entry;
      cov[y * size + x] = entry;
    }
    for (let a = 0; a < d; a++) {
      const z = place[a]!;
      const entry = cov[x * size + z]! + gained[i * d + a]!;
      cov[x * size + z] = entry;
      cov[z * size + x] = entry;
    }
  }
  for (let a = 0; a < d; a++) {
    const z = place[a]!;
    mean[z] = newMean[a]!;
    for (let b = 0; b < d; b++) cov[z * size + place[b]!] = newCov[a * d + b]!;
  }
}

/** The unknowns of a block that are none of the part's, in order. @returns how many */
function unknownsBeside({ d, place }: PartSite, size: number, into: Int32Array): number {
  let count = 0;
  for (let x = 0; x < size; x++) {
    let own = false;
    for (let a = 0; a < d; a++) if (place[a] === x) own = true;
    if (!own) into[count++] = x;
  }
  return count;
}

/**
 * ln of the integral of N(u; p, q) exp(eta u - lambda u^2 / 2).
 * Asks 1 + lambda q > 0.
 */
export function lnMessage(p: number, q: number, eta: number, lambda: number): number {
  const d = 1 + lambda * q;
  return 0.5 * ((-p * p * lambda + 2 * p * eta + eta * eta * q) / d - Math.log(d));
}

/**
 * One sweep of expectation propagation through a block, and what the block then says of u; see {@link sayOfRate}.
 *   ln Z = F(posterior) - F(prior) + sum_i (ln Z_i + F(cavity_i) - F(m*_i, C*_i))
 * @param slice what one unknown is taken to be, in place of what the class says of it
 * @returns ln Z, the ln chance of its readings
 * @source own derivation: conditional normals; T. P. Minka, "Expectation propagation for approximate Bayesian inference" (2001)
 */
export function sweepBlock(
  block: MachineBlock,
  p: number,
  q: number,
  figures: ClassFigures,
  laws: PartLaws,
  slice?: Slice,
): number {
  const { size, shift, cov, mean, priorMean, priorVar } = block;
  const room = blockRoom(size);
  setPrior(block, p, q, figures.visitErrorMm, slice);
  if (Number.isNaN(gatherSites(block))) {
    // sites that together make no normal: start afresh
    clearBlock(block);
    gatherSites(block);
  }
  const last = block.read.at(-1);
  for (const part of block.read) {
    if (!cavity(block, part)) continue;
    findBell(part, block.tails, room, figures, laws);
    sumUnknowns(part, room.cavityMean, room.cavityCov, laws, found);
    // after the last part all sites are gathered anew
    if (renewSite(part, room) && part !== last) spreadNews(block, part, room);
  }
  const lnDet = gatherSites(block);
  if (Number.isNaN(lnDet)) {
    // let the block say nothing this time
    clearBlock(block);
    return Number.NEGATIVE_INFINITY;
  }
  let height = -lnDet;
  for (let a = 0; a < size; a++) height += shift[a]! * mean[a]!;
  let lnZ = 0.5 * height;
  for (let a = 0; a < size; a++) lnZ -= 0.5 * (priorMean[a]! ** 2 / priorVar[a]! + Math.log(priorVar[a]!));
  for (const part of block.read) lnZ += part.lnScale;
  sayOfRate(block, p, q, { mean: mean[0]!, variance: cov[0]!, lnZ });
  return lnZ;
}

/**
 * What the block says of u, when with its parts in it is held to be N(m, v).
 *   lambda = 1 / v - 1 / q (at least -0.5 / q),  eta = m / v - p / q
 * @source own derivation: one normal over another
 */
export function sayOfRate(
  block: MachineBlock,
  p: number,
  q: number,
  { mean, variance, lnZ }: { mean: number; variance: number; lnZ: number },
): void {
  block.lambda = Math.max(1 / variance - 1 / q, -0.5 / q);
  block.eta = mean / variance - p / q;
  block.kappa = lnZ - lnMessage(p, q, block.eta, block.lambda);
}

/**
 * How many nodes carry a forecast: their steps in ln rate must be lost in the scatter of the path itself,
 * or hours at limit would show them.
 */
const nodesFor = (half: number, pathScatter: number, { least, most }: CarryingNodes): number =>
  Math.min(most, Math.max(least, 2 * Math.ceil(half / (1.2 * pathScatter)) + 1));

/** How far nodes run either way [sd of the bell], and how many they are. */
type CarryingNodes = { reachSd: number; least: number; most: number };
const OVER_FINE_BELL: CarryingNodes = { reachSd: FINE_BELL.reach, least: 13, most: 63 };
const OVER_QUICK_BELL: CarryingNodes = { reachSd: 4.2, least: 9, most: 63 };
const OVER_TAILS: CarryingNodes = { reachSd: TAIL_REACH, least: TAIL_NODES, most: MOST_NODES - 1 };

/** Equal nodes of ln rate: `half` either way of the centre. */
export type RateNodes = { centre: number; half: number; count: number };

/** Nodes over a part's bell, as it stands after a sweep. */
export function nodesOverBell(
  { tails }: MachineBlock,
  part: PartSite,
  figures: ClassFigures,
  over = tails ? OVER_FINE_BELL : OVER_QUICK_BELL,
): RateNodes {
  const half = over.reachSd * part.bellSd;
  return { centre: part.bellMean, half, count: nodesFor(half, figures.pathScatter, over) };
}

/** What is held of u without a part's own word. */
export type Cavity = { cavityMean: number; cavityVar: number };

/**
 * The part's nodes of ln rate with the true wear at each: what its forecast is made of. Ask after a sweep.
 * @param laid nodes to be used; null: over the part's bell, as many as it needs
 */
export function nodesOfPart(
  block: MachineBlock,
  part: PartSite,
  figures: ClassFigures,
  laws: PartLaws,
  into: Tilt,
  laid: RateNodes | null = null,
): Cavity {
  const room = blockRoom(block.size);
  const { cavityMean, cavityCov } = room;
  cavity(block, part);
  if (part.n === 0) {
    part.bellMean = cavityMean[0]!;
    part.bellSd = Math.sqrt(cavityCov[0]! + laws.share.reduce((sum, share, r) => sum + share * laws.sd[r]! ** 2, 0));
  }
  const lay = (over = laid ?? nodesOverBell(block, part, figures)): number => {
    const { centre, half, count } = over;
    weighBell(part, laws, cavityMean[0]!, cavityCov[0]!, centre, half, count, into);
    return (2 * half) / (count - 1);
  };
  setReadings(part, figures, cavityMean, cavityCov);
  const spacing = lay();
  if (!laid && part.n > 0 && (into.ends > FINE_BELL.onEnds || into.bellSd < 0.5 * spacing)) {
    // the bell has moved since the sweep
    findBell(part, block.tails, room, figures, laws);
    lay();
  }
  if (!laid && block.tails && into.ends > TAILS) lay(nodesOverBell(block, part, figures, OVER_TAILS));
  keepNodes(part, figures, laws, into.nodes);
  return { cavityMean: cavityMean[0]!, cavityVar: cavityCov[0]! };
}
