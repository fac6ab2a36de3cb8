import { useLocation } from 'wouter';
import { slipRead, slipsList } from '#core/contract/slip.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { slipFileName, slipsWords } from '#renderer/words/slipsWords.ts';
import { EarlierSlips } from './EarlierSlips.tsx';
import { SlipSheet } from './SlipSheet.tsx';

/** A slip as it was made, opened again from the list. */
export default function OldSlip() {
  const slipId = useIdInAddress('slipId');
  const [, goTo] = useLocation();
  const kept = useAsk(slipRead, slipId === null ? null : { slipId });
  const slips = useAsk(slipsList, {});
  const machineId = slips.value?.slips.find((slip) => slip.slipId === slipId)?.machineId;
  if (!slipId || !kept.value)
    return (
      <NotYetSheet
        title={slipsWords.slip}
        of={kept}
        words={slipsWords.printing}
        noSuch="unknown-slip"
        list={{ at: '/slips', words: slipsWords.toSlips }}
      />
    );
  const { slip, pdfBase64 } = kept.value;
  const number = slip.number ?? '';
  return (
    <SlipSheet
      title={slipsWords.numbered(number)}
      sub={[slip.machine.name, slip.customer.name, slip.customer.place].filter(Boolean).join(', ')}
      banner={
        <StopBanner machineId={machineId} since={slip.headline.kind === 'do-not-use' ? '' : slipsWords.stoppedSince} />
      }
      slip={slip}
      pdfBase64={pdfBase64}
      fileName={slipFileName(number, slip.machine.name)}
      made
      keys={
        machineId !== undefined && (
          <>
            <Key letter="N" onPress={() => goTo(`/slip/${machineId}`)}>
              {slipsWords.again}
            </Key>
            <Key letter="M" onPress={() => goTo(`/machine/${machineId}`)}>
              {slipsWords.machineKey}
            </Key>
          </>
        )
      }
      aside={
        <>
          <p>{slipsWords.oldNote(slip.madeOn)}</p>
          {machineId !== undefined && <EarlierSlips machineId={machineId} except={slipId} />}
        </>
      }
    />
  );
}
