import { useLocation } from 'wouter';
import { sheetBlank } from '#core/contract/measuringSheet.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell } from '#renderer/controls/Sheet.tsx';
import { useToday } from '#renderer/record.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { shared } from '#renderer/words/english.ts';
import { measuringSheetWords as words } from '#renderer/words/measuringSheetWords.ts';
import { PaperSheet } from '../slips/PaperSheet.tsx';

/** The blank measuring sheet of a machine as it leaves the printer. */
export default function MeasuringSheet() {
  const machineId = useIdInAddress('machineId');
  const sheet = useAsk(sheetBlank, machineId === null ? null : { machineId });
  if (machineId && sheet.value) return <Printed sheet={sheet.value} machineId={machineId} />;
  return <NotYetSheet title={words.of('')} of={sheet} words={words.printing} noSuch="unknown-machine" />;
}

function Printed({ sheet, machineId }: { sheet: ReplyOf<typeof sheetBlank>; machineId: number }) {
  const [, goTo] = useLocation();
  const today = useToday();
  const title = words.of(sheet.machine);
  return (
    <PaperSheet
      banner={<StopBanner machineId={machineId} />}
      title={title}
      sub={words.sub(sheet.pages)}
      pdfBase64={sheet.pdfBase64}
      fileName={sheet.fileName}
      keys={
        <>
          <Key letter="M" onPress={() => goTo(`/machine/${machineId}`)}>
            {words.toMachine}
          </Key>
          <Key letter="D" onPress={() => goTo(`/strip-down/${machineId}`)}>
            {words.toStripDown}
          </Key>
        </>
      }
      block={[
        { label: shared.asOf, value: today },
        planningAidCell,
        { label: words.blockKept, value: words.notKept },
        { label: words.blockFile, value: sheet.fileName, grow: true },
      ]}
      aside={
        <>
          <section>
            <h2>{words.how}</h2>
            <p>{words.howNote}</p>
          </section>
          <p>{words.howBoxes}</p>
        </>
      }
    />
  );
}
