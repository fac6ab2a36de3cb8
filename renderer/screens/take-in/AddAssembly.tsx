import { useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { assemblyAdd } from '#core/contract/machine.ts';
import { classesList } from '#core/contract/partClass.ts';
import { shopRead } from '#core/contract/shop.ts';
import type { Day } from '#core/units/day.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { takeInWords as words } from '#renderer/words/takeInWords.ts';
import { AssemblyPart } from './AssemblyPart.tsx';
import { type AssemblyForm, assemblyByHand, assemblyOfKind } from './form.ts';
import { KindKeys } from './KindKeys.tsx';
import { RemarksBox } from './RemarksBox.tsx';
import { assemblyRequest } from './request.ts';
import { goToFirstRemark, useFormKeys } from './useFormKeys.ts';

/** Lays out an assembly on a machine that is on record already. */
export function AddAssembly({ machineId }: { machineId: number }) {
  const today = useToday();
  const writing = useWriting();
  const [, goTo] = useLocation();
  const machines = useMachineNames();
  const shop = useAsk(shopRead, {});
  const classes = useAsk(classesList, {});
  const add = useDo(assemblyAdd);
  const [assembly, setAssembly] = useState<AssemblyForm | null>(null);
  const [from, setFrom] = useState<Day | null>(null);
  const [tried, setTried] = useState(false);
  const body = useRef<HTMLDivElement>(null);
  const machine = machines.value?.machines.find((one) => one.machineId === machineId);
  const remarks = tried && assembly ? assemblyRequest(assembly, writing).remarks : [];

  const send = async () => {
    if (!assembly) return;
    const { request } = assemblyRequest(assembly, writing);
    setTried(true);
    if (!request) return goToFirstRemark(body);
    const reply = await add.run({ machineId, from, assembly: request });
    if (reply) goTo(`/machine/${machineId}`);
  };
  useFormKeys(() => void send());
  if (machines.value && !machine)
    return <NotYetSheet title={words.addTitleBare} of={{ ...machines, value: machine }} noSuch="unknown-machine" />;
  return (
    <Sheet
      title={machine ? words.addTitle(machine.name) : words.addTitleBare}
      sub={machine?.customer}
      actions={
        <Key first disabled={add.busy || !assembly} onPress={() => void send()}>
          {words.addSave}
          <Letter>{words.saveKeys}</Letter>
        </Key>
      }
      banner={
        <>
          <StopBanner machineId={machineId} />
          <RemarksBox count={remarks.length} onFirst={() => goToFirstRemark(body)}>
            {add.fault && <FaultBox fault={add.fault} />}
          </RemarksBox>
        </>
      }
    >
      <div ref={body}>
        {assembly ? (
          <>
            <div className="add-from">
              <DayField label={words.from} hint={words.fromHint} value={from} onChange={setFrom} today={today} />
            </div>
            <AssemblyPart
              assembly={assembly}
              path="assembly"
              partClasses={classes.value?.classes.map(({ name }) => name) ?? []}
              remarks={remarks}
              onChange={setAssembly}
              onDrop={() => setAssembly(null)}
            />
          </>
        ) : (
          <KindKeys
            kinds={shop.value?.kinds ?? []}
            another={false}
            onKind={(kind) => setAssembly(assemblyOfKind(kind, writing))}
            onByHand={() => setAssembly(assemblyByHand(writing))}
          />
        )}
      </div>
    </Sheet>
  );
}
