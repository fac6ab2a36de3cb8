import { useLocation, useParams } from 'wouter';
import { rebuildPaper, zRebuildPaper } from '#core/contract/rebuild.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { PaperSheet } from '#renderer/screens/slips/PaperSheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';

/** A paper of a job as it leaves the printer. */
export default function JobPaper() {
  const asked = useParams<{ rebuildId: string; paper: string }>();
  const [, goTo] = useLocation();
  const today = useToday();
  const rebuildId = Number(asked.rebuildId);
  const name = zRebuildPaper.safeParse(asked.paper).data ?? 'job-card';
  const paper = useAsk(rebuildPaper, Number.isInteger(rebuildId) && rebuildId > 0 ? { rebuildId, paper: name } : null);
  if (!paper.value)
    return (
      <Sheet title={words.papers[name]}>
        {paper.fault ? (
          <FaultBox fault={paper.fault} keys={<Key onPress={paper.again}>{frameWords.tryAgain}</Key>} />
        ) : (
          <FillingRule words={words.loading} />
        )}
      </Sheet>
    );
  return (
    <PaperSheet
      title={words.papers[name]}
      sub={paper.value.fileName}
      pdfBase64={paper.value.pdfBase64}
      fileName={paper.value.fileName}
      keys={
        <Key letter="J" onPress={() => goTo(`/job/${rebuildId}`)}>
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
