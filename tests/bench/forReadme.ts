import { readFileSync, writeFileSync } from 'node:fs';
import { places } from '#tests/accuracy/printTable.ts';
import type { CoreSteps } from './coreStep.ts';
import type { InWindow } from './windowStep.ts';

/** What one size of record showed. */
export type Stood = CoreSteps & {
  machines: number;
  megabytes: number;
  mixedModel: number | string;
  /** never learned from; kept */
  windows: (InWindow | null)[];
};

export const POINTS_A_MACHINE = 20;
export const coldSeconds = ({ learn, forecast }: CoreSteps): number => learn.cpuSeconds + forecast.cpuSeconds;
const pointMs = (row: Stood): number => (1000 * coldSeconds(row)) / (POINTS_A_MACHINE * row.machines);

/** The table of the README: the largest record measured, and how a point's time grows up to it. */
export function readmeTable(rows: readonly Stood[]): string[] {
  const row = rows.reduce((a, b) => (b.machines > a.machines ? b : a));
  const bySize = rows.toSorted((a, b) => a.machines - b.machines);
  const { raw, rawKept, learn, forecast, warm, mixedModel } = row;
  const [fresh, kept] = row.windows;
  const s = (seconds: number, count = 0) => `${places(seconds, count)} s`;
  const ms = (seconds: number) => `${places(1000 * seconds, 0)} ms`;
  const times = (value: number, of: number, count = 1) => `${places(value / of, count)} ×`;
  const seen = (told: (window: InWindow) => string, window = kept) => (window ? told(window) : 'no Chromium');
  const asked = (milliseconds: number) => s(milliseconds / 1000, 2);
  const pointsASecond = Math.round(1000 / pointMs(row)).toLocaleString('en');
  const lines: [what: string, measured: string, aim: string][] = [
    [`${row.machines.toLocaleString('en')} machines`, 'measured', 'aim'],
    ['rows that forecasts rest on, read and let go', s(raw.forecastRows, 1), ''],
    [
      'the whole shop forecast: classes learned from machines drawn by lot, then hours and dates of every point, loading included',
      `${s(learn.cpuSeconds)} + ${s(forecast.cpuSeconds)}, ${pointsASecond} points a second; ${times(coldSeconds(row), raw.forecastRows, 0)} the reading`,
      '3,000 a second',
    ],
    [
      "R's lme4 on the same classes, their mean lines alone",
      typeof mixedModel === 'number' ? s(mixedModel) : mixedModel,
      '',
    ],
    [
      'started again, nothing changed: kept rows and names read raw by a program just started; the list opened by one; each once more',
      `${ms(rawKept.opened)}; ${ms(warm.opened)} (${times(warm.opened, rawKept.opened)}); ${ms(rawKept.again)}, ${ms(warm.again)} (${times(warm.again, rawKept.again)})`,
      '3 ×',
    ],
    [
      'one new size, on the disk and its machine forecast: half of them, 19 in 20; the first after a start',
      rows
        .map(
          ({ machines, save: { p50, p95, first } }) =>
            `${places(p50, 0)}, ${places(p95, 0)}; ${places(first, 0)} ms (${machines.toLocaleString('en')} machines)`,
        )
        .join('; '),
      '20 ms',
    ],
    [
      'start of the program to rows on the screen: never learned from; kept',
      `${seen(({ usableMs }) => s(usableMs / 1000, 1), fresh)}; ${seen(({ usableMs }) => s(usableMs / 1000, 1))}`,
      '2 s kept',
    ],
    [
      'tasks that block the window for over 50 ms: list opened, scrolled (the middle of three windows), a size saved',
      seen(
        ({ longTasks: { opening, scrolling, saving, longestMs } }) =>
          `${opening}, ${scrolling}, ${saving}; the longest ${places(longestMs, 0)} ms`,
      ),
      'none',
    ],
    [
      'frames in time while its rows are scrolled; of a bare page as high, in the same browser',
      seen(
        ({ framesInTime, bareFramesInTime }) =>
          `${places(100 * framesInTime, 1)} %; ${places(100 * bareFramesInTime, 1)} %`,
      ),
      '60 a second',
    ],
    [
      "a size saved in the window; its machine's page drawn anew, the worst, and what of it the window's thread worked: the middle of several saves; that page's first drawing",
      seen(({ saving }) =>
        saving
          ? `${asked(saving.savedMs)}; ${asked(saving.machineMs)}, ${asked(saving.machineWorstMs)}, ${places(saving.machineCpuMs, 0)} ms; ${asked(saving.firstMs)}`
          : '-',
      ),
      '0.1 s the page',
    ],
    [
      'memory of the program with list, save and machine page; of the process that learns, that forecasts',
      `${seen(({ peakMb }) => `${places(peakMb, 0)} MB`)}; ${places(learn.peakMb, 0)} MB, ${places(forecast.peakMb, 0)} MB`,
      '600 MB',
    ],
    [
      `time for a point at ${bySize.map(({ machines }) => machines.toLocaleString('en')).join(', ')} machines; of the first nearly all is learning`,
      bySize.map((one) => `${places(pointMs(one), 2)} ms`).join(', '),
      'no worse than linear',
    ],
  ];
  const widths = [0, 1, 2].map((column) => Math.max(...lines.map((line) => line[column]!.length)));
  const [head, ...body] = lines.map((line) => `| ${line.map((cell, i) => cell.padEnd(widths[i]!)).join(' | ')} |`);
  return [head!, `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...body];
}

/** Puts it in the place of the table that stands in the README. */
export function putInReadme(path: string, table: readonly string[]): void {
  const lines = readFileSync(path, 'utf8').split('\n');
  const from = lines.findIndex((line) => /^\| [\d,]+ machines /.test(line));
  const count = lines.slice(from).findIndex((line) => !line.startsWith('|'));
  if (from < 0 || count < 0) throw new Error('Broken invariant: the README has a table of the bench');
  writeFileSync(path, lines.toSpliced(from, count, ...table).join('\n'));
}
