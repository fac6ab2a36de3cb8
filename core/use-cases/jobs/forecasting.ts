import { entriesRevision } from '../../record/entry.ts';
import type { Learning } from '../../way.ts';
import { type Context, openContext, recordOf } from '../context.ts';
import { forecastTogether, keepForecastsNow, keptList } from '../keptList.ts';
import { learningKept } from '../learning/shopLearning.ts';

/** Read, forecast and kept so many at a time: few enough that a cancel is heeded soon and little stays in memory. */
const AT_A_TIME = 25;

/**
 * Forecasts every machine that wants it, on a connection of its own, from what the classes have taught so far. Broken off,
 * what was kept by then holds, and the rest is as it was.
 * @param told share done; throws to break off
 */
export function forecastShopOf(recordPath: string, asOf: string, told: (share: number) => void): void {
  const context = openContext({ recordPath, asOf, onlyLooks: true });
  try {
    recordOf(context).sqlite.pragma('synchronous = NORMAL'); // what is lost to a power cut is forecast again
    const learning = learningKept(recordOf(context));
    if (learning) forecastWanting(context, learning, told);
  } finally {
    context.close();
  }
}

function forecastWanting(context: Context, learning: Learning, told: (share: number) => void): void {
  const { wanting } = keptList(context, learning);
  for (let from = 0; from < wanting.length; from += AT_A_TIME) {
    told(from / wanting.length);
    const revision = entriesRevision(recordOf(context));
    keepForecastsNow(
      context,
      learning,
      revision,
      forecastTogether(context, learning, wanting.slice(from, from + AT_A_TIME)),
    );
  }
}
