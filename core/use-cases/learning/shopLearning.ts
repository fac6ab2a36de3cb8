import { setTimeout as pause, setImmediate } from 'node:timers/promises';
import { RefusedError } from '../../outcome.ts';
import { countRows } from '../../record/aboutStore.ts';
import { entriesRevision, writePlain } from '../../record/entry.ts';
import { fingerprintKept, keepLearning, readLearning } from '../../record/learningStore.ts';
import { loadShopLife } from '../../record/loadShopLife.ts';
import type { OpenRecord, ReadableRecord } from '../../record/recordFile.ts';
import { recordIdOf } from '../../record/recordIdOf.ts';
import type { ShopLife } from '../../shop/shopLife.ts';
import type { Day } from '../../units/day.ts';
import { learnedFrom, MODEL_VERSION, withEveryClass } from '../../way/learning.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import type { ShopHabit } from '../../way/shopHours.ts';
import type { ShopSeries } from '../../way/shopSeries.ts';
import { type Learning, learnClasses, seriesOfShop } from '../../way.ts';
import { type Context, faultOfRecord, keptInMemory, recordOf } from '../context.ts';
import { seriesNow } from '../seriesNow.ts';
import { heardLife, isLarge } from './heardNow.ts';
import { learnInBackground } from './learnInBackground.ts';

/** Names what is kept, its shape included. */
const KEY = 'classes, habit and coverage';
/** By far the most of it, and seldom looked at: kept beside, under the same fingerprint. */
const SCORED = 'sizes scored';
/** Names the state of the record up to which what is kept is known to hold. */
const HOLDS_FOR = 'classes hold for';

/** What each open record has learned so far, what state of it that holds for, and whether it is learning. */
type State = { learning: Learning | null; holdsFor: string | null; catchingUp: boolean; priors?: Learning };
const soFar = new WeakMap<OpenRecord, State>();

/**
 * What the shop has taught, at once. While nothing was entered it is what was kept. Once something has come in it is what
 * was learned before (a machine's own word in it is said afresh by the way), and the classes catch up in the background; the
 * next to ask after that gets what a full learning gives.
 *
 * @param atOnce where nothing was ever learned: what the trade says of the classes, while they are learned in the background
 */
export function shopLearning(context: Context, asOf: Day, atOnce = false): Learning {
  const record = recordOf(context) as OpenRecord;
  const state = stateOf(record);
  // of another day: the answer waits for it
  if (asOf !== context.today())
    return keptInMemory(context, `learned as of ${asOf}`, () =>
      learnClasses(heardSeries(context, asOf), state.learning),
    );
  const now = stateOfRecord(context);
  if (state.learning && state.holdsFor === now) return state.learning;
  if (state.learning === null && !atOnce) {
    keep(record, learnClasses(heardSeries(context, asOf)), now);
    return stateOf(record).learning!;
  }
  startCatchingUp(context, record, state);
  return state.learning ?? priorsOnly(context, state, asOf);
}

/** The series the classes are learned from: of a large shop those of the machines drawn, of another all. */
export const heardSeries = (context: Context, asOf: Day): ShopSeries =>
  isLarge(context) ? seriesOfShop(heardLife(recordOf(context), asOf), asOf) : seriesNow(context, asOf);

/** Changes with every entry, every day and every change of the model: a cheap sign that what was learned may hold no more. */
const stateOfRecord = (context: Context): string =>
  [MODEL_VERSION, context.today(), entriesRevision(recordOf(context))].join(', ');

function startCatchingUp(context: Context, record: OpenRecord, state: State): void {
  if (state.catchingUp) return;
  state.catchingUp = true;
  void catchUp(context, record);
}

/** Names a learning that is none: what the trade says. */
const FROM_PRIORS = 'from priors, ';
export const isFromPriors = ({ fingerprint }: Learning): boolean => fingerprint.startsWith(FROM_PRIORS);

/** What is held of the classes before any reading. */
function priorsOnly(context: Context, state: State, asOf: Day): Learning {
  const name = `${FROM_PRIORS}${stateOfRecord(context)}`;
  if (state.priors?.fingerprint !== name) {
    const shop = isLarge(context)
      ? seriesOfShop(layoutOnly(context, asOf), asOf, usualHabit(context))
      : seriesNow(context, asOf);
    const nothing: Learning = {
      fingerprint: name,
      shop: { classes: [] },
      habit: shop.hours.habit,
      scored: [],
      coverage: [],
      looks: [],
    };
    state.priors = withEveryClass(nothing, shop, settingsOf(shop.life));
  }
  return state.priors;
}

/** A shop's classes and settings without any machine: its limits are then those the trade names. */
const layoutOnly = (context: Context, asOf: Day): ShopLife =>
  loadShopLife(recordOf(context), { asOf, within: { machineIds: [], assemblyIds: [] } });

/** What was learned last, be it of what the record holds now or of what it held before; null: nothing ever was. Begins no learning. */
export const learningSoFar = (context: Context): Learning | null => stateOf(recordOf(context) as OpenRecord).learning;

/** The habit of use the shop was last learned with; null: nothing was ever learned. */
export const habitSoFar = (context: Context): ShopHabit | null => learningSoFar(context)?.habit ?? null;

/** The habit of a shop of which nothing was learned yet. */
export const usualHabit = (context: Context): ShopHabit =>
  keptInMemory(context, 'usual habit', () => {
    const life = layoutOnly(context, context.today());
    return { hoursPerDay: life.hoursPerYearDefault / DAYS_A_YEAR, jobHours: settingsOf(life).useScaleHours };
  });
const DAYS_A_YEAR = 365;

function stateOf(record: OpenRecord): State {
  const known = soFar.get(record);
  if (known) return known;
  const learning = learningKept(record);
  const holdsFor = learning && (readLearning(record, HOLDS_FOR)?.fingerprint ?? null);
  const state = { learning, holdsFor, catchingUp: false };
  soFar.set(record, state);
  return state;
}

/**
 * What was kept cannot be read as it was written, as after damage to the file, or an earlier program kept less of it: then it
 * is learned again.
 */
export function learningKept(record: ReadableRecord): Learning | null {
  const kept = soundly(() => readLearning(record, KEY));
  if (!kept || fingerprintKept(record, SCORED) !== kept.fingerprint) return null;
  return withScored(record, kept.fingerprint, kept.learning as Omit<Learning, 'fingerprint' | 'scored'>);
}

function soundly<T>(read: () => T): T | null {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof SyntaxError) return null;
    throw thrown;
  }
}

/** The sizes scored are read when they are first looked at: nobody waits for them to see the list. */
function withScored(
  record: ReadableRecord,
  fingerprint: string,
  learned: Omit<Learning, 'fingerprint' | 'scored' | 'looks'> & Partial<Pick<Learning, 'looks'>>,
): Learning {
  let scored: Learning['scored'] | null = null;
  return {
    fingerprint,
    looks: [], // an earlier program kept none
    ...learned,
    get scored() {
      scored ??= soundly(() => readLearning(record, SCORED)?.learning as Learning['scored'] | undefined) ?? [];
      return scored;
    },
  };
}

/** What was saved is drawn with both hands free before a large shop is learned again, which takes a processor for seconds [ms]. */
const DRAWN_BY_THEN_MS = 2000;

/**
 * Learns the shop in the background, once more when more has come in meanwhile: one learning at a time, however fast
 * entries follow each other. Where nothing the classes rest on was entered, what is known goes on to hold.
 */
async function catchUp(context: Context, record: OpenRecord): Promise<void> {
  try {
    await setImmediate(); // whoever asked is answered first
    const isAgain = context.record === record && stateOf(record).learning !== null;
    if (isAgain && isLarge(context)) await pause(DRAWN_BY_THEN_MS, undefined, { ref: false });
    for (let now = ''; context.record === record && now !== stateOfRecord(context); ) {
      now = stateOfRecord(context);
      const learning = await learnedNow(context, record);
      if (learning === null || context.record !== record) return; // closed, or another opened, meanwhile
      keep(record, learning, now);
    }
  } catch (thrown) {
    // whoever asks next is told; nobody waits for this
    if (!(thrown instanceof RefusedError || faultOfRecord(context, thrown))) throw thrown;
  } finally {
    stateOf(record).catchingUp = false;
  }
}

/** @returns null: the record was closed before anything was learned */
async function learnedNow(context: Context, record: OpenRecord): Promise<Learning | null> {
  const { learning: known } = stateOf(record);
  const { untilClosed } = record;
  const asOf = context.today();
  if (isLarge(context) && record.path !== ':memory:') {
    const from = { recordPath: record.path, asOf, known: known?.fingerprint ?? null };
    return (await learnInBackground(from, untilClosed)) ?? known;
  }
  const shop = heardSeries(context, asOf);
  if (known && learnedFrom(shop, settingsOf(shop.life)).fingerprint === known.fingerprint) return known;
  return learnInBackground({ life: shop.life, asOf }, untilClosed);
}

/** A record that cannot be written to (read-only, a full disk) is learned again at the next start. */
function keep(record: OpenRecord, learning: Learning, holdsFor: string): void {
  const state = stateOf(record);
  const isNew = state.learning !== learning;
  Object.assign(state, { learning, holdsFor });
  try {
    writePlain(record, (w) => {
      if (isNew) {
        const { fingerprint, scored, ...learned } = learning;
        keepLearning(w, KEY, fingerprint, learned);
        keepLearning(w, SCORED, fingerprint, scored);
      }
      keepLearning(w, HOLDS_FOR, holdsFor, {});
    });
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
  }
}

/** Resolves once the record's classes have caught up with what it holds: for tests and for closing in good order. */
export async function learningSettled(context: Context): Promise<void> {
  const record = recordOf(context) as OpenRecord;
  while (soFar.get(record)?.catchingUp) await new Promise((resolve) => setTimeout(resolve, 20));
}

/** So few sizes are learned from sooner than a thread begins. */
const FEW_SIZES = 300;

/** Resolves once something was learned of a shop of which nothing ever was; of a large one the trade speaks until then. */
export async function learnedOnce(context: Context): Promise<void> {
  const { record } = context;
  if (!record || record.path === ':memory:' || stateOf(record).learning !== null) return;
  if (isLarge(context) || countRows(record).sizes < FEW_SIZES) return;
  startCatchingUp(context, record, stateOf(record));
  const meantFor = recordIdOf(record);
  await learningSettled(context);
  if (recordIdOf(context.record) !== meantFor)
    throw new RefusedError({ code: 'another-record', facts: { file: context.record?.path ?? null } });
}

/** Resolves once the classes have heard all the record holds now; what comes in meanwhile is heard too, three times over. */
export async function learningOfAll(context: Context): Promise<void> {
  for (let turn = 0; turn < 3; turn++) {
    shopLearning(context, context.today());
    if (!soFar.get(recordOf(context) as OpenRecord)?.catchingUp) return;
    await learningSettled(context);
  }
}
