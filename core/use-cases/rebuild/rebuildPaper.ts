import type { Handler } from '../../contract/operation.ts';
import type { rebuildPaper } from '../../contract/rebuild.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { type Context, recordOf } from '../context.ts';
import { foundOnJob } from './foundOnJob.ts';
import { rebuildSheet } from './rebuildSheet.ts';

export const rebuildPaperHandler: Handler<typeof rebuildPaper, Context> = async (context, { rebuildId, paper }) => {
  const { name, headLines, phone, email, decimalMark } = readSettings(recordOf(context));
  const rebuild = rebuildSheet(context, rebuildId);
  const { printRebuildPaper } = await import('../../papers/rebuild/rebuildPaper.ts');
  const pdf = await printRebuildPaper(paper, {
    shop: { name, headLines, phone, email },
    printedOn: context.today(),
    writing: decimalMark,
    rebuild,
    found: paper === 'close-out' ? foundOnJob(context, rebuild) : [],
  });
  return { fileName: `${paper}-${rebuild.number}.pdf`, pdfBase64: Buffer.from(pdf).toString('base64') };
};
