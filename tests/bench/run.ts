import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Answer, ReplyOf } from '#core/contract/operation.ts';
import type { stripDownSheet } from '#core/contract/stripDown.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { places, printTable } from '#tests/accuracy/printTable.ts';
import { BENCH_AS_OF, laySyntheticRecord } from './syntheticRecord.ts';

/**
 * `npm run bench`: how the program stands on records far bigger than any shop's, as ratios measured in this one run.
 * `-- --machines 50,500,5000` names the sizes; a machine has 20 points, 200 sizes and 50 dial readings.
 */
const { values } = parseArgs({ options: { machines: { type: 'string', default: '50,500' } } });
const counts = values.machines.split(',').map(Number);
if (!counts.every((count) => Number.isInteger(count) && count > 0)) {
  console.error('Sizes are whole numbers of machines: npm run bench -- --machines 50,500');
  process.exit(1);
}

const folder = mkdtempSync(join(tmpdir(), 'bench-'));
try {
  const rows = [];
  for (const machines of counts) rows.push(await stand(machines));
  printTable(
    'One core, wall clock; × is times the raw read of the same rows in this run',
    [
      ...['machines', 'points', 'sizes', 'file MB', 'raw read s', 'cold forecast s', '×', 'points a second'],
      ...['warm list s', '×', 'list again s', 'a size saved, p50 ms', 'p95 ms', 'most memory MB'],
    ],
    rows,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function stand(machines: number): Promise<(string | number)[]> {
  const path = join(folder, `${machines}.hoursandwear`);
  laySyntheticRecord(path, { machines });
  const raw = rawRead(path);
  const cold = await seconds(async () => withProgram(path, async ({ ask }) => must(await ask('machines/list', {}))));
  const { warm, again, saves } = await withProgram(path, async ({ ask }) => ({
    warm: await seconds(async () => must(await ask('machines/list', {}))),
    again: await seconds(async () => must(await ask('machines/list', {}))),
    saves: await saveSizes(ask, machines),
  }));
  const points = machines * 20;
  return [
    ...[machines, points, points * 10, places(statSync(path).size / 1e6, 0)],
    ...[places(raw, 2), places(cold, 2), places(cold / raw, 0), places(points / cold, 0)],
    ...[places(warm, 2), places(warm / raw, 1), places(again, 2)],
    ...[places(quantile(saves, 0.5) * 1000, 0), places(quantile(saves, 0.95) * 1000, 0)],
    places(process.memoryUsage.rss() / 1e6, 0),
  ];
}

/** Reads every row a forecast rests on, and does nothing with it [s]. */
function rawRead(path: string): number {
  const record = openRecord(path);
  const from = performance.now();
  let rows = 0;
  for (const table of [
    'machines',
    'dial_readings',
    'measuring_points',
    'point_limits',
    'strip_downs',
    'sizes',
    'renewals',
  ])
    rows += record.sqlite.prepare(`SELECT * FROM ${table}`).raw().all().length;
  const taken = (performance.now() - from) / 1000;
  record.close();
  if (rows === 0) throw new Error('Broken invariant: the record has rows');
  return taken;
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
    taken.push(await seconds(async () => must(await ask('stripDown/save', save))));
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

async function seconds(run: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await run();
  return (performance.now() - from) / 1000;
}

function must(answer: Answer): unknown {
  if (!answer.ok) throw new Error(`Broken invariant: the bench is answered (${JSON.stringify(answer.fault)})`);
  return answer.value;
}

function quantile(all: readonly number[], share: number): number {
  return [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(share * all.length))] ?? 0;
}
