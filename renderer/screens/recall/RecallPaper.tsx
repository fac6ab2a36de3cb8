import { useLocation } from 'wouter';
import { recallPaper } from '#core/contract/recall.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { PaperSheet } from '#renderer/screens/slips/PaperSheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';

/** The recall list as it leaves the printer. */
export default function RecallPaper() {
  const [, goTo] = useLocation();
  const today = useToday();
  const paper = useAsk(recallPaper, {});
  if (!paper.value)
    return (
      <Sheet title={words.paper}>
        {paper.fault ? (
          <FaultBox fault={paper.fault} keys={<Key onPress={paper.again}>{frameWords.tryAgain}</Key>} />
        ) : (
          <FillingRule words={words.loading} />
        )}
      </Sheet>
    );
  return (
    <PaperSheet
      title={words.paper}
      sub={paper.value.fileName}
      pdfBase64={paper.value.pdfBase64}
      fileName={paper.value.fileName}
      keys={
        <Key letter="R" onPress={() => goTo('/recall')}>
          {words.tab}
        </Key>
      }
      block={[
        { label: shared.asOf, value: today },
        { ...planningAidCell, grow: true },
      ]}
    />
  );
}
