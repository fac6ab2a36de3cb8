import { useState } from 'react';
import { useLocation } from 'wouter';
import type { ReplyOf } from '#core/contract/operation.ts';
import { type Slip, slipMake, slipPreview } from '#core/contract/slip.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { slipsWords } from '#renderer/words/slipsWords.ts';
import { EarlierSlips } from './EarlierSlips.tsx';
import { SlipSheet } from './SlipSheet.tsx';

/** What came of making it: the slip's facts are those of its preview, with the number it was given. */
type Made = ReplyOf<typeof slipMake> & { slip: Slip };

/** A machine's slip: shown as it would be printed today, then made, with its number, to be printed or saved. */
export default function MachineSlip() {
  const machineId = useIdInAddress('machineId');
  const [, goTo] = useLocation();
  const [made, setMade] = useState<Made | null>(null);
  // a slip that was made is not previewed anew: printing takes its time
  const preview = useAsk(slipPreview, made === null && machineId ? { machineId } : null);
  const toMachine = (
    <Key letter="M" onPress={() => goTo(`/machine/${machineId}`)}>
      {slipsWords.machineKey}
    </Key>
  );
  if (made && machineId) return <MadeSlip key={made.slipId} made={made} machineId={machineId} toMachine={toMachine} />;
  if (!machineId || !preview.value)
    return <NotYetSheet title={slipsWords.slip} of={preview} words={slipsWords.printing} noSuch="unknown-machine" />;
  return <Preview preview={preview.value} machineId={machineId} toMachine={toMachine} onMade={setMade} />;
}

function Preview({
  preview: { slip, pdfBase64 },
  machineId,
  toMachine,
  onMade,
}: {
  preview: ReplyOf<typeof slipPreview>;
  machineId: number;
  toMachine: React.ReactNode;
  onMade: (made: Made) => void;
}) {
  const make = useDo(slipMake);
  const [by, setBy] = useBy();
  const send = async () => {
    const made = await make.run({ machineId, by });
    if (made) onMade({ ...made, slip: { ...slip, number: made.number } });
  };
  return (
    <SlipSheet
      title={slipsWords.of(slip.machine.name)}
      sub={[slip.customer.name, slip.customer.place].filter(Boolean).join(', ')}
      banner={<StopBanner machineId={machineId} />}
      slip={slip}
      pdfBase64={pdfBase64}
      fileName=""
      made={false}
      keys={
        <>
          {toMachine}
          <Key first letter="Enter" disabled={make.busy} onPress={send}>
            {slipsWords.make}
          </Key>
        </>
      }
      aside={
        <>
          <section>
            <h2>{slipsWords.preview}</h2>
            <p>{slipsWords.previewNote}</p>
          </section>
          <form
            onSubmit={(event) => {
              event.preventDefault();
              void send();
            }}
          >
            <ByField label={slipsWords.by} value={by} onChange={setBy} />
          </form>
          {make.fault && <FaultBox fault={make.fault} />}
          <EarlierSlips machineId={machineId} />
        </>
      }
    />
  );
}

function MadeSlip({ made, machineId, toMachine }: { made: Made; machineId: number; toMachine: React.ReactNode }) {
  const { slip } = made;
  return (
    <SlipSheet
      title={slipsWords.numbered(made.number)}
      sub={[slip.machine.name, slip.customer.name, slip.customer.place].filter(Boolean).join(', ')}
      banner={<StopBanner machineId={machineId} />}
      slip={slip}
      pdfBase64={made.pdfBase64}
      fileName={made.fileName}
      made
      keys={toMachine}
      aside={
        <>
          <section role="status">
            <h2>{slipsWords.made(made.number)}</h2>
            <p>{slipsWords.madeNote}</p>
          </section>
          <EarlierSlips machineId={machineId} except={made.slipId} />
        </>
      }
    />
  );
}
