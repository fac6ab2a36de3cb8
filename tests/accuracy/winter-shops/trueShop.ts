import type { ClassPrior } from '#core/fit/classPrior.ts';
import { type Chance, chance } from '../chance.ts';

/**
 * Invented shops for the plan of winters: what wears, how it truly wears, and what work costs. All figures are made up.
 * Wear is a gamma process, which is not the forecast's law; machines differ in hours and harshness, parts in rate.
 */
type SimClass = { partClass: string; limitMm: number; lifeHours: number; power: number; gaugeSdMm: number };

const CLASSES: readonly SimClass[] = [
  { partClass: 'strip', limitMm: 2.5, lifeHours: 7000, power: 1.1, gaugeSdMm: 0.05 },
  { partClass: 'ram pin', limitMm: 1, lifeHours: 9000, power: 1, gaugeSdMm: 0.03 },
  { partClass: 'latch pin', limitMm: 1, lifeHours: 12_000, power: 1, gaugeSdMm: 0.03 },
];

export type SimPosition = {
  of: SimClass;
  takeOffs: readonly string[];
  /** [h] and [bench h] */
  ownHours: number;
  partsCost: number;
};

const [strip, ramPin, latchPin] = CLASSES as [SimClass, SimClass, SimClass];

/** A hitch: four strips behind ram and carrier, two ram pins behind the ram, two latch pins open to the hand. */
export const POSITIONS: readonly SimPosition[] = [
  ...[0, 1, 2, 3].map(() => ({ of: strip, takeOffs: ['ram', 'carrier'], ownHours: 0.3, partsCost: 0.7 })),
  ...[0, 1].map(() => ({ of: ramPin, takeOffs: ['ram'], ownHours: 0.8, partsCost: 1.2 })),
  ...[0, 1].map(() => ({ of: latchPin, takeOffs: [], ownHours: 0.6, partsCost: 1 })),
];

/** Shared work of a visit that opens everything, by its parts, before it is scaled. */
const OPENING = { visit: 1, ram: 0.5, carrier: 2.5 };

export type SimPrices = {
  /** a breakdown in season, its repair apart [bench h] */
  breakdownCost: number;
  visitHours: number;
  takeOffHours: ReadonlyMap<string, number>;
};

/** Prices under which the shared strip-down is such a share of a job that renews everything. */
export function pricesOf(breakdownCost: number, stripDownShare: number): SimPrices {
  const work = POSITIONS.reduce((sum, { ownHours, partsCost }) => sum + ownHours + partsCost, 0);
  const opening = OPENING.visit + OPENING.ram + OPENING.carrier;
  const times = (work * stripDownShare) / (1 - stripDownShare) / opening;
  return {
    breakdownCost,
    visitHours: times * OPENING.visit,
    takeOffHours: new Map([
      ['ram', times * OPENING.ram],
      ['carrier', times * OPENING.carrier],
    ]),
  };
}

/** One part as it truly wears from the day it is put in. */
export type TrueLife = {
  /** hours at which it reaches its limit */
  atLimitHours: number;
  /** wear at hours up to that [mm] */
  wearMm: (hours: number) => number;
};

export type TrueShop = {
  seed: number;
  machines: number;
  winters: number;
  /** hours of a machine in a season */
  hoursOf: (machine: number, season: number) => number;
  /** hours of the year before the first winter: what its owner says it does */
  hoursBefore: (machine: number) => number;
  /** the n-th part at a position of a machine; the same whatever is done to the others */
  life: (machine: number, position: number, ordinal: number) => TrueLife;
  /** hours the first part has run before the first winter */
  firstAge: (machine: number, position: number) => number;
  priors: ReadonlyMap<string, ClassPrior>;
};

const STEP_HOURS = 25;
const PART_SCATTER = 0.3;
const MACHINE_SCATTER = 0.25;
const PATH_SCATTER = 0.12;
const YEAR_SCATTER = 0.15;

export function trueShop(seed: number, machines: number, winters = 20): TrueShop {
  const at = (...place: number[]): Chance => chance(place.reduce((sum, each) => Math.imul(sum, 7919) + each + 1, seed));
  const ofMachine = Array.from({ length: machines }, (_, machine) => {
    const by = at(1, machine);
    return { hoursPerYear: 300 * Math.exp(by.uniform() * Math.log(3.5)), lnHarshness: MACHINE_SCATTER * by.normal() };
  });
  const hoursOf = (machine: number, season: number) =>
    ofMachine[machine]!.hoursPerYear * Math.exp(YEAR_SCATTER * at(2, machine, season + 1).normal());
  const lives = new Map<string, TrueLife>();
  const life = (machine: number, position: number, ordinal: number): TrueLife => {
    const key = `${machine} ${position} ${ordinal}`;
    const known = lives.get(key);
    if (known) return known;
    const by = at(3, machine, position, ordinal);
    const { of } = POSITIONS[position]!;
    const made = madeLife(of, ofMachine[machine]!.lnHarshness + PART_SCATTER * by.normal(), by);
    lives.set(key, made);
    return made;
  };
  return {
    seed,
    machines,
    winters,
    hoursOf,
    hoursBefore: (machine) => hoursOf(machine, -1),
    life,
    firstAge: (machine, position) => 0.9 * at(4, machine, position).uniform() * life(machine, position, 0).atLimitHours,
    priors: new Map(
      CLASSES.map(({ partClass, limitMm, lifeHours }, k) => {
        // what the trade says of a class is off by a fifth, one way or the other
        const m0 = Math.log(limitMm) + 0.2 * at(5, k).normal();
        return [partClass, { partClass, hRefHours: lifeHours, m0, s0: 0.5, from: 'trade' }];
      }),
    ),
  };
}

/** @source gamma process with wear ~ time^power: J. M. van Noortwijk, Reliability Engineering and System Safety 94 (2009) */
function madeLife({ limitMm, lifeHours, power }: SimClass, lnRate: number, by: Chance): TrueLife {
  const rate = limitMm * Math.exp(lnRate);
  const c2 = PATH_SCATTER ** 2;
  const wear = [0];
  let time = 0;
  while (wear.at(-1)! < limitMm && wear.length < 20_000) {
    const next = ((wear.length * STEP_HOURS) / lifeHours) ** power;
    wear.push(wear.at(-1)! + by.gamma((next - time) / c2) * rate * c2);
    time = next;
  }
  const last = wear.length - 1;
  const share = (limitMm - wear[last - 1]!) / (wear[last]! - wear[last - 1]!);
  return {
    atLimitHours: (last - 1 + share) * STEP_HOURS,
    wearMm: (hours) => {
      const step = Math.min(last - 1, Math.floor(hours / STEP_HOURS));
      return wear[step]! + (hours / STEP_HOURS - step) * (wear[step + 1]! - wear[step]!);
    },
  };
}
