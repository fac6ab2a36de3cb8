import { RefusedError } from '../../outcome.ts';
import { recordRevision, writePlain } from '../../record/entry.ts';
import { keepLearning, readLearning } from '../../record/learningStore.ts';
import type { OpenRecord, ReadableRecord } from '../../record/recordFile.ts';
import { learnedFrom, withEveryClass } from '../../way/learning.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import type { ShopHabit } from '../../way/shopHours.ts';
import type { ShopSeries } from '../../way/shopSeries.ts';
import { type Learning, learnClasses } from '../../way.ts';
import { type Context, faultOfRecord, lifeOf, recordOf } from '../context.ts';
import { learnInBackground } from './learnInBackground.ts';

/** Names what is kept, its shape included. */
const KEY = 'classes, habit and coverage';

/** What each open record has learned so far, and whether it is learning. */
type State = { learning: Learning | null; catchingUp: boolean; priors?: Learning };
const soFar = new WeakMap<OpenRecord, State>();

/**
 * What the shop has taught, at once. While it rests on the same parts it is what was kept. Once a size has come in it is
 * what was learned before that size (a machine's own word in it is said afresh by the way), and the classes catch up in the
 * background; the next to ask after that gets what a full learning gives.
 *
 * @param atOnce where nothing was ever learned: what the trade says of the classes, while they are learned in the background
 */
export function shopLearning(context: Context, shop: ShopSeries, atOnce = false): Learning {
  const record = recordOf(context) as OpenRecord;
  const { fingerprint } = learnedFrom(shop, settingsOf(shop.life));
  const state = stateOf(record);
  if (state.learning?.fingerprint === fingerprint) return state.learning;
  if (atOnce && shop.asOf === context.today() && state.learning === null) {
    startCatchingUp(context, record, state);
    return priorsOnly(state, shop, fingerprint);
  }
  // another day is asked for, or nothing was ever learned: the answer waits for it
  if (shop.asOf !== context.today() || state.learning === null) {
    const learning = learnClasses(shop);
    if (shop.asOf === context.today()) keep(record, learning);
    return learning;
  }
  startCatchingUp(context, record, state);
  return state.learning;
}

function startCatchingUp(context: Context, record: OpenRecord, state: State): void {
  if (state.catchingUp) return;
  state.catchingUp = true;
  void catchUp(context, record);
}

/** Names a learning that is none: what the trade says. */
const FROM_PRIORS = 'from priors, ';
export const isFromPriors = ({ fingerprint }: Learning): boolean => fingerprint.startsWith(FROM_PRIORS);

/** What is held of the classes before any reading. */
function priorsOnly(state: State, shop: ShopSeries, fingerprint: string): Learning {
  const name = `${FROM_PRIORS}${fingerprint}`;
  if (state.priors?.fingerprint !== name) {
    const nothing: Learning = {
      fingerprint: name,
      shop: { classes: [] },
      habit: shop.hours.habit,
      scored: [],
      coverage: [],
    };
    state.priors = withEveryClass(nothing, shop, settingsOf(shop.life));
  }
  return state.priors;
}

/** The habit of use the shop was last learned with; null: nothing was ever learned. */
export const habitSoFar = (context: Context): ShopHabit | null =>
  stateOf(recordOf(context) as OpenRecord).learning?.habit ?? null;

function stateOf(record: OpenRecord): State {
  const state = soFar.get(record) ?? { learning: learningKept(record), catchingUp: false };
  soFar.set(record, state);
  return state;
}

/**
 * What was kept cannot be read as it was written, as after damage to the file, or an earlier program kept less of it: then it
 * is learned again.
 */
export function learningKept(record: ReadableRecord): Learning | null {
  try {
    const kept = readLearning(record, KEY);
    const learned = kept?.learning as Omit<Learning, 'fingerprint'> | undefined;
    return kept && learned?.scored ? { fingerprint: kept.fingerprint, ...learned } : null;
  } catch (thrown) {
    if (thrown instanceof SyntaxError) return null;
    throw thrown;
  }
}

/**
 * Learns the shop in the background, once more when more has come in meanwhile: one learning at a time, however fast
 * entries follow each other.
 */
async function catchUp(context: Context, record: OpenRecord): Promise<void> {
  try {
    let revision: string;
    do {
      revision = recordRevision(record);
      const asOf = context.today();
      const learning = await learnInBackground({ life: lifeOf(context, { asOf }), asOf });
      if (context.record !== record) return; // closed, or another opened, meanwhile
      keep(record, learning);
    } while (recordRevision(record) !== revision);
  } catch (thrown) {
    // whoever asks next is told; nobody waits for this
    if (!(thrown instanceof RefusedError || faultOfRecord(context, thrown))) throw thrown;
  } finally {
    stateOf(record).catchingUp = false;
  }
}

/** A record that cannot be written to (read-only, a full disk) is learned again at the next start. */
function keep(record: OpenRecord, learning: Learning): void {
  stateOf(record).learning = learning;
  const { fingerprint, ...learned } = learning;
  try {
    writePlain(record, (w) => keepLearning(w, KEY, fingerprint, learned));
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
  }
}

/** Resolves once the record's classes have caught up with what it holds: for tests and for closing in good order. */
export async function learningSettled(context: Context): Promise<void> {
  const record = recordOf(context) as OpenRecord;
  while (soFar.get(record)?.catchingUp) await new Promise((resolve) => setTimeout(resolve, 20));
}
