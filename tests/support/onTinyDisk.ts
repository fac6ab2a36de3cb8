import { rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hoursAdd } from '#core/contract/hours.ts';
import { machinesList } from '#core/contract/machine.ts';
import { recordBackUp, recordOpen, recordOpenDemo, recordState } from '#core/contract/record.ts';
import { aShopWithAHitch } from './aHitch.ts';
import { aProgramAt } from './aProgram.ts';

/**
 * Run on a disk of a few megabytes (its only argument): saves until nothing more fits, and tells as JSON what the program
 * said, what it held then, and that it goes on once there is room.
 */
/** Room left for some entries [bytes]. */
const ROOM_BYTES = 300_000;

const folder = String(process.argv[2]);
const recordPath = join(folder, 'shop.hoursandwear');
const program = aProgramAt(recordPath);
const { machineId } = await aShopWithAHitch(program);
await program.ask(machinesList, {});

const backUp = await program.answer(recordBackUp, {});
const filler = join(folder, 'filler');
const { bavail, bsize } = statfsSync(folder);
writeFileSync(filler, Buffer.alloc(bavail * bsize - ROOM_BYTES));

let saved = 0;
const save = () =>
  program.answer(hoursAdd, {
    ...{ machineId, takenOn: '2026-10-01', kind: 'reading', dialHours: 2000 + saved, newDialHours: null },
    ...{ errorHours: null, saidBy: 'Bo', sure: true },
  });
let answer = await save();
for (; answer.ok && saved < 2000; answer = await save()) saved++;
const list = await program.answer(machinesList, {});
const state = await program.ask(recordState, {});
const demo = await program.answer(recordOpenDemo, {});
const stillOpen = program.context.record?.path === recordPath;
program.context.close();

// the computer is switched on again, still full
const again = aProgramAt(recordPath);
const readings = () =>
  again.context.record?.sqlite.prepare('SELECT count(*) FROM dial_readings').pluck().get() as number;
const afterwards = again.context.record ? readings() : again.context.trouble;
rmSync(filler);
if (!again.context.record) await again.ask(recordOpen, { path: recordPath });
const withRoom = await again.answer(hoursAdd, {
  ...{ machineId, takenOn: '2026-10-02', kind: 'reading', dialHours: 5000, newDialHours: null },
  ...{ errorHours: null, saidBy: 'Bo', sure: true },
});
const integrity = again.context.record?.sqlite.pragma('integrity_check', { simple: true });
const told = {
  backUp,
  saved,
  answer,
  list: list.ok,
  warnings: state.warnings,
  demo,
  stillOpen,
  afterwards,
  withRoom: withRoom.ok,
  integrity,
};
again.context.close();
console.log(JSON.stringify({ ...told, defects: [...program.defects, ...again.defects] }));
