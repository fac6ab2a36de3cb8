import { learnShop, type ShopLearning } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import type { PartLaw } from '#core/fit/partLaw.ts';
import { chanceReadingBelow } from '#core/forecast/wearLaw.ts';
import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { aReading, aSeries } from '../aSeries.ts';
import { type Chance, chance } from '../chance.ts';
import { POSITIONS, type SimPrices, type TrueShop } from './trueShop.ts';

/** What a shop knows of a machine in a winter. */
export type MachineSeen = {
  machine: number;
  /** machine hours now, and hours of each season so far, the year before the first included [h] */
  hours: number;
  seasons: readonly number[];
  /** hours since everything was renewed; null: never */
  sinceAll: number | null;
  /** hours each part has run */
  ages: readonly number[];
  /** what is held of the parts in place, and of new ones in their places */
  laws: () => readonly PartLaw[];
  newLaws: () => readonly PartLaw[];
};

/** Which positions to renew in a winter. */
export type Policy = { usesForecasts: boolean; renew: (seen: MachineSeen, prices: SimPrices) => Promise<number[]> };

/** What a shop did over all winters; what that costs depends on the prices. */
export type RunTally = {
  /** own work and parts put in, less what more is left in the parts at the end than was at the beginning [bench h] */
  work: number;
  takeOffs: Record<string, number>;
  visits: number;
  breakdowns: number;
  renewals: number;
  /** sizes found, and those inside their 80 % band as forecast before they were seen */
  found: number;
  inside: number;
};

/** Work, parts, strip-down and breakdowns of a run [bench h]. */
export const costOfRun = ({ work, takeOffs, visits, breakdowns }: RunTally, prices: SimPrices): number =>
  work +
  visits * prices.visitHours +
  breakdowns * prices.breakdownCost +
  Object.entries(takeOffs).reduce((sum, [takeOff, times]) => sum + times * prices.takeOffHours.get(takeOff)!, 0);

type Place = { ordinal: number; fittedAt: number; readings: WearReading[] };

/** Winters in which the classes are learned again; in between a machine's own sizes are heard at once, as in the program. */
const LEARNED_IN = [0, 3, 7, 12];

/** The program's own settings, but for a smaller cloud to learn the classes on: a whole learning many times over. */
const settings = { ...defaultModelSettings, cloudPoints: 32, partsPerClassForFigures: 60 };

/** One shop under one policy over all winters. */
export async function shopRun(shop: TrueShop, policy: Policy, prices: SimPrices): Promise<RunTally> {
  const run = new ShopRun(shop, policy.usesForecasts);
  for (let winter = 0; winter < shop.winters; winter++) {
    run.startWinter(winter);
    for (let machine = 0; machine < shop.machines; machine++) {
      const positions = await policy.renew(run.seen(machine), prices);
      if (positions.length > 0) run.visit(machine, positions);
    }
    for (let machine = 0; machine < shop.machines; machine++) run.season(machine, winter);
  }
  return run.closed();
}

/** What is learned before the first winter: the same under every policy and at every price. */
const learnedAtFirst = new WeakMap<TrueShop, ShopLearning>();

class ShopRun {
  private readonly shop: TrueShop;
  private readonly usesForecasts: boolean;
  private readonly hours: number[];
  private readonly seasons: number[][];
  private readonly places: Place[][];
  private readonly allRenewedAt: (number | null)[];
  private readonly finished: WearSeries[][];
  private learning: ShopLearning | null = null;
  /** laws of each machine as it is now: as good until it is measured, or a part of it renewed */
  private readonly lawsOf = new Map<number, readonly PartLaw[]>();
  private readonly by: Chance;
  private readonly tally: RunTally = {
    ...{ work: 0, takeOffs: {}, visits: 0, breakdowns: 0, renewals: 0 },
    ...{ found: 0, inside: 0 },
  };

  constructor(shop: TrueShop, usesForecasts: boolean) {
    this.shop = shop;
    this.usesForecasts = usesForecasts;
    this.by = chance(shop.seed + 77);
    const machines = Array.from({ length: shop.machines }, (_, machine) => machine);
    this.hours = machines.map(() => 0);
    this.seasons = machines.map((machine) => [shop.hoursBefore(machine)]);
    this.places = machines.map((machine) =>
      POSITIONS.map((_, position) => ({ ordinal: 0, fittedAt: -shop.firstAge(machine, position), readings: [] })),
    );
    this.allRenewedAt = machines.map(() => null);
    this.finished = machines.map(() => []);
    this.tally.work = this.worthInPlace();
    // every machine has been opened and measured once, whatever is done later
    for (const machine of machines) this.look(machine, [...POSITIONS.keys()], this.hours[machine]!, false);
  }

  startWinter(winter: number): void {
    if (!this.usesForecasts || !LEARNED_IN.includes(winter)) return;
    // before the first winter no policy has done anything yet
    const before = winter === 0 ? learnedAtFirst.get(this.shop) : undefined;
    const series = this.places.flatMap((_, machine) => this.seriesOf(machine));
    this.learning = before ?? learnShop(series, this.shop.priors, settings);
    if (winter === 0) learnedAtFirst.set(this.shop, this.learning);
    this.lawsOf.clear();
  }

  seen(machine: number): MachineSeen {
    const hours = this.hours[machine]!;
    const since = this.allRenewedAt[machine]!;
    return {
      machine,
      hours,
      seasons: this.seasons[machine]!,
      sinceAll: since === null ? null : hours - since,
      ages: this.places[machine]!.map(({ fittedAt }) => hours - fittedAt),
      laws: () => this.laws(machine),
      newLaws: () => machineLaws(this.learning!, this.renewedSeries(machine), settings),
    };
  }

  visit(machine: number, positions: readonly number[]): void {
    this.open(machine, positions, this.hours[machine]!);
    if (positions.length === POSITIONS.length) this.allRenewedAt[machine] = this.hours[machine]!;
  }

  /** A machine's work until the next winter: what reaches its limit stops it, is opened and renewed there and then. */
  season(machine: number, winter: number): void {
    const until = this.hours[machine]! + this.shop.hoursOf(machine, winter);
    for (;;) {
      const next = POSITIONS.map((_, position) => ({ position, at: this.limitAt(machine, position) }))
        .filter(({ at }) => at <= until)
        .sort((a, b) => a.at - b.at)[0];
      if (!next) break;
      this.tally.breakdowns++;
      this.open(machine, [next.position], next.at);
    }
    this.seasons[machine]!.push(until - this.hours[machine]!);
    this.hours[machine] = until;
  }

  closed(): RunTally {
    return { ...this.tally, work: this.tally.work - this.worthInPlace() };
  }

  private limitAt(machine: number, position: number): number {
    const { ordinal, fittedAt } = this.places[machine]![position]!;
    return fittedAt + this.shop.life(machine, position, ordinal).atLimitHours;
  }

  /** Opens what the positions ask for, measures all that is reached, renews the positions. */
  private open(machine: number, positions: readonly number[], at: number): void {
    const off = new Set(positions.flatMap((position) => POSITIONS[position]!.takeOffs));
    const reached = [...POSITIONS.keys()].filter((position) =>
      POSITIONS[position]!.takeOffs.every((takeOff) => off.has(takeOff)),
    );
    this.tally.visits++;
    for (const takeOff of off) this.tally.takeOffs[takeOff] = (this.tally.takeOffs[takeOff] ?? 0) + 1;
    this.look(machine, reached, at, true);
    for (const position of positions) {
      const { ownHours, partsCost } = POSITIONS[position]!;
      this.tally.work += ownHours + partsCost;
      this.tally.renewals++;
      const place = this.places[machine]![position]!;
      this.finished[machine]!.push(this.seriesAt(machine, position, false));
      this.places[machine]![position] = { ordinal: place.ordinal + 1, fittedAt: at, readings: [] };
    }
    this.lawsOf.delete(machine);
  }

  /** Measures positions as found; scores what was forecast of them just before. */
  private look(machine: number, positions: readonly number[], at: number, isScored: boolean): void {
    if (!this.usesForecasts) return;
    const laws = isScored ? this.laws(machine) : [];
    const seen = positions.map((position) => {
      const place = this.places[machine]![position]!;
      const { gaugeSdMm } = POSITIONS[position]!.of;
      const workedHours = at - place.fittedAt;
      const trueMm = this.shop.life(machine, position, place.ordinal).wearMm(workedHours);
      return { position, workedHours, wearMm: trueMm + gaugeSdMm * this.by.normal(), errorSdMm: gaugeSdMm };
    });
    for (const { position, workedHours, wearMm, errorSdMm } of seen) {
      const law = laws[position];
      if (law) {
        const below = chanceReadingBelow(law, wearMm, workedHours, errorSdMm, defaultModelSettings.driftDelta);
        this.tally.found++;
        if (below >= 0.1 && below <= 0.9) this.tally.inside++;
      }
      const visit = `${machine}@${Math.round(at)}`;
      this.places[machine]![position]!.readings.push(aReading({ workedHours, wearMm, errorSdMm, visit }));
    }
    this.lawsOf.delete(machine);
  }

  private laws(machine: number): readonly PartLaw[] {
    if (!this.learning) return [];
    const known = this.lawsOf.get(machine) ?? machineLaws(this.learning, this.seriesOf(machine), settings);
    this.lawsOf.set(machine, known);
    return known;
  }

  /** Parts in place first, in order of their positions, then those taken out. */
  private seriesOf(machine: number): WearSeries[] {
    return [...POSITIONS.map((_, position) => this.seriesAt(machine, position, true)), ...this.finished[machine]!];
  }

  private renewedSeries(machine: number): WearSeries[] {
    const anew = POSITIONS.map(({ of }, position) =>
      aSeries({
        pointId: pointId(machine, position),
        ordinal: this.places[machine]![position]!.ordinal + 1,
        machineId: machine + 1,
        partClass: of.partClass,
        newSizeSdMm: 0,
        readings: [],
      }),
    );
    const before = POSITIONS.map((_, position) => this.seriesAt(machine, position, false));
    return [...anew, ...before, ...this.finished[machine]!];
  }

  private seriesAt(machine: number, position: number, present: boolean): WearSeries {
    const { ordinal, readings } = this.places[machine]![position]!;
    return aSeries({
      pointId: pointId(machine, position),
      ordinal,
      machineId: machine + 1,
      partClass: POSITIONS[position]!.of.partClass,
      newSizeSdMm: 0,
      present,
      readings: [...readings],
    });
  }

  /** What the parts in place are worth: own work and parts by the share of their true life that is left. */
  private worthInPlace(): number {
    let worth = 0;
    this.places.forEach((places, machine) => {
      places.forEach(({ ordinal, fittedAt }, position) => {
        const { ownHours, partsCost } = POSITIONS[position]!;
        const { atLimitHours } = this.shop.life(machine, position, ordinal);
        worth += (ownHours + partsCost) * Math.max(0, 1 - (this.hours[machine]! - fittedAt) / atLimitHours);
      });
    });
    return worth;
  }
}

const pointId = (machine: number, position: number): number => machine * POSITIONS.length + position + 1;
