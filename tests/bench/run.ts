import { copyFileSync, existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { places, printTable } from '#tests/accuracy/printTable.ts';
import { BENCH_FOLDER, buildBench } from './build.ts';
import type { CoreSteps } from './coreStep.ts';
import { coldSeconds, POINTS_A_MACHINE, putInReadme, readmeTable, type Stood } from './forReadme.ts';
import { AS_PROGRAM, inOwnProcess, quantile } from './measure.ts';
import { laySyntheticRecord } from './syntheticRecord.ts';
import { type InWindow, inWindow } from './windowStep.ts';

/**
 * `npm run bench`: how the program stands on records far bigger than any shop's, as ratios measured in this one run, and
 * how that grows. `-- --machines 50,500,5000` names the sizes; a machine has 20 points, 200 sizes and 50 dial readings.
 * Seconds are those of the processor, so that what else the computer does counts for less; what is seen in a browser goes by the clock.
 * `--no-window` and `--no-mixed-model` leave those out; `--readme` puts the table of the largest into the README.
 */
const { values } = parseArgs({
  options: {
    machines: { type: 'string', default: '50,500' },
    'no-window': { type: 'boolean', default: false },
    'no-mixed-model': { type: 'boolean', default: false },
    readme: { type: 'boolean', default: false },
  },
});
const counts = values.machines.split(',').map(Number);
if (!counts.every((count) => Number.isInteger(count) && count > 0)) {
  console.error('Sizes are whole numbers of machines: npm run bench -- --machines 50,500');
  process.exit(1);
}
const page = join(import.meta.dirname, '../../.build/renderer/index.html');
if (!values['no-window'] && !existsSync(page)) {
  console.error('There is no built window to look at: npm run -s build first, or npm run bench -- --no-window');
  process.exit(1);
}

const seconds = (value: number | string): string => (typeof value === 'number' ? places(value, 2) : value);
const times = (value: number, of: number): string => `${places(value / of, 1)} ×`;
const pointsOf = ({ machines }: Stood): number => machines * POINTS_A_MACHINE;

/** Programs started for what only a start shows. */
const STARTS = 5;
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
try {
  await buildBench();
  const rows: Stood[] = [];
  for (const machines of counts) rows.push(await stood(machines));
  console.log(`\n${cpus().length} × ${cpus()[0]?.model ?? 'a processor of no name'}, Node ${process.version}`);
  printForecast(rows);
  printWarm(rows);
  printWindow(rows);
  printGrowth(rows);
  const table = readmeTable(rows);
  console.log(`\n${table.join('\n')}`);
  if (values.readme) putInReadme(join(import.meta.dirname, '../../README.md'), table);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function stood(machines: number): Promise<Stood> {
  const path = join(folder, `${machines}.hoursandwear`);
  laySyntheticRecord(path, { machines });
  const megabytes = statSync(path).size / 1e6;
  const step = <Step extends keyof CoreSteps>(name: Step) =>
    inOwnProcess<CoreSteps[Step]>(AS_PROGRAM, join(BENCH_FOLDER, 'coreStep.js'), name, path);
  const look = async (saves: boolean, at = path) => (values['no-window'] ? null : await inWindow(at, saves));
  // a record of its own: what a window learned of a small shop would be left for the step that learns it
  const neverLearned = join(folder, `${machines}-new.hoursandwear`);
  copyFileSync(path, neverLearned);
  const cold = await look(false, neverLearned);
  rmSync(neverLearned);
  const learn = await step('learn');
  const forecast = await step('forecast');
  const raw = await step('raw');
  const [rawKept, warm] = await bothStarted(step);
  const windows = [cold, await middleOf(look)];
  const save = await step('save');
  const mixedModel = values['no-mixed-model']
    ? 'left out'
    : await inOwnProcess<number | string>([], join(import.meta.dirname, 'mixedModel.ts'), path);
  const row = { machines, megabytes, raw, rawKept, learn, forecast, warm, save, windows, mixedModel };
  console.error(JSON.stringify(row)); // as far as it is: a big run takes long
  return row;
}

/** The list and the raw read beside it, each in processes just started, turn about: the middle of their turns. */
async function bothStarted(
  step: <Step extends 'rawKept' | 'warm'>(name: Step) => Promise<CoreSteps[Step]>,
): Promise<[CoreSteps['rawKept'], CoreSteps['warm']]> {
  const turns: [CoreSteps['rawKept'], CoreSteps['warm']][] = [];
  for (let turn = 0; turn < STARTS; turn++) turns.push([await step('rawKept'), await step('warm')]);
  const middle = (of: (turn: (typeof turns)[number]) => number) => quantile(turns.map(of), 0.5);
  return [
    { opened: middle(([raw]) => raw.opened), again: middle(([raw]) => raw.again) },
    {
      ...{ opened: middle(([, warm]) => warm.opened), again: middle(([, warm]) => warm.again) },
      ...{ wholeList: middle(([, warm]) => warm.wholeList), peakMb: middle(([, warm]) => warm.peakMb) },
    },
  ];
}

/** A window goes by the clock, and so by all else the computer does meanwhile: the middle of three; the last of them saves sizes. */
async function middleOf(look: (saves: boolean) => Promise<InWindow | null>): Promise<InWindow | null> {
  const looks: InWindow[] = [];
  for (const saves of [false, false, true]) {
    const its = await look(saves);
    if (its) looks.push(its);
  }
  const last = looks.at(-1);
  if (!last) return null;
  const middle = (of: (look: InWindow) => number) => quantile(looks.map(of), 0.5);
  return {
    ...last,
    ...{ usableMs: middle(({ usableMs }) => usableMs), framesInTime: middle(({ framesInTime }) => framesInTime) },
    bareFramesInTime: middle(({ bareFramesInTime }) => bareFramesInTime),
    longTasks: {
      opening: middle(({ longTasks }) => longTasks.opening),
      scrolling: middle(({ longTasks }) => longTasks.scrolling),
      saving: last.longTasks.saving,
      longestMs: Math.max(...looks.map(({ longTasks }) => longTasks.longestMs)),
    },
  };
}

function printForecast(rows: readonly Stood[]): void {
  printTable(
    'The whole shop forecast from its record, learning and loading included [s of one core]',
    [
      ...['machines', 'points', 'record MB', 'rows read', 'learned', 'forecast', 'against reading', 'points a second'],
      ...['lme4, classes alone', 'most memory MB'],
    ],
    rows.map((row) => [
      ...[row.machines, pointsOf(row), places(row.megabytes, 0), seconds(row.raw.forecastRows)],
      ...[
        seconds(row.learn.cpuSeconds),
        seconds(row.forecast.cpuSeconds),
        times(coldSeconds(row), row.raw.forecastRows),
      ],
      ...[places(pointsOf(row) / coldSeconds(row), 0), seconds(row.mixedModel)],
      places(Math.max(row.learn.peakMb, row.forecast.peakMb), 0),
    ]),
  );
}

function printWarm(rows: readonly Stood[]): void {
  printTable(
    'A program started again, nothing changed [ms of one core]: kept rows and names read raw, the list opened, in processes just started; one new size, on the disk and forecast',
    [
      ...['machines', 'rows read', 'list opened', 'against reading', 'read again', 'opened again', 'against reading'],
      ...['every line', 'size saved p50', 'p95', 'first', 'most memory MB'],
    ],
    rows.map(({ machines, rawKept, warm, save }) => [
      ...[machines, places(1000 * rawKept.opened, 1), places(1000 * warm.opened, 1)],
      ...[times(warm.opened, rawKept.opened), places(1000 * rawKept.again, 1), places(1000 * warm.again, 1)],
      ...[times(warm.again, rawKept.again), places(1000 * warm.wholeList, 0)],
      ...[
        places(save.p50, 0),
        places(save.p95, 0),
        places(save.first, 0),
        places(Math.max(warm.peakMb, save.peakMb), 0),
      ],
    ]),
  );
}

function printWindow(rows: readonly Stood[]): void {
  if (values['no-window']) return;
  printTable(
    'In a browser, by the clock; long tasks block the window for over 50 ms; a size saved, and its page: the middle of several',
    [
      ...[
        'machines',
        'start to rows ms',
        'long tasks: opening',
        'scrolling',
        'saving',
        'longest ms',
        'frames in time',
        'bare page',
      ],
      ...['machine page first ms', 'size saved ms', 'its page anew ms', 'worst ms', 'of that worked ms', 'memory MB'],
    ],
    rows.flatMap(({ machines, windows }) =>
      windows.map((window, warm) =>
        window === null
          ? [`${machines} ${warm ? 'kept' : 'new'}`, 'no Chromium']
          : [
              ...[`${machines} ${warm ? 'kept' : 'new'}`, places(window.usableMs, 0)],
              ...[window.longTasks.opening, window.longTasks.scrolling, window.longTasks.saving],
              ...[places(window.longTasks.longestMs, 0), `${places(100 * window.framesInTime, 1)} %`],
              `${places(100 * window.bareFramesInTime, 1)} %`,
              ...(['firstMs', 'savedMs', 'machineMs', 'machineWorstMs', 'machineCpuMs'] as const).map((what) =>
                window.saving ? places(window.saving[what], 0) : '-',
              ),
              places(window.peakMb, 0),
            ],
      ),
    ),
  );
}

/** Time for a point or a line should not grow with the shop. */
function printGrowth(rows: readonly Stood[]): void {
  printTable(
    'How it grows: for one point, or one machine [ms of one core]',
    ['machines', 'forecast, a point', 'rows read, a point', 'list opened, a machine', 'size saved'],
    rows.map((row) => [
      ...[row.machines, places((1000 * coldSeconds(row)) / pointsOf(row), 2)],
      ...[places((1000 * row.raw.forecastRows) / pointsOf(row), 3), places((1000 * row.warm.opened) / row.machines, 3)],
      places(row.save.p50, 0),
    ]),
  );
}
