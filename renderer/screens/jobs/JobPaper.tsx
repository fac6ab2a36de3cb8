import { useLocation, useParams } from 'wouter';
import { rebuildPaper, zRebuildPaper } from '#core/contract/rebuild.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { PaperSheet } from '#renderer/screens/slips/PaperSheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { shared } from '#renderer/words/english.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';

/** A paper of a job as it leaves the printer. */
export default function JobPaper() {
  const [, goTo] = useLocation();
  const today = useToday();
  const rebuildId = useIdInAddress('rebuildId');
  const name = zRebuildPaper.safeParse(useParams<{ paper: string }>().paper).data ?? 'job-card';
  const paper = useAsk(rebuildPaper, rebuildId === null ? null : { rebuildId, paper: name });
  if (!paper.value)
    return (
      <NotYetSheet
        title={words.papers[name]}
        of={paper}
        words={words.loading}
        noSuch="unknown-rebuild"
        list={{ at: '/jobs', words: words.toJobs }}
      />
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
