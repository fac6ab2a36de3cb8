import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Answer, ReplyOf } from '#core/contract/operation.ts';
import type { stripDownSheet } from '#core/contract/stripDown.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { openContext } from '#core/use-cases/context.ts';
import { learningSettled, shopLearning } from '#core/use-cases/learning/shopLearning.ts';
import { allParts } from '#core/way/shopSeries.ts';
import { seriesOfShop } from '#core/way.ts';
import { places, printTable } from '#tests/accuracy/printTable.ts';
import { BENCH_AS_OF, laySyntheticRecord } from './syntheticRecord.ts';

/**
 * `npm run bench`: how the program stands on records far bigger than any shop's, as ratios measured in this one run.
 * `-- --machines 50,500,5000` names the sizes; a machine has 20 points, 200 sizes and 50 dial readings. Times are those of
 * the processor, threads included, so that what else the computer does counts for less; `-- --mixed-model` also times R's
 * lme4 on the same parts, where R is installed.
 */
const { values } = parseArgs({
  options: { machines: { type: 'string', default: '50,500' }, 'mixed-model': { type: 'boolean', default: false } },
});
const counts = values.machines.split(',').map(Number);
if (!counts.every((count) => Number.isInteger(count) && count > 0)) {
  console.error('Sizes are whole numbers of machines: npm run bench -- --machines 50,500');
  process.exit(1);
}

const FORECAST_ROWS = [
  ...['machines', 'dial_readings', 'measuring_points', 'point_limits', 'strip_downs', 'sizes', 'renewals'].map(
    (table) => `SELECT * FROM ${table}`,
  ),
];
const KEPT_ROWS = 'SELECT machine_id, line FROM machine_forecasts';

const folder = mkdtempSync(join(tmpdir(), 'bench-'));
try {
  const rows = [];
  for (const machines of counts) rows.push(await stand(machines));
  printTable(
    `Processor seconds, ${cpus()[0]?.model ?? 'unknown processor'}; × is times the raw read of the same rows in this run`,
    [
      ...['machines', 'points', 'file MB', 'raw read s', 'learned s', 'forecast s', '×', 'points a second'],
      ...['kept rows read s', 'kept list s', '×', 'save p50 ms', 'p95 ms', 'lme4 s', 'most memory MB'],
    ],
    rows,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function stand(machines: number): Promise<(string | number)[]> {
  const path = join(folder, `${machines}.hoursandwear`);
  laySyntheticRecord(path, { machines });
  const raw = rawRead(path, FORECAST_ROWS);
  const learned = await seconds(() => learnedWhole(path));
  const cold = await seconds(() => withProgram(path, async ({ ask }) => must(await ask('machines/list', {}))));
  const keptRaw = rawRead(path, [KEPT_ROWS]);
  const { kept, saves } = await withProgram(path, async ({ ask }) => ({
    kept: await seconds(async () => must(await ask('machines/list', { atOnce: true }))),
    saves: await saveSizes(ask, machines),
  }));
  const points = machines * 20;
  return [
    ...[machines, points, places(statSync(path).size / 1e6, 0), places(raw, 2), places(learned, 1), places(cold, 1)],
    ...[places((learned + cold) / raw, 0), places(points / (learned + cold), 0)],
    ...[places(keptRaw, 3), places(kept, 3), places(kept / keptRaw, 1)],
    ...[places(quantile(saves, 0.5) * 1000, 0), places(quantile(saves, 0.95) * 1000, 0)],
    values['mixed-model'] ? mixedModel(path) : '-',
    places(process.resourceUsage().maxRSS / 1e3, 0),
  ];
}

/** Learns the classes as the program does beside its work, and keeps them. */
async function learnedWhole(path: string): Promise<void> {
  const context = openContext({ recordPath: path, asOf: BENCH_AS_OF });
  shopLearning(context, context.today(), true);
  await learningSettled(context);
  context.close();
}

/** Reads rows, and does nothing with them [s]. */
function rawRead(path: string, queries: readonly string[]): number {
  const record = openRecord(path);
  const from = process.cpuUsage();
  let rows = 0;
  for (const sql of queries) rows += record.sqlite.prepare(sql).raw().all().length;
  const taken = cpuSeconds(from);
  record.close();
  if (rows === 0) throw new Error('Broken invariant: the record has rows');
  return taken;
}

/** R's lme4 on the first class of the record: wear by hours, rates scattered by machine and by part [s]. A word where it is absent. */
function mixedModel(path: string): string {
  const record = openRecord(path);
  const life = loadShopLife(record, { asOf: BENCH_AS_OF });
  record.close();
  const rows = allParts(seriesOfShop(life, BENCH_AS_OF))
    .filter(({ partClass }) => partClass === 'bench pin')
    .flatMap(({ machineId, pointId, ordinal, readings }) =>
      readings.map(({ workedHours, wearMm }) => `${machineId},${pointId}-${ordinal},${workedHours / 1000},${wearMm}`),
    );
  const file = join(folder, 'parts.csv');
  writeFileSync(file, ['machine,part,hours,wear', ...rows].join('\n'));
  const script = `suppressMessages(library(lme4)); d <- read.csv("${file}")
    t <- system.time(lmer(wear ~ 0 + hours + (0 + hours | machine) + (0 + hours | part), d, control = lmerControl(calc.derivs = FALSE)))
    cat(t[["user.self"]] + t[["sys.self"]])`;
  const run = spawnSync('Rscript', ['-e', script], { encoding: 'utf8' });
  return run.status === 0 ? `${places(Number(run.stdout), 1)} (1 class)` : 'no R';
}

/** One new size on each of up to 40 machines: until it is on the disk and its machine's points are forecast again [s]. */
async function saveSizes(ask: OpenProgram['ask'], machines: number): Promise<number[]> {
  const taken: number[] = [];
  for (let machineId = 1; machineId <= Math.min(machines, 40); machineId++) {
    const sheet = must(await ask('stripDown/sheet', { machineId })) as ReplyOf<typeof stripDownSheet>;
    const row = sheet.rows[0]!;
    const size = { pointId: row.pointId, station: '', event: 'as-found', gaugeId: null, answer: null };
    const sizeMm = row.stations[0]?.lastSizeMm ?? row.limits.newSizeMm;
    const save = {
      ...{ machineId, takenOn: BENCH_AS_OF, dialHours: null, dialSure: true, fitter: 'bench', note: '' },
      ...{ sizes: [{ ...size, sizeMm }], renewals: [], findings: [] },
    };
    const from = process.threadCpuUsage(); // the classes learn again in another thread
    must(await ask('stripDown/save', save));
    const { user, system } = process.threadCpuUsage(from);
    taken.push((user + system) / 1e6);
  }
  return taken;
}

async function withProgram<T>(recordPath: string, use: (program: OpenProgram) => Promise<T>): Promise<T> {
  const program = await openProgram({ recordPath, asOf: BENCH_AS_OF, log: ({ error }) => console.error(error) });
  try {
    return await use(program);
  } finally {
    await program.close();
  }
}

/** Processor seconds of a run, all threads. */
async function seconds(run: () => Promise<unknown>): Promise<number> {
  const from = process.cpuUsage();
  await run();
  return cpuSeconds(from);
}

function cpuSeconds(from: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6;
}

function must(answer: Answer): unknown {
  if (!answer.ok) throw new Error(`Broken invariant: the bench is answered (${JSON.stringify(answer.fault)})`);
  return answer.value;
}

function quantile(all: readonly number[], share: number): number {
  return [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(share * all.length))] ?? 0;
}
