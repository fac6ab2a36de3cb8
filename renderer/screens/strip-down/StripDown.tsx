import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { shopRead } from '#core/contract/shop.ts';
import { stripDownSheet } from '#core/contract/stripDown.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { askingFor, useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { useMachineLines } from '#renderer/useMachines.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { Bench, type Saved } from './Bench.tsx';
import { MovedSheet } from './MovedSheet.tsx';
import { PickMachine } from './PickMachine.tsx';
import './strip-down.css';

/** Strip-down: pick the machine, type its sizes, save, see what moved. */
export default function StripDown() {
  const machineId = useIdInAddress('machineId');
  return machineId ? <OfMachine key={machineId} machineId={machineId} /> : <PickMachine />;
}

function OfMachine({ machineId }: { machineId: number }) {
  const [, goTo] = useLocation();
  const queries = useQueryClient();
  const [saved, setSaved] = useState<Saved | null>(null);
  /** a new sheet is a new grid: nothing of the last one stays in its boxes */
  const [sheets, setSheets] = useState(0);
  const sheet = useAsk(stripDownSheet, { machineId });
  const shop = useAsk(shopRead, {});
  const machine = useMachineLines([machineId]).value?.lines[0];
  const title = machine ? words.of(machine.name) : words.title;
  const sub = machine ? [machine.customer, machine.assemblies.join(', ').toLowerCase()].filter(Boolean).join(', ') : '';

  if (saved) {
    return (
      <MovedSheet
        machineId={machineId}
        title={title}
        saved={saved}
        onAgain={() => {
          setSaved(null);
          setSheets(sheets + 1);
        }}
      />
    );
  }
  if (sheet.value?.rows.length === 0) {
    return (
      <Sheet title={title} sub={sub} bench banner={<StopBanner machineId={machineId} />}>
        <Empty
          head={words.emptyGrid}
          keys={
            <Key first letter="A" onPress={() => goTo(`/take-in/${machineId}`)}>
              {words.layOut}
            </Key>
          }
        >
          {words.emptyGridNext}
        </Empty>
      </Sheet>
    );
  }
  if (!sheet.value || !shop.value) {
    return (
      <NotYetSheet
        title={title}
        sub={sub}
        bench
        banner={<StopBanner machineId={machineId} />}
        of={[sheet, shop]}
        words={words.loading}
      />
    );
  }
  return (
    <Bench
      key={sheets}
      machineId={machineId}
      title={title}
      sub={sub}
      sheetAsked={sheet.value}
      gauges={shop.value.gauges}
      fitters={shop.value.fitters.filter(({ active }) => active).map(({ name }) => name)}
      onSaved={setSaved}
      onDiscarded={() => setSheets(sheets + 1)}
      onOther={async () => {
        await queries.fetchQuery({ ...askingFor(stripDownSheet, { machineId }), staleTime: 0 }).catch(() => undefined); // the sheet is told of the fault
        setSheets(sheets + 1);
      }}
    />
  );
}
