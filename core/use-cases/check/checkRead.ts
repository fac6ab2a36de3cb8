import type { ClassCheck, checkRead, SizeAgainst } from '../../contract/check.ts';
import type { GivenReplyOf, Handler } from '../../contract/operation.ts';
import { classOffCoverage, widenedBy } from '../../forecast/guards.ts';
import { coverageOf } from '../../way/classCoverage.ts';
import { widens } from '../../way/lawsAsSaid.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import { classRates } from '../classesList.ts';
import { type Context, recordOf } from '../context.ts';
import { type ShopNow, shopHeard } from '../shopNow.ts';
import { type KeptForecast, keptForecasts, type SizeScored, scoredForecasts, whatCame } from './scoredForecasts.ts';

/** Sizes beyond their ranges that are listed. */
const LISTED = 60;

export const checkReadHandler: Handler<typeof checkRead, Context> = (context) => {
  const now = shopHeard(context);
  const kept = keptForecasts(recordOf(context));
  const scored = scoredForecasts(now, kept);
  const byClass = Map.groupBy(scored, ({ point }) => point.partClass);
  const beyond = scored
    .filter(({ score }) => !score.inside)
    .sort((a, b) => newestFirst(a, b) || Math.abs(b.score.z) - Math.abs(a.score.z))
    .slice(0, LISTED);
  const settings = settingsOf(now.shop.life);
  return {
    asOf: now.asOf,
    heardMachines: now.heardMachines,
    classes: now.shop.life.partClasses
      .filter(({ name }) => now.shop.life.points.some(({ partClass }) => partClass === name))
      .map(({ name }) => classCheck(now, name, byClass.get(name) ?? [])),
    ...accountOfKept(now, kept, scored),
    beyond: beyond.map((one) => sizeAgainst(now, one)),
    leastSizes: settings.leastScored,
    widens: widens(settings),
  };
};

const newestFirst = (a: SizeScored, b: SizeScored): number =>
  a.visit.takenOn < b.visit.takenOn ? 1 : a.visit.takenOn > b.visit.takenOn ? -1 : 0;

/** A size and its range, with the names a person knows it by. */
export function sizeAgainst({ shop }: ShopNow, { point, visit, origin, score }: SizeScored): SizeAgainst {
  const { pointId, machineId, item, position, partClass } = point;
  const { leastWornMm, middleMm, mostWornMm, pit, inside } = score;
  return {
    ...{ pointId, machineId, item, position, point: point.point, partClass },
    machine: shop.life.machines.find((machine) => machine.machineId === machineId)?.name ?? '',
    takenOn: visit.takenOn,
    origin,
    sizeMm: visit.governing.sizeMm,
    ...{ leastWornMm, middleMm, mostWornMm, pit, inside },
  };
}

function classCheck({ shop, learning }: ShopNow, partClass: string, scored: readonly SizeScored[]): ClassCheck {
  const learned = learning.shop.classes.find((one) => one.partClass === partClass);
  const coverage = learning.coverage.find((one) => one.partClass === partClass);
  const settings = settingsOf(shop.life);
  const off = classOffCoverage(coverage, true, settings);
  const rates = learned ? classRates(learned, settings) : { before: NO_RATE, now: NO_RATE };
  const share = coverageOf(
    scored.map(({ point, visit, score }) => ({
      machineId: point.machineId,
      takenOn: visit.takenOn,
      inside: score.inside,
    })),
  );
  const lined = scored.flatMap(({ score: { crpsMm, naiveCrpsMm } }) =>
    naiveCrpsMm === null ? [] : [{ crpsMm, naiveCrpsMm }],
  );
  return {
    partClass,
    sizes: scored.length,
    kept: scored.filter(({ origin }) => origin === 'kept').length,
    inside: share.inside,
    offBySd: scored.length === 0 ? null : share.z,
    biasMm: mean(scored.map(({ score }) => score.moreWornMm)),
    biasShare: mean(scored.map(({ score }) => (2 * score.moreWornMm) / score.widthMm)),
    widthMm: mean(scored.map(({ score }) => score.widthMm)),
    crpsMm: mean(scored.map(({ score }) => score.crpsMm)),
    lined:
      lined.length === 0
        ? null
        : {
            sizes: lined.length,
            crpsMm: mean(lined.map((one) => one.crpsMm)) ?? 0,
            lineMm: mean(lined.map((one) => one.naiveCrpsMm)) ?? 0,
          },
    tenths: tenthsOf(scored.map(({ score }) => score.pit)),
    ratePer1000hBeforeMm: rates.before,
    ratePer1000hNowMm: rates.now,
    partsRead: learned?.partsRead ?? 0,
    machinesRead: learned?.machinesRead ?? 0,
    verdict:
      (coverage?.sizes ?? 0) < settings.leastScored
        ? 'too-few'
        : off === null
          ? 'as-said'
          : off.facts?.tooNarrow
            ? 'too-narrow'
            : 'too-wide',
    widenedBy: widenedBy(coverage, widens(settings), settings),
    widenBy: widenedBy(coverage, true, settings),
  };
}

const NO_RATE = { low: null, middle: null, high: null };

const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

function tenthsOf(pits: readonly number[]): number[] {
  const counts = Array.from({ length: 10 }, () => 0);
  for (const pit of pits) counts[Math.min(9, Math.floor(10 * pit))]!++;
  return counts;
}

type Account = Pick<GivenReplyOf<typeof checkRead>, 'kept' | 'limits'>;

function accountOfKept({ shop }: ShopNow, kept: readonly KeptForecast[], scored: readonly SizeScored[]): Account {
  const points = new Map(shop.life.points.map((point) => [point.pointId, point]));
  const came = kept.flatMap((one) => {
    const point = points.get(one.pointId);
    return point ? [{ one, ...whatCame(one, shop.ofPoint(point)) }] : [];
  });
  // of one part the last that was kept speaks for its hours at limit
  const lastOfPart = new Map(came.map((its) => [`${its.one.pointId} ${its.one.partOrdinal}`, its]));
  const said = [...lastOfPart.values()].flatMap(({ verdict }) => (verdict?.kind === 'bracketed' ? [verdict.said] : []));
  const count = (which: string) => said.filter((one) => one === which).length;
  const ofWhy = (why: KeptForecast['why']) => kept.filter((one) => one.why === why).length;
  const own = scored.filter(({ origin }) => origin === 'kept');
  return {
    kept: {
      slip: ofWhy('slip'),
      plan: ofWhy('plan'),
      stripDown: ofWhy('strip-down'),
      scored: own.length,
      inside: own.filter(({ score }) => score.inside).length,
      renewedEarly: came.filter(
        ({ verdict, measured, ended }) => verdict?.kind === 'renewed-early' || (ended && !measured),
      ).length,
      waiting: came.filter(({ measured, ended }) => !measured && !ended).length,
    },
    limits: { within: count('within'), tooEarly: count('too-early'), tooLate: count('too-late') },
  };
}
