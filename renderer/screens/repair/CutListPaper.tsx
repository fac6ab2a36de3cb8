import { useLocation, useParams } from 'wouter';
import { repairCutListPaper } from '#core/contract/repair.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { PaperSheet } from '#renderer/screens/slips/PaperSheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { repairWords } from '#renderer/words/repairWords.ts';

/** The cut list of the repairs chosen, of one machine or of all, as it leaves the printer. */
export default function CutListPaper() {
  const { of } = useParams<{ of: string }>();
  const [, goTo] = useLocation();
  const today = useToday();
  const machineId = Number.isInteger(Number(of)) && Number(of) > 0 ? Number(of) : null;
  const paper = useAsk(repairCutListPaper, { machineId });
  const title = repairWords.cutList.paper;
  if (!paper.value)
    return (
      <Sheet title={title}>
        {paper.fault ? (
          <FaultBox fault={paper.fault} keys={<Key onPress={paper.again}>{frameWords.tryAgain}</Key>} />
        ) : (
          <FillingRule words={repairWords.loading} />
        )}
      </Sheet>
    );
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
