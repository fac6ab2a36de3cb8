import { Worker } from 'node:worker_threads';
import { afterEach, expect, test, vi } from 'vitest';
import { listMachines } from '#core/record/machineStore.ts';
import { pointsOfAssemblies } from '#core/record/pointStore.ts';
import { type Context, lifeOf, recordOf } from '#core/use-cases/context.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { machinesListHandler } from '#core/use-cases/machinesList.ts';
import { shopNow } from '#core/use-cases/shopNow.ts';
import { stripDownSaveHandler } from '#core/use-cases/stripDownSave.ts';
import { forecastShop } from '#core/way.ts';
import { aLoaderShop, LOADER_DAY } from '#tests/support/aLoaderShop.ts';

let context: Context;
afterEach(() => context.close());

const idOf = (name: string) => listMachines(recordOf(context)).find((machine) => machine.name === name)!.id;
const pointsOf = (name: string) => shopNow(context).ofMachine(idOf(name)).points;

/** A size of the other loader's pin: much worn, so that the class moves. */
async function saveSize(): Promise<void> {
  const point = pointsOfAssemblies(recordOf(context), null).find(({ id }) => id === pointsOf('Vessel 96')[0]!.pointId)!;
  await stripDownSaveHandler(context, {
    machineId: idOf('Vessel 96'),
    takenOn: LOADER_DAY,
    dialHours: null,
    fitter: 'J. Orrin',
    note: '',
    sizes: [
      { pointId: point.id, station: '', event: 'as-found', sizeMm: 38.7, gaugeId: null, answer: 'right-as-read' },
    ],
    renewals: [],
    shims: [],
    findings: [],
    dialSure: true,
    anotherSure: false,
  });
}

test('after a size its machine is forecast anew at once, and the classes catch up to what a full learning gives', async () => {
  context = aLoaderShop();
  const [pinBefore] = pointsOf('Vessel 96');
  const othersBefore = pointsOf('Vessel 118');
  await saveSize();

  expect(pointsOf('Vessel 96')[0]!.pastLimitMm).toBeCloseTo(0.3, 6);
  expect(pinBefore!.pastLimitMm).toBeNull();
  // no other machine has been looked at: its figures stand until the class has been learned again
  expect(pointsOf('Vessel 118')).toEqual(othersBefore);

  await learningSettled(context);
  const afresh = forecastShop(lifeOf(context, { asOf: LOADER_DAY }), LOADER_DAY);
  for (const { machineId, points } of afresh.machines)
    expect(shopNow(context).ofMachine(machineId).points).toEqual(points);
  expect(pointsOf('Vessel 118')).not.toEqual(othersBefore);
});

test('what was learned stands until a size comes in', async () => {
  context = aLoaderShop();
  const { learning } = shopNow(context);
  expect(shopNow(context).learning).toBe(learning);
  await saveSize();
  pointsOf('Vessel 118');
  await learningSettled(context);
  expect(shopNow(context).learning.fingerprint).not.toBe(learning.fingerprint);
});

test('where nothing was learned yet the list is there at once, from what the trade says, and settles once it is', async () => {
  context = aLoaderShop();
  const first = await machinesListHandler(context, { atOnce: true });
  expect(first.learning).toBe(true);
  expect(first.machines.every((line) => line.first !== null)).toBe(true);
  await learningSettled(context);
  const settled = await machinesListHandler(context, { atOnce: true });
  expect(settled.learning).toBe(false);
  expect(settled).toEqual(await machinesListHandler(context, { atOnce: false }));
  expect(settled.machines.map((line) => line.first?.hoursLeft)).not.toEqual(
    first.machines.map((line) => line.first?.hoursLeft),
  );
});

test('whoever does not ask for that waits for what a full learning gives', async () => {
  context = aLoaderShop();
  await machinesListHandler(context, { atOnce: true });
  const waited = await machinesListHandler(context, { atOnce: false });
  expect(waited.learning).toBe(false);
  await learningSettled(context);
  expect(await machinesListHandler(context, { atOnce: false })).toEqual(waited);
});

test('a record that is closed while it is learned from holds no processor: its thread is ended', async () => {
  const told = vi.spyOn(Worker.prototype, 'postMessage');
  const ended = vi.spyOn(Worker.prototype, 'terminate');
  try {
    context = aLoaderShop();
    await machinesListHandler(context, { atOnce: true });
    await vi.waitFor(() => expect(told).toHaveBeenCalledOnce());
    context.close();
    expect(ended.mock.contexts).toEqual(told.mock.contexts);
  } finally {
    vi.restoreAllMocks();
  }
});
