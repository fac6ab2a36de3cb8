import { writeSync } from 'node:fs';
import { flushCompileCache } from 'node:module';
import { parseArgs } from 'node:util';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { answerWith } from '#core/shells/answer.ts';
import { addDays, day } from '#core/units/day.ts';
import { openContext } from '#core/use-cases/context.ts';
import { stripDownSaveHandler } from '#core/use-cases/stripDownSave.ts';
import { aSize } from './aHitch.ts';

/**
 * A program in a process of its own that saves one strip-down after another through the door, and says so of each once it
 * was acknowledged. It never ends by itself: it is killed, from outside or, with --strike, by its own hand when so many
 * rows of sizes have been written, in the middle of a save.
 */
export type Bench = { machineId: number; assemblyId: number; positionId: number; stripId: number; pinId: number };

/** What each strip-down of this program consists of. */
export const ROWS_EACH = { sizes: 6, renewals: 1, findings: 1, dialReadings: 1 };

async function saveOn(recordPath: string, first: number, benches: Bench[], strikeAfter: number): Promise<void> {
  flushCompileCache();
  const context = openContext({ recordPath, asOf: '2026-11-09' });
  if (strikeAfter > 0) {
    let rows = 0;
    context.record?.sqlite.function('strike', () => {
      if (++rows === strikeAfter) process.kill(process.pid, 'SIGKILL');
      return 0;
    });
    context.record?.sqlite.exec('CREATE TEMP TRIGGER struck AFTER INSERT ON main.sizes BEGIN SELECT strike(); END');
  }
  // the door with the one operation behind it: the others would only make each of many starts longer
  const ask = answerWith({
    operations: [stripDownSave],
    handlers: { 'stripDown/save': stripDownSaveHandler },
    context,
    log: ({ error }) => writeSync(2, `${error.stack}\n`),
  });
  for (let n = first; ; n++) {
    const bench = benches[n % benches.length];
    if (!bench) throw new Error('Broken invariant: there is a bench');
    const answer = await ask('stripDown/save', stripDown(bench, n, Math.floor(n / benches.length)));
    if (!answer.ok) writeSync(2, `${JSON.stringify(answer)}\n`);
    else writeSync(1, `saved ${n}\n`);
    // what was answered goes out, and what is learned comes in, as between two people's sheets
    await new Promise((resolve) => setImmediate(resolve));
  }
}

/** The n-th strip-down: told by its note. */
const stripDown = ({ machineId, assemblyId, positionId, stripId, pinId }: Bench, n: number, visit: number) => ({
  machineId,
  takenOn: addDays(day('2022-02-01'), visit * 7),
  dialHours: 1010 + visit * 10,
  dialSure: true,
  fitter: 'Bo',
  note: `sheet ${n}`,
  sizes: (['as-found', 'as-left'] as const).flatMap((event) => [
    aSize(stripId, 12 - visit * 0.01, 'front', event),
    aSize(stripId, 12 - visit * 0.01, 'rear', event),
    aSize(pinId, 30, '', event),
  ]),
  renewals: [{ pointId: pinId, sizeMm: 30, hoursKnown: true }],
  findings: [{ assemblyId, positionId, kind: 'crack', severity: 'watch', note: `sheet ${n}` }],
});

if (import.meta.main) {
  const { values } = parseArgs({
    options: {
      record: { type: 'string' },
      first: { type: 'string' },
      benches: { type: 'string' },
      strike: { type: 'string' },
    },
  });
  await saveOn(String(values.record), Number(values.first), JSON.parse(String(values.benches)), Number(values.strike));
}
