import { defaultModelSettings } from '../../fit/modelSettings.ts';
import { writePlain } from '../../record/entry.ts';
import { keepLearning, readLearning } from '../../record/learningStore.ts';
import type { OpenRecord } from '../../record/recordFile.ts';
import { learnedFrom } from '../../way/learning.ts';
import type { ShopHabit } from '../../way/shopHours.ts';
import type { ShopSeries } from '../../way/shopSeries.ts';
import { type Learning, learnClasses, seriesOfShop } from '../../way.ts';
import { type Context, recordOf } from '../context.ts';
import { learnInBackground } from './learnInBackground.ts';

/** Names what is kept, its shape included. */
const KEY = 'classes and habit';

/** What each open record has learned so far, and the fingerprint it is learning towards. */
type State = { learning: Learning | null; learningTowards: string | null };
const soFar = new WeakMap<OpenRecord, State>();

/**
 * What the shop has taught, at once. While it rests on the same parts it is what was kept. Once a size has come in it is
 * what was learned before that size (a machine's own word in it is said afresh by the way), and the classes catch up in the
 * background; the next to ask after that gets what a full learning gives.
 */
export function shopLearning(context: Context, shop: ShopSeries): Learning {
  const record = recordOf(context) as OpenRecord;
  const { fingerprint } = learnedFrom(shop, defaultModelSettings);
  const state = stateOf(record);
  if (state.learning?.fingerprint === fingerprint) return state.learning;
  // another day is asked for, or nothing was ever learned: the answer waits for it
  if (shop.asOf !== context.today() || state.learning === null) {
    const learning = learnClasses(shop);
    if (shop.asOf === context.today()) keep(record, learning);
    return learning;
  }
  if (state.learningTowards !== fingerprint) {
    state.learningTowards = fingerprint;
    void catchUp(context, record, shop, fingerprint);
  }
  return state.learning;
}

/** The habit of use the shop was last learned with; null: nothing was ever learned. */
export const habitSoFar = (context: Context): ShopHabit | null =>
  stateOf(recordOf(context) as OpenRecord).learning?.habit ?? null;

function stateOf(record: OpenRecord): State {
  const state = soFar.get(record) ?? { learning: stored(record), learningTowards: null };
  soFar.set(record, state);
  return state;
}

function stored(record: OpenRecord): Learning | null {
  const kept = readLearning(record, KEY);
  return kept && { fingerprint: kept.fingerprint, ...(kept.learning as Omit<Learning, 'fingerprint'>) };
}

/** Walks the shop afresh, habit of use and all, and learns it in the background. */
async function catchUp(context: Context, record: OpenRecord, stale: ShopSeries, towards: string): Promise<void> {
  const fresh = seriesOfShop(stale.life, stale.asOf);
  const { parts, priors, fingerprint } = learnedFrom(fresh, defaultModelSettings);
  const shop = await learnInBackground({ parts, priors: [...priors], settings: defaultModelSettings });
  // the record may have been closed, or more may have come in, meanwhile
  if (context.record !== record || stateOf(record).learningTowards !== towards) return;
  keep(record, { fingerprint, shop, habit: fresh.hours.habit });
}

function keep(record: OpenRecord, learning: Learning): void {
  soFar.set(record, { learning, learningTowards: null });
  const { fingerprint, ...learned } = learning;
  writePlain(record, (w) => keepLearning(w, KEY, fingerprint, learned));
}

/** Resolves once the record's classes have caught up with what it holds: for tests and for closing in good order. */
export async function learningSettled(context: Context): Promise<void> {
  const record = recordOf(context) as OpenRecord;
  while (soFar.get(record)?.learningTowards) await new Promise((resolve) => setTimeout(resolve, 20));
}
