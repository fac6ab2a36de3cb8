import { defaultModelSettings } from '../../fit/modelSettings.ts';
import { writePlain } from '../../record/entry.ts';
import { keepLearning, readLearning } from '../../record/learningStore.ts';
import type { OpenRecord } from '../../record/recordFile.ts';
import { learnedFrom } from '../../way/learning.ts';
import type { ShopSeries } from '../../way/shopSeries.ts';
import { type Learning, learnClasses } from '../../way.ts';
import { type Context, recordOf } from '../context.ts';
import { learnInBackground } from './learnInBackground.ts';

const KEY = 'shop';

/** What each open record has learned so far, and the fingerprint it is learning towards. */
const soFar = new WeakMap<OpenRecord, { learning: Learning | null; learningTowards: string | null }>();

/**
 * What the shop has taught, at once. While it rests on the same parts it is what was kept. Once a size has come in it is
 * what was learned before that size (a machine's own word in it is said afresh by the way), and the classes catch up in the
 * background; the next to ask after that gets what a full learning gives.
 */
export function shopLearning(context: Context, shop: ShopSeries): Learning {
  const record = recordOf(context) as OpenRecord;
  const from = learnedFrom(shop, defaultModelSettings);
  const state = soFar.get(record) ?? { learning: stored(record), learningTowards: null };
  soFar.set(record, state);
  if (state.learning?.fingerprint === from.fingerprint) return state.learning;
  // another day is asked for, or nothing was ever learned: the answer waits for it
  if (shop.asOf !== context.today() || state.learning === null) {
    const learning = learnClasses(shop);
    if (shop.asOf === context.today()) keep(record, learning);
    return learning;
  }
  if (state.learningTowards !== from.fingerprint) {
    state.learningTowards = from.fingerprint;
    void catchUp(context, record, from);
  }
  return state.learning;
}

const stored = (record: OpenRecord): Learning | null => {
  const kept = readLearning(record, KEY);
  return kept && { fingerprint: kept.fingerprint, shop: kept.learning as Learning['shop'] };
};

async function catchUp(context: Context, record: OpenRecord, from: ReturnType<typeof learnedFrom>): Promise<void> {
  const { parts, priors, fingerprint } = from;
  const shop = await learnInBackground({ parts, priors: [...priors], settings: defaultModelSettings });
  // the record may have been closed, or more may have come in, meanwhile
  if (context.record === record && soFar.get(record)?.learningTowards === fingerprint)
    keep(record, { fingerprint, shop });
}

function keep(record: OpenRecord, learning: Learning): void {
  soFar.set(record, { learning, learningTowards: null });
  writePlain(record, (w) => keepLearning(w, KEY, learning.fingerprint, learning.shop));
}

/** Resolves once the record's classes have caught up with what it holds: for tests and for closing in good order. */
export async function learningSettled(context: Context): Promise<void> {
  const record = recordOf(context) as OpenRecord;
  while (soFar.get(record)?.learningTowards) await new Promise((resolve) => setTimeout(resolve, 20));
}
