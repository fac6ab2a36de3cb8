import { setImmediate } from 'node:timers/promises';
import type { z } from 'zod';
import type { Handler } from '../contract/operation.ts';
import type { classesList, zPartClassSheet } from '../contract/partClass.ts';
import type { ClassLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import { classOffCoverage } from '../forecast/guards.ts';
import { normalQuantile } from '../maths/normal.ts';
import { type ClassOnRecord, listClasses } from '../record/classStore.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { pointsOfShop } from '../way/pointsOfShop.ts';
import { rateOfPoint } from '../way/rateOfPoint.ts';
import { settingsOf } from '../way/settingsOf.ts';
import { partsOf } from '../way/shopSeries.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';
import { type ShopNow, shopHeard } from './shopNow.ts';

type Sheet = z.input<typeof zPartClassSheet>;

export const classesListHandler: Handler<typeof classesList, Context> = async (context) => {
  const onRecord = listClasses(recordOf(context));
  const { heardMachines, ...now } = shopHeard(context);
  const rates = heardMachines === null ? await ratesInTurn(context, now) : null; // of a large shop nobody waits for so many members
  return { classes: onRecord.map((partClass) => classSheet(now, partClass, rates)), heardMachines };
};

type Rates = ReadonlyMap<number, Sheet['ratePer1000hNowMm']>;

/** How fast every part wears, machine by machine: whoever asks something else comes between two of them. */
async function ratesInTurn(context: Context, { asOf, shop, learning, lawsOf }: ShopNow): Promise<Rates> {
  const byMachine = keptInMemory(
    context,
    `rates as of ${asOf} by ${learning.fingerprint}`,
    () => new Map<number, Rates>(),
  );
  const points = pointsOfShop(shop.life.points);
  for (const { machineId } of shop.life.machines) {
    if (byMachine.has(machineId)) continue;
    await setImmediate();
    const laws = lawsOf(machineId);
    byMachine.set(
      machineId,
      new Map(points.on(machineId).map((point) => [point.pointId, rateOfPoint(shop, point, laws)])),
    );
  }
  return new Map([...byMachine.values()].flatMap((rates) => [...rates]));
}

/** What the trade says of a class, what the shop has seen of it, and who is in it. @param members how fast each part wears; null: they are not listed */
function classSheet(now: ShopNow, partClass: ClassOnRecord, members: Rates | null): Sheet {
  const points = now.shop.life.points.filter((point) => point.partClass === partClass.name);
  const parts = points.flatMap((point) => partsOf(now.shop.ofPoint(point)));
  const learned = now.learning.shop.classes.find((one) => one.partClass === partClass.name);
  const rates = learned ? classRates(learned, settingsOf(now.shop.life)) : { before: NO_RATE, now: NO_RATE };
  return {
    partClassId: partClass.id,
    name: partClass.name,
    tradeWear: partClass.tradeWear,
    newSizeTolMm: partClass.newSizeTolMm,
    parts: points.length,
    finishedParts: parts.filter((part) => !part.present).length,
    readings: parts.reduce((sum, part) => sum + part.readings.length, 0),
    machines: new Set(points.map((point) => point.machineId)).size,
    ratePer1000hBeforeMm: rates.before,
    ratePer1000hNowMm: rates.now,
    coverage: coverageOf(now, partClass.name),
    state: stateOf(learned),
    members: members === null ? [] : points.map((point) => memberOf(now, point, members)),
  };
}

function memberOf({ shop }: ShopNow, point: PointOnRecord, rates: Rates): Sheet['members'][number] {
  const { pointId, machineId, position } = point;
  return {
    ...{ pointId, machineId, position, point: point.point },
    machine: shop.hours.ofMachine(machineId)?.life.name ?? '',
    ownReadings: shop.ofPoint(point).ownReadings,
    ratePer1000hMm: rates.get(pointId) ?? NO_RATE,
  };
}

function coverageOf({ shop, learning }: ShopNow, partClass: string): Sheet['coverage'] {
  const scored = learning.coverage.find((one) => one.partClass === partClass);
  return scored
    ? {
        sizes: scored.sizes,
        inside: scored.inside,
        off: classOffCoverage(scored, false, settingsOf(shop.life)) !== null,
      }
    : null;
}

/** Wear per 1000 worked hours of a part of the class not yet read, before and after the shop's own readings [mm]. */
export const classRates = (learned: ClassLearning, settings: ModelSettings) => ({
  before: rateBefore(learned, settings),
  now: rateNow(learned),
});

const NO_RATE = { low: null, middle: null, high: null };

/** Fewer parts, or one machine, say more of that machine than of the class (common practice, no source). */
const LEAST_PARTS = 3;
const LEAST_MACHINES = 2;

function stateOf(learned: ClassLearning | undefined): Sheet['state'] {
  if (learned && learned.partsRead >= LEAST_PARTS && learned.machinesRead >= LEAST_MACHINES) return 'learned';
  return learned?.prior.from === 'trade' ? 'from-trade-prior' : 'from-wide-prior';
}

const Z_90 = normalQuantile(0.9);

/** 10, 50 and 90 % points of a lognormal rate, per 1000 worked hours [mm]. */
function rateRange(lnMean: number, lnSd: number, hRefHours: number): Sheet['ratePer1000hNowMm'] {
  const at = (z: number) => (Math.exp(lnMean + z * lnSd) * 1000) / hRefHours;
  return { low: at(-Z_90), middle: at(0), high: at(Z_90) };
}

/** A part nobody has read scatters about its class's mean rate, and about its machine's. */
function rateBefore({ prior }: ClassLearning, { partScatterScale, machineScatterScale }: ModelSettings) {
  return rateRange(prior.m0, Math.hypot(prior.s0, partScatterScale, machineScatterScale), prior.hRefHours);
}

/** The same as learned: the mixture over the class's nodes, by its mean and variance. */
function rateNow({ prior, nodes }: ClassLearning) {
  let mean = 0;
  let square = 0;
  for (const { weight, muEta, muLambda, partScatter, machineScatter } of nodes) {
    const at = muEta / muLambda;
    mean += weight * at;
    square += weight * (1 / muLambda + partScatter ** 2 + machineScatter ** 2 + at * at);
  }
  return rateRange(mean, Math.sqrt(Math.max(0, square - mean * mean)), prior.hRefHours);
}
