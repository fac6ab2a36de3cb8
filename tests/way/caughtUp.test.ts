import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { PointForecast } from '#core/contract/forecast.ts';
import { machineRead } from '#core/contract/machine.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { haveHeard } from '#core/fit/machineLaws.ts';
import { lifeOf } from '#core/use-cases/context.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { shopNow } from '#core/use-cases/shopNow.ts';
import { settingsOf } from '#core/way/settingsOf.ts';
import { forecastShop, lawsOfMachine } from '#core/way.ts';
import { BENCH_AS_OF, laySyntheticRecord } from '#tests/bench/syntheticRecord.ts';
import { aProgramAt, type Program } from '#tests/support/aProgram.ts';

/** One class: 30 parts in work and those before them, three to a machine. */
const SHOP = { machines: 10, points: 3, visits: 3, sorts: 1 };
const MEASURED = 4;

let folder = '';
let program: Program;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'caught-up-'));
  const recordPath = join(folder, 'shop.hoursandwear');
  laySyntheticRecord(recordPath, SHOP);
  program = aProgramAt(recordPath, BENCH_AS_OF);
});
afterEach(() => {
  program.end();
  rmSync(folder, { recursive: true });
});

const pointsOf = (machineId: number) => shopNow(program.context).ofMachine(machineId).points;

function waitsToBeHeard(machineId: number): boolean {
  const { shop, learning } = shopNow(program.context);
  const settings = settingsOf(shop.life);
  return lawsOfMachine(shop, machineId, learning).parts.some((its) => !haveHeard(learning.shop, its, settings));
}

const machineIds = Array.from({ length: SHOP.machines }, (_, place) => place + 1);

/** How far hours left are from those of a full learning, as a share of the hours at limit; where either has none, nothing. */
function farthest(points: readonly PointForecast[], full: readonly PointForecast[]): number {
  const shares = points.flatMap((point, place) =>
    (['low', 'middle', 'high'] as const).flatMap((key) => {
      const [here, there] = [point.machineHoursAtLimit[key], full[place]!.machineHoursAtLimit[key]];
      return here === null || there === null ? [] : [Math.abs(here / there - 1)];
    }),
  );
  return Math.max(...shares);
}

test('one new size in a class of 30 parts: its machine at once, and after the class has caught up all that a full learning gives', async () => {
  const before = new Map(machineIds.map((machineId) => [machineId, pointsOf(machineId)]));
  const { points } = await program.ask(machineRead, { machineId: MEASURED });
  const [worn] = points;
  const sizeMm = worn!.visits.at(-1)!.governingSizeMm! - 0.5;
  const { moved } = await program.ask(stripDownSave, {
    ...{
      machineId: MEASURED,
      takenOn: BENCH_AS_OF,
      dialHours: null,
      fitter: 'Bo',
      note: '',
      renewals: [],
      findings: [],
    },
    sizes: [{ pointId: worn!.pointId, station: '', event: 'as-found', sizeMm, gaugeId: null, answer: 'right-as-read' }],
    dialSure: true,
  });
  const atOnce = pointsOf(MEASURED);
  expect(machineIds.filter(waitsToBeHeard)).toEqual([MEASURED]);
  // what the save says of it is what its page said before, and says now
  expect(moved.length).toBeGreaterThan(0);
  for (const one of moved) {
    const hoursLeft = (points: readonly PointForecast[]) =>
      points.find(({ pointId }) => pointId === one.pointId)!.hoursLeft;
    expect(one.before).toEqual(hoursLeft(before.get(MEASURED)!));
    expect(one.after).toEqual(hoursLeft(atOnce));
  }
  const full = new Map(
    forecastShop(lifeOf(program.context, { asOf: BENCH_AS_OF }), BENCH_AS_OF).machines.map((one) => [
      one.machineId,
      one.points,
    ]),
  );
  // at once by what the class knew before it: near what all is learned anew would give, and nobody else is looked at
  expect(farthest(before.get(MEASURED)!, full.get(MEASURED)!)).toBeGreaterThan(0.3);
  expect(farthest(atOnce, full.get(MEASURED)!)).toBeLessThan(0.03);
  const others = machineIds.filter((machineId) => machineId !== MEASURED);
  for (const machineId of others) {
    expect(pointsOf(machineId)).toEqual(before.get(machineId));
    expect(farthest(pointsOf(machineId), full.get(machineId)!)).toBeLessThan(0.05);
  }

  // a class catches up by being learned from the beginning: the same to the last digit
  await learningSettled(program.context);
  for (const machineId of machineIds) expect(pointsOf(machineId)).toEqual(full.get(machineId));
  // and then nobody is gone by at fewer figures
  expect(machineIds.filter(waitsToBeHeard)).toEqual([]);
  expect(pointsOf(others[0]!)).not.toEqual(before.get(others[0]!));
});
