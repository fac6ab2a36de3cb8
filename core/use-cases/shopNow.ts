import { defaultModelSettings } from '../fit/modelSettings.ts';
import { writePlain } from '../record/entry.ts';
import { keepLearning, readLearning } from '../record/learningStore.ts';
import type { Day } from '../units/day.ts';
import { learnedFrom } from '../way/learning.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { forecastsOfMachine, type Learning, learnClasses, type MachineForecast, seriesOfShop } from '../way.ts';
import { type Context, keptInMemory, lifeOf, recordOf } from './context.ts';

/** The shop walked up to a day: every reading use case starts here. Forecasts are made when first asked for. */
export type ShopNow = {
  asOf: Day;
  shop: ShopSeries;
  learning: Learning;
  ofMachine(machineId: number): MachineForecast;
};

const LEARNING = 'shop';

export function shopNow(context: Context, asOf: Day = context.today()): ShopNow {
  return keptInMemory(context, `shop as of ${asOf}`, () => {
    const shop = seriesOfShop(lifeOf(context, { asOf }), asOf);
    const learning = learnedSoFar(context, shop);
    const known = new Map<number, MachineForecast>();
    return {
      asOf,
      shop,
      learning,
      ofMachine(machineId: number) {
        const before = known.get(machineId);
        if (before) return before;
        const now = forecastsOfMachine(shop, machineId, learning);
        known.set(machineId, now);
        return now;
      },
    };
  });
}

/** What was kept in the record, while it rests on the same parts; else learned anew, and kept when it is today's. */
function learnedSoFar(context: Context, shop: ShopSeries): Learning {
  const record = recordOf(context);
  const stored = readLearning(record, LEARNING);
  const { fingerprint } = learnedFrom(shop, defaultModelSettings);
  if (stored?.fingerprint === fingerprint) {
    return { fingerprint, shop: stored.learning as Learning['shop'] };
  }
  const learning = learnClasses(shop);
  if (shop.asOf === context.today()) {
    writePlain(record, (w) => keepLearning(w, LEARNING, learning.fingerprint, learning.shop));
  }
  return learning;
}
