import { setTimeout as pause } from 'node:timers/promises';
import type { Answer, ReplyOf } from '#core/contract/operation.ts';
import type { stripDownSheet } from '#core/contract/stripDown.ts';
import { openRecord } from '#core/record/openRecord.ts';
import type { OpenRecord } from '#core/record/recordFile.ts';
import { openProgram } from '#core/shells/openProgram.ts';
import { openContext } from '#core/use-cases/context.ts';
import { forecastShopOf } from '#core/use-cases/jobs/forecasting.ts';
import { learningSettled, shopLearning } from '#core/use-cases/learning/shopLearning.ts';
import { peakMegabytes, quantile, taken } from './measure.ts';
import { BENCH_AS_OF } from './syntheticRecord.ts';

/** One step of the bench in a process of its own: node tests/bench/coreStep.ts STEP RECORD. Prints what it took as JSON. */
export type CoreSteps = {
  /** every row forecasts rest on, read and let go [s] */
  raw: { forecastRows: number };
  /** every kept row with the names that stand in the list, read and let go by a program just started, as `warm` finds them; once more [s] */
  rawKept: { opened: number; again: number };
  /** classes learned, as the program does in its thread, and kept [s] */
  learn: { cpuSeconds: number; peakMb: number };
  /** every machine forecast and kept, as the job does in its thread [s] */
  forecast: { cpuSeconds: number; peakMb: number };
  /** the list of a program just started: its order and its first lines; every line of it in one reply [s] */
  warm: { opened: number; again: number; wholeList: number; peakMb: number };
  /** one new size each on up to 200 machines, of a few machines on one after another of their points, each once its classes have heard the one before, judged and kept as typed by then: on the disk, and its machine forecast again; the first of them, most code new to it [ms of the program's own thread] */
  save: { p50: number; p95: number; first: number; peakMb: number };
};

const FORECAST_ROWS = [
  'machines',
  'dial_readings',
  'measuring_points',
  'point_limits',
  'strip_downs',
  'sizes',
  'renewals',
];
const KEPT_ROWS = ['machine_forecasts', 'machines', 'customers', 'ownerships'];
const MOST_SAVES = 200;
const FEWEST_SAVES = 5;
const SEEN_AT_ONCE = 40;
/** Nobody presses the key that saves sooner after the last figure typed. */
const HANDS_REST_MS = 500;

const steps: { [Step in keyof CoreSteps]: (path: string) => Promise<CoreSteps[Step]> } = {
  raw: async (path) => {
    const record = openRecord(path);
    return { forecastRows: await rawRead(record, FORECAST_ROWS) };
  },
  rawKept: async (path) => {
    const record = openRecord(path);
    return { opened: await rawRead(record, KEPT_ROWS), again: await rawRead(record, KEPT_ROWS) };
  },
  learn: async (path) => {
    const { cpuSeconds } = await taken(async () => {
      const context = openContext({ recordPath: path, asOf: BENCH_AS_OF });
      shopLearning(context, context.today(), true);
      await learningSettled(context);
      context.close();
    });
    return { cpuSeconds, peakMb: peakMegabytes() };
  },
  forecast: async (path) => {
    const { cpuSeconds } = await taken(() => forecastShopOf(path, BENCH_AS_OF, () => undefined));
    return { cpuSeconds, peakMb: peakMegabytes() };
  },
  warm: async (path) => {
    const program = await openProgram({
      recordPath: path,
      asOf: BENCH_AS_OF,
      log: ({ error }) => console.error(error),
    });
    const open = async () => {
      const { groups } = must(await program.ask('machines/order', { atOnce: true })) as {
        groups: { machineIds: number[] }[];
      };
      const machineIds = groups.flatMap((group) => group.machineIds).slice(0, SEEN_AT_ONCE);
      must(await program.ask('machines/lines', { machineIds }));
    };
    const opened = await taken(open);
    const again = await taken(open);
    const whole = await taken(async () => must(await program.ask('machines/list', { atOnce: true })));
    await program.close();
    return {
      ...{ opened: opened.cpuSeconds, again: again.cpuSeconds, wholeList: whole.cpuSeconds, peakMb: peakMegabytes() },
    };
  },
  save: async (path) => {
    const program = await openProgram({
      recordPath: path,
      asOf: BENCH_AS_OF,
      log: ({ error }) => console.error(error),
    });
    const { groups } = must(await program.ask('machines/order', { atOnce: true })) as {
      groups: { machineIds: number[] }[];
    };
    const machineIds = groups.flatMap((group) => group.machineIds).slice(0, MOST_SAVES);
    const rounds = Math.ceil(FEWEST_SAVES / machineIds.length);
    const turns = Array.from({ length: rounds }, (_, row) =>
      machineIds.map((machineId) => ({ machineId, row })),
    ).flat();
    const ms: number[] = [];
    for (const { machineId, row } of turns) {
      // of a few machines each is saved once its classes have heard the one before
      while (
        rounds > 1 &&
        (must(await program.ask('machines/list', { atOnce: true })) as { learning: boolean }).learning
      )
        await pause(HANDS_REST_MS);
      const sheet = must(await program.ask('stripDown/sheet', { machineId })) as ReplyOf<typeof stripDownSheet>;
      const save = oneSize(sheet, machineId, row);
      // as the window asks while it is typed: what is odd about it, and that it be kept
      must(await program.ask('stripDown/judge', save));
      must(await program.ask('stripDown/keep', { ...save, typedSince: null }));
      if (ms.length === 0) await pause(HANDS_REST_MS);
      const from = process.threadCpuUsage(); // the classes learn again in another thread
      must(await program.ask('stripDown/save', save));
      const { user, system } = process.threadCpuUsage(from);
      ms.push((user + system) / 1e3);
    }
    await program.close();
    return { p50: quantile(ms, 0.5), p95: quantile(ms, 0.95), first: ms[0]!, peakMb: peakMegabytes() };
  },
};

const [step = '', path = ''] = process.argv.slice(2);
const run = steps[step as keyof CoreSteps];
console.log(JSON.stringify(await run(path)));
process.exit(0);

/** Reads whole tables, and does nothing with them [s]. */
async function rawRead(record: OpenRecord, tables: readonly string[]): Promise<number> {
  const { cpuSeconds, value } = await taken(() =>
    tables.reduce((rows, table) => rows + record.sqlite.prepare(`SELECT * FROM ${table}`).raw().all().length, 0),
  );
  if (value === 0) throw new Error('Broken invariant: the record has rows');
  return cpuSeconds;
}

function oneSize({ rows }: ReplyOf<typeof stripDownSheet>, machineId: number, at: number) {
  const row = rows[at]!;
  const sizeMm = row.stations[0]?.lastSizeMm ?? row.limits.newSizeMm;
  const size = { pointId: row.pointId, station: '', event: 'as-found', gaugeId: null, answer: null, sizeMm };
  return {
    ...{ machineId, takenOn: BENCH_AS_OF, dialHours: null, dialSure: true, fitter: 'bench', note: '' },
    ...{ sizes: [size], renewals: [], findings: [] },
  };
}

function must(answer: Answer): unknown {
  if (!answer.ok) throw new Error(`Broken invariant: the bench is answered (${JSON.stringify(answer.fault)})`);
  return answer.value;
}
