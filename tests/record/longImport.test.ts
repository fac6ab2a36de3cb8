import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { longRun } from '#tests/support/counts.ts';

/** Rows of the sheet: machines with five strips each, measured a hundred times. */
const ROWS = longRun ? 1_000_000 : 20_000;
const STRIPS = 5;
const VISITS = 100;
const MACHINES = ROWS / STRIPS / VISITS;

const folder = mkdtempSync(join(tmpdir(), 'long-import-'));
const recordPath = join(folder, 'shop.hoursandwear');
const sheetPath = join(folder, 'sizes of many years.csv');
let program: OpenProgram;

// biome-ignore lint/suspicious/noExplicitAny: a test looks into replies of many shapes
type Any = any;
const value = async (name: string, request: unknown): Promise<Any> => {
  const answer = await program.ask(name, request);
  if (!answer.ok) expect.fail(`${name}: ${JSON.stringify(answer.fault)}`);
  return answer.value;
};

beforeAll(async () => {
  program = await openProgram({
    recordPath,
    dataFolder: folder,
    asOf: '2026-11-02',
    log: ({ operation, error }) => expect.fail(`${operation}: ${error.stack}`),
  });
  const machines = ['machine'];
  const points = ['machine,assembly,position,point,part_class,wears,new_size_mm,gauge_error_mm,fitted_machine_hours'];
  for (let machine = 0; machine < MACHINES; machine++) {
    machines.push(`Loader ${machine}`);
    for (let strip = 0; strip < STRIPS; strip++)
      points.push(`Loader ${machine},Boom,Strip ${strip},Thickness,Nylon slide strip,down,40,0.05,0`);
  }
  const file = (name: string, lines: string[]) => ({ name, base64: Buffer.from(lines.join('\n')).toString('base64') });
  const laid = await value('record/bringIn', {
    files: [file('machines.csv', machines), file('points.csv', points)],
    dryRun: false,
  });
  expect(laid.faults).toEqual([]);
  const rows = ['Machine;Implement;Part;Point;Measured on;Clock h;Size mm;As'];
  for (let visit = 0; visit < VISITS; visit++) {
    // only the last rows tell day from month
    const date = `${visit === VISITS - 1 ? 28 : 10}.${1 + (visit % 12)}.${1960 + Math.floor(visit / 2)}`;
    for (let machine = 0; machine < MACHINES; machine++) {
      for (let strip = 0; strip < STRIPS; strip++) {
        const size = (40 - visit * 0.1 - strip * 0.01).toFixed(2).replace('.', ',');
        rows.push(
          `Loader ${machine};Boom;Strip ${strip};Thickness;${date};${100 * (visit + 1) + machine};${size};found`,
        );
      }
    }
  }
  writeFileSync(sheetPath, rows.join('\r\n'));
});
afterAll(async () => {
  await program.close();
  rmSync(folder, { recursive: true, force: true });
});

const asked = async (dryRun: boolean) => {
  const file = { path: sheetPath, fileId: null };
  const seen = await value('exchange/lookAtSheet', { file, sheet: null, noun: 'sizes', headRow: null });
  expect(seen).toMatchObject({ dateOrder: 'dmy', decimalMark: ',' });
  const columns = seen.columns
    .filter(({ place }: Any) => place !== null)
    .map(({ column, place }: Any) => ({ column, place, fixed: '', unit: null }));
  const mapping = { columns, dateOrder: 'dmy', decimalMark: ',', headRow: seen.headRow };
  return { kind: 'bring-in-sheet', ask: { file, sheet: null, noun: 'sizes', mapping, dryRun } };
};

const pause = () => new Promise((resolve) => setTimeout(resolve, 2));

/** What the record file holds, seen by a connection of its own. */
function held(): { sizes: number; dials: number; entries: number; sound: string } {
  const file = new Database(recordPath, { readonly: true });
  const count = (table: string) => file.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number;
  const sound = file.pragma('integrity_check', { simple: true }) as string;
  const counts = { sizes: count('sizes'), dials: count('dial_readings'), entries: count('entries'), sound };
  file.close();
  return counts;
}

/** Starts the work and breaks it off once it is at a step. @returns the steps it was seen at, and how it ended */
async function brokenOffAt(step: string): Promise<{ steps: string[]; ended: Any }> {
  const { jobId } = await value('jobs/start', { job: await asked(false) });
  const steps: string[] = [];
  for (;;) {
    const state = await value('jobs/state', { jobId });
    if (steps.at(-1) !== state.step) steps.push(state.step);
    if (state.state !== 'running') return { steps, ended: state };
    if (state.step === step && (step !== 'writing' || state.share > 0.3)) break;
    await pause();
  }
  return { steps, ended: await value('jobs/cancel', { jobId }) };
}

describe(`a sheet of ${ROWS} rows`, () => {
  test.each(['reading', 'planning', 'writing'])('broken off while %s leaves the record as it was', async (step) => {
    const before = held();
    const { ended } = await brokenOffAt(step);
    expect(ended).toMatchObject({ state: 'cancelled', account: null });
    expect(held()).toEqual(before);
    expect(before).toMatchObject({ sizes: 0, sound: 'ok' });
  });

  test('tells how far it is while the program goes on answering, then is in the record whole', async () => {
    const { jobId } = await value('jobs/start', { job: await asked(false) });
    expect((await program.ask('jobs/start', { job: await asked(true) })).ok).toBe(false);
    const seen: [string, number][] = [];
    let answered = 0;
    let state: Any;
    for (;;) {
      state = await value('jobs/state', { jobId });
      if (state.state !== 'running') break;
      const [step, share] = seen.at(-1) ?? ['', 0];
      expect(state.step !== step || state.share >= share).toBe(true);
      seen.push([state.step, state.share]);
      await value('customers/list', {});
      answered++;
      await pause();
    }
    if (state.state !== 'done') expect.fail(JSON.stringify(state));
    expect(state.account).toMatchObject({ done: true, rows: ROWS, faultCount: 0, cautionCount: 0 });
    expect(state.account.brought).toMatchObject({ sizes: ROWS, dialReadings: MACHINES * VISITS });
    expect(answered).toBeGreaterThan(20);
    expect(held()).toMatchObject({ sizes: ROWS, dials: MACHINES * VISITS, sound: 'ok' });
    expect(await value('jobs/cancel', { jobId })).toMatchObject({ state: 'done' });
  });

  test('brought in again has nothing new', async () => {
    const { jobId } = await value('jobs/start', { job: await asked(false) });
    let state = await value('jobs/state', { jobId });
    while (state.state === 'running') {
      await pause();
      state = await value('jobs/state', { jobId });
    }
    if (state.state !== 'done') expect.fail(JSON.stringify(state));
    expect(state.account.brought).toMatchObject({ sizes: 0, dialReadings: 0 });
    expect(held().sizes).toBe(ROWS);
  });
}, 1_200_000);

test('work nobody started is unknown', async () => {
  for (const name of ['jobs/state', 'jobs/cancel'])
    expect(await program.ask(name, { jobId: 'job-99' })).toMatchObject({
      fault: { code: 'unknown-job', path: 'jobId' },
    });
});
