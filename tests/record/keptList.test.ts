import { afterEach, describe, expect, test } from 'vitest';
import { customerChange } from '#core/contract/customer.ts';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { hoursAdd } from '#core/contract/hours.ts';
import { machinesList, machinesOrder } from '#core/contract/machine.ts';
import type { AskOf, Operation, ReplyOf } from '#core/contract/operation.ts';
import { classesList } from '#core/contract/partClass.ts';
import { recallNews, recallRead } from '#core/contract/recall.ts';
import { tablesOnRecord } from '#core/record/allRows.ts';
import { boundMachines } from '#core/record/boundMachines.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { touchesForecasts } from '#core/record/machineForecastStore.ts';
import { doorOf } from '#core/shells/openProgram.ts';
import { type Context, lifeOf, recordOf } from '#core/use-cases/context.ts';
import { learningSettled, shopLearning } from '#core/use-cases/learning/shopLearning.ts';
import { shopAround } from '#core/use-cases/shopNow.ts';
import { lifeOfMachines } from '#core/way/heardMachines.ts';
import { forecastsOfMachine, seriesOfShop } from '#core/way.ts';
import { aLearnedLoaderShop, aLoaderShop, HOOK_CRACKED, LOADER_DAY } from '#tests/support/aLoaderShop.ts';

let context: Context;
afterEach(() => context.close());

async function ask<O extends Operation>(operation: O, request: AskOf<O>): Promise<ReplyOf<O>> {
  const answer = await doorOf(context, ({ error }) => console.error(error))(operation.name, request);
  if (!answer.ok) throw new Error(JSON.stringify(answer.fault));
  return answer.value as ReplyOf<O>;
}

const kept = (): [machineId: number, stale: number][] =>
  recordOf(context).sqlite.prepare('SELECT machine_id, stale FROM machine_forecasts ORDER BY 1').raw().all() as never;
const stale = (): number[] => kept().flatMap(([machineId, isStale]) => (isStale === 1 ? [machineId] : []));

/** Forecast anew from the whole shop, nothing kept. */
function afresh(machineId: number) {
  const learning = shopLearning(context, LOADER_DAY);
  const shop = seriesOfShop(lifeOf(context, { asOf: LOADER_DAY }), LOADER_DAY, learning.habit);
  return forecastsOfMachine(shop, machineId, learning).points;
}

/** Turns others had while it was asked. */
async function turnsWhileAsked(operation: Operation, request: object): Promise<number> {
  let turns = 0;
  let answered = false;
  const another = (): void => {
    turns++;
    if (!answered) setImmediate(another);
  };
  setImmediate(another);
  await ask<Operation>(operation, request).finally(() => {
    answered = true;
  });
  return turns;
}

const readDial = { kind: 'reading', newDialHours: null, errorHours: null, saidBy: 'J. Orrin', sure: true } as const;

describe('what was last forecast of each machine', () => {
  test.each([classesList, machinesOrder, recallRead, recallNews])(
    '$name of a shop that has yet to be forecast holds nobody up: others have their turn between any two machines',
    async (operation) => {
      context = aLearnedLoaderShop(HOOK_CRACKED);
      shopLearning(context, LOADER_DAY);
      const turns = await turnsWhileAsked(operation, {});
      const machines = (await ask(machinesList, {})).machines.length;
      expect(machines).toBeGreaterThan(1);
      expect(turns).toBeGreaterThanOrEqual(machines);
    },
  );

  test('nor does one never learned from, forecast from what the trade says', async () => {
    context = aLoaderShop(HOOK_CRACKED);
    const turns = await turnsWhileAsked(machinesOrder, { atOnce: true });
    const { fromPriors, count } = await ask(machinesOrder, { atOnce: true });
    expect(fromPriors).toBe(true);
    expect(count).toBeGreaterThan(1);
    expect(turns).toBeGreaterThanOrEqual(count);
  });

  test('is kept with the first list, and the next list is what was kept', async () => {
    context = aLearnedLoaderShop(HOOK_CRACKED);
    const first = await ask(machinesList, {});
    expect(kept()).toEqual([
      [1, 0],
      [2, 0],
    ]);
    recordOf(context).sqlite.exec(`UPDATE machine_forecasts SET line = json_set(line, '$.planWinter', 'as kept')`);
    const next = await ask(machinesList, {});
    expect(next.machines.map(({ planWinter }) => planWinter)).toEqual(['as kept', 'as kept']);
    expect(next.machines.map(({ planWinter: _, ...line }) => line)).toEqual(
      first.machines.map(({ planWinter: _, ...line }) => line),
    );
  });

  test('is stale once something is entered for the machine, and only for it; undone, once more', async () => {
    context = aLearnedLoaderShop();
    await ask(machinesList, {});
    await ask(hoursAdd, { machineId: 2, takenOn: LOADER_DAY, dialHours: 5300, ...readDial });
    expect(stale()).toEqual([2]);
    await learningSettled(context);
    const list = await ask(machinesList, {});
    expect(stale()).toEqual([]);
    const [soonest] = [...afresh(2)].sort((a, b) => (a.decidingHoursLeft ?? 1e9) - (b.decidingHoursLeft ?? 1e9));
    expect(list.machines.find(({ machineId }) => machineId === 2)?.first?.hoursLeft).toEqual(soonest?.hoursLeft);
    const { entries } = await ask(entriesList, { beforeEntryId: null, limit: 5 });
    await ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'J. Orrin' });
    expect(stale()).toEqual([2]);
  });

  test('stands when a customer is called otherwise; the list says the new name', async () => {
    context = aLearnedLoaderShop();
    await ask(machinesList, {});
    await ask(customerChange, {
      ...{ customerId: 1, name: 'Hollin Top Farm', place: '', address: '', phone: '', email: '', by: '' },
    });
    expect(stale()).toEqual([]);
    const list = await ask(machinesList, {});
    expect(list.machines.map(({ customer }) => customer)).toContain('Hollin Top Farm');
  });

  test('is all stale when another program wrote to the record without marking what it touched', async () => {
    context = aLearnedLoaderShop();
    await ask(machinesList, {});
    recordOf(context).sqlite.exec(
      `INSERT INTO entries (made_at, made_by, what) VALUES ('2026-11-09T09:00:00.000Z', '', 'other')`,
    );
    recordOf(context).sqlite.exec(`UPDATE machine_forecasts SET line = json_set(line, '$.planWinter', 'as kept')`);
    const list = await ask(machinesList, {});
    expect(list.machines.map(({ planWinter }) => planWinter)).not.toContain('as kept');
  });
});

/** Rows of these belong to entries and move no forecast: names, photos, the workshop's own business. */
const MOVES_NONE = [
  'assemblies',
  'contact_terms',
  'contacts',
  'customer_away',
  'customer_details',
  'customer_erasures',
  'customer_merges',
  'finding_photos',
  'import_remarks',
  'kept_forecasts',
  'part_classes',
  'plan_settings',
  'plan_visits',
  'plan_weeks',
  'plans',
  'quiet_periods',
  'rebuild_lines',
  'rebuild_photos',
  'rebuild_steps',
  'rebuilds',
  'recall_settings',
  'repair_choices',
  'repair_facts',
  'repair_figures',
  'shop_rates',
  'slide_facts',
];

test('every table whose rows belong to entries is known to move forecasts, or not to', () => {
  context = aLearnedLoaderShop();
  const feeding = tablesOnRecord(recordOf(context)).filter(({ columns }) =>
    columns.some(({ name }) => name === 'entry_id'),
  );
  const unknown = feeding
    .map(({ name }) => name)
    .filter((name) => !touchesForecasts(name) && !MOVES_NONE.includes(name));
  expect(unknown, 'say in machineForecastStore.ts whose forecasts its rows move, or name it here').toEqual([]);
});

test('a machine read by itself is forecast as within the whole shop, to the bit', () => {
  context = aLearnedLoaderShop(HOOK_CRACKED);
  const record = recordOf(context);
  shopLearning(context, LOADER_DAY);
  for (const machineId of [1, 2]) {
    const within = boundMachines(record, [machineId]);
    const own = loadShopLife(record, { asOf: LOADER_DAY, within });
    expect(own).toEqual(lifeOfMachines(loadShopLife(record, { asOf: LOADER_DAY }), [machineId]));
    expect(shopAround(context, machineId).ofMachine(machineId).points).toEqual(afresh(machineId));
  }
});
