import { machinesList } from '#core/contract/machine.ts';
import { recordState } from '#core/contract/record.ts';
import { fitterSave } from '#core/contract/shop.ts';
import { aProgramAt } from './aProgram.ts';

/**
 * The program on a record (its only argument) as an ordinary person; tells as JSON what it said. Run by the system's own
 * user, whom no leave is needed from, it steps down to nobody first.
 */
const NOBODY = 65534;
if (process.getuid?.() === 0) process.setuid?.(NOBODY);

const program = aProgramAt(String(process.argv[2]));
const { open, trouble, warnings } = await program.ask(recordState, {});
const list = await program.answer(machinesList, {});
const save = await program.answer(fitterSave, { fitterId: null, name: 'Bo', active: true });
program.context.close();
console.log(JSON.stringify({ open, trouble, warnings, list: list.ok, save, defects: program.defects }));
