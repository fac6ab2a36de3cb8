import { useLocation } from 'wouter';
import { repairCutListPaper } from '#core/contract/repair.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { PaperSheet } from '#renderer/screens/slips/PaperSheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { shared } from '#renderer/words/english.ts';
import { repairWords } from '#renderer/words/repairWords.ts';

/** The cut list of the repairs chosen, of one machine or of all, as it leaves the printer. */
export default function CutListPaper() {
  const [, goTo] = useLocation();
  const today = useToday();
  const machineId = useIdInAddress('of');
  const paper = useAsk(repairCutListPaper, { machineId });
  const title = repairWords.cutList.paper;
  if (!paper.value) return <NotYetSheet title={title} of={paper} words={repairWords.loading} />;
  return (
    <PaperSheet
      title={title}
      sub={paper.value.fileName}
      pdfBase64={paper.value.pdfBase64}
      fileName={paper.value.fileName}
      keys={
        <Key letter="M" onPress={() => goTo(machineId === null ? '/machines' : `/machine/${machineId}`)}>
          {repairWords.toMachine}
        </Key>
      }
      block={[
        { label: shared.asOf, value: today },
        { ...planningAidCell, grow: true },
      ]}
    />
  );
}
