import type { Handler } from '../../contract/operation.ts';
import type { repairCutListPaper } from '../../contract/repair.ts';
import { machineOrRefuse } from '../../record/machineStore.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { type Context, recordOf } from '../context.ts';
import { makeOf } from '../rebuild/workOfRepair.ts';
import { repairCutListHandler } from './repairCutList.ts';

/** The cut list on paper. */
export const repairCutListPaperHandler: Handler<typeof repairCutListPaper, Context> = async (
  context,
  { machineId },
) => {
  const record = recordOf(context);
  const { name, headLines, phone, email, decimalMark } = readSettings(record);
  const { groups } = await repairCutListHandler(context, { machineId });
  const { printCutList } = await import('../../papers/rebuild/winterCutList.ts');
  const pdf = await printCutList({
    shop: { name, headLines, phone, email },
    printedOn: context.today(),
    writing: decimalMark,
    machine: machineId === null ? '' : machineOrRefuse(record, machineId).name,
    groups: groups.map(({ bar, parts, plan }) => ({
      ...{ bar, bars: plan.bars, proven: plan.proven, makes: parts.map(makeOf) },
    })),
  });
  return { fileName: `cut-list-${context.today()}.pdf`, pdfBase64: Buffer.from(pdf).toString('base64') };
};
