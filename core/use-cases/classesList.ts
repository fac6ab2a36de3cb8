import { setImmediate } from 'node:timers/promises';
import type { z } from 'zod';
import type { Handler } from '../contract/operation.ts';
import type { classesList, zPartClassSheet } from '../contract/partClass.ts';
import type { ClassLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import { classOffCoverage } from '../forecast/guards.ts';
import { normalQuantile } from '../maths/normal.ts';
import { type ClassOnRecord, listClasses } from '../record/classStore.ts';
import { settingsOf } from '../way/settingsOf.ts';
import { partsOf } from '../way/shopSeries.ts';
import { type Context, recordOf } from './context.ts';
import { type ShopNow, shopHeard } from './shopNow.ts';

type Sheet = z.input<typeof zPartClassSheet>;

export const classesListHandler: Handler<typeof classesList, Context> = async (context) => {
  const onRecord = listClasses(recordOf(context));
  const { heardMachines, ...now } = shopHeard(context);
  const withMembers = heardMachines === null;
  if (withMembers) await forecastInTurn(now);
  return { classes: onRecord.map((partClass) => classSheet(now, partClass, withMembers)), heardMachines };
};

/** Every machine is forecast once, so that it stands when its parts are told; whoever asks something else comes between two of them. */
async function forecastInTurn(now: ShopNow): Promise<void> {
  for (const { machineId } of now.shop.life.machines) {
    await setImmediate();
    now.ofMachine(machineId);
  }
}

/** What the trade says of a class, what the shop has seen of it, and who is in it: of a large shop nobody waits for so many. */
function classSheet(now: ShopNow, partClass: ClassOnRecord, withMembers: boolean): Sheet {
  const points = now.shop.life.points.filter((point) => point.partClass === partClass.name);
  const parts = points.flatMap((point) => partsOf(now.shop.ofPoint(point)));
  const learned = now.learning.shop.classes.find((one) => one.partClass === partClass.name);
  const rates = learned ? classRates(learned, settingsOf(now.shop.life)) : { before: NO_RATE, now: NO_RATE };
  const forecasts = (withMembers ? points : []).map((point) =>
    now.ofMachine(point.machineId).points.find((forecast) => forecast.pointId === point.pointId),
  );
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
    members: forecasts
      .filter((forecast) => forecast !== undefined)
      .map(({ pointId, machineId, machine, position, point, ownReadings, ratePer1000hMm }) => {
        return { pointId, machineId, machine, position, point, ownReadings, ratePer1000hMm };
      }),
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
