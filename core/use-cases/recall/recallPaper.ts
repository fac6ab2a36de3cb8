import type { Handler } from '../../contract/operation.ts';
import { type recallPaper, recallRead } from '../../contract/recall.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { type Context, recordOf } from '../context.ts';
import { isLarge } from '../learning/heardNow.ts';
import { recallNow } from './recallList.ts';

export const recallPaperHandler: Handler<typeof recallPaper, Context> = async (context) => {
  const list = recallRead.zReply.parse(await recallNow(context, isLarge(context)));
  const { printRecallList } = await import('../../papers/recallPaper.ts');
  const pdf = await printRecallList(list, readSettings(recordOf(context)));
  return { fileName: `recall-list-${list.asOf}.pdf`, pdfBase64: Buffer.from(pdf).toString('base64') };
};
