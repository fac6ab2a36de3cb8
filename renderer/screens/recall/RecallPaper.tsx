import { useLocation } from 'wouter';
import { recallPaper } from '#core/contract/recall.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { PaperSheet } from '#renderer/screens/slips/PaperSheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';

/** The recall list as it leaves the printer. */
export default function RecallPaper() {
  const [, goTo] = useLocation();
  const today = useToday();
  const paper = useAsk(recallPaper, {});
  if (!paper.value) return <NotYetSheet title={words.paper} of={paper} words={words.loading} />;
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
