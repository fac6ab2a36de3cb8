import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { forecastSettingsRead } from '#core/contract/forecastSettings.ts';
import { customersList, type MachineNames, machineTakeIn } from '#core/contract/machine.ts';
import type { Fault } from '#core/contract/operation.ts';
import { classesList } from '#core/contract/partClass.ts';
import { shopRead } from '#core/contract/shop.ts';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import type { PickOption } from '#renderer/controls/PickBox.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { keepOverReload, leftOverReload } from '#renderer/frame/overReload.ts';
import { useRecord, useToday, useWriting } from '#renderer/record.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { faultText } from '#renderer/words/faultText.ts';
import { remarkText, takeInWords as words } from '#renderer/words/takeInWords.ts';
import { AddAssembly } from './AddAssembly.tsx';
import { AssemblyPart } from './AssemblyPart.tsx';
import { CustomerPart } from './CustomerPart.tsx';
import { layoutCounts } from './edit.ts';
import { assemblyByHand, assemblyOfKind, emptyTakeIn, isUntouched, type TakeInForm } from './form.ts';
import { KindKeys } from './KindKeys.tsx';
import { MachinePart, MeterPart } from './MachineParts.tsx';
import { RemarksBox } from './RemarksBox.tsx';
import { formPath, type Remark, takeInRequest } from './request.ts';
import { goToFirstRemark, useFormKeys } from './useFormKeys.ts';
import './take-in.css';

/** Take in a machine; with a machine in the address, lay out an assembly on it. */
export default function TakeIn() {
  const machineId = useIdInAddress('machineId');
  return machineId ? <AddAssembly key={machineId} machineId={machineId} /> : <NewMachine />;
}

const pullersOf = (machines: readonly MachineNames[]): PickOption[] =>
  machines.map(({ machineId, name, customer, place }) => ({
    id: String(machineId),
    text: name,
    second: [customer, place].filter(Boolean).join(', '),
  }));

/** A form that was left half typed, by record: looking something up on another screen or loading the window anew loses nothing of it. */
const unfinished = new Map(leftOverReload<[string, TakeInForm][]>('take-in'));
keepOverReload('take-in', () => [...unfinished]);

function NewMachine() {
  const today = useToday();
  const writing = useWriting();
  const { path } = useRecord();
  const [, goTo] = useLocation();
  const customers = useAsk(customersList, {});
  const shop = useAsk(shopRead, {});
  const classes = useAsk(classesList, {});
  const machines = useMachineNames();
  const settings = useAsk(forecastSettingsRead, {});
  const takeIn = useDo(machineTakeIn);
  const record = path ?? '';
  const [foundAgain, setFoundAgain] = useState(() => unfinished.has(record));
  const [form, setForm] = useState<TakeInForm>(() => unfinished.get(record) ?? emptyTakeIn(today, ''));
  const [afresh, setAfresh] = useState(0);
  const [tried, setTried] = useState(false);
  const body = useRef<HTMLDivElement>(null);

  useEffect(() => {
    if (isUntouched(form)) unfinished.delete(record);
    else unfinished.set(record, form);
  }, [form, record]);

  const own = takeInRequest(form, writing).remarks;
  const remarks = [...(tried ? own : []), ...refused(takeIn.fault, form)];
  const fault = (at: string) => {
    const remark = remarks.find((one) => one.path === at);
    return remark ? remarkText(remark.why, remark.facts, writing) : null;
  };
  const send = async () => {
    const { request } = takeInRequest(form, writing);
    setTried(true);
    if (!request) return goToFirstRemark(body);
    const reply = await takeIn.run(request);
    if (!reply) return goToFirstRemark(body);
    unfinished.delete(record);
    goTo(`/machine/${reply.machineId}`);
  };
  useFormKeys(() => void send());
  const set = (next: Partial<TakeInForm>) => {
    setForm((was) => ({ ...was, ...next }));
    takeIn.clear();
  };
  const startAfresh = () => {
    setForm(emptyTakeIn(today, ''));
    setTried(false);
    setFoundAgain(false);
    setAfresh(afresh + 1);
    takeIn.clear();
  };
  const counts = layoutCounts(form.assemblies.flatMap(({ positions }) => positions));
  return (
    <Sheet
      title={words.title}
      sub={foundAgain ? words.asLeft : words.sub}
      actions={
        <>
          {!isUntouched(form) && <Key onPress={startAfresh}>{words.afresh}</Key>}
          <Key first disabled={takeIn.busy} onPress={() => void send()}>
            {words.save}
            <Letter>{words.saveKeys}</Letter>
          </Key>
        </>
      }
      banner={
        <RemarksBox count={remarks.length} onFirst={() => goToFirstRemark(body)}>
          {takeIn.fault && refused(takeIn.fault, form).length === 0 && <FaultBox fault={takeIn.fault} />}
        </RemarksBox>
      }
      block={[
        { label: words.block.where, value: record.split(/[\\/]/).at(-1) ?? '' },
        {
          label: words.block.layout,
          value: form.assemblies.length === 0 ? words.block.nothing : words.counts(counts.positions, counts.points),
        },
        { label: words.block.limits, value: words.block.withSource(counts.withSource, counts.limits) },
        { label: words.block.next, value: words.block.thenWhat, grow: true },
      ]}
    >
      <div ref={body} key={afresh}>
        <div className="form-parts">
          <CustomerPart
            form={form}
            customers={customers.value?.customers ?? []}
            fault={fault('customer.name')}
            onChange={set}
          />
          <MachinePart
            machine={form.machine}
            workTypes={settings.value?.workTypes.map(({ name }) => name) ?? []}
            fault={fault}
            onChange={(next) => set({ machine: { ...form.machine, ...next } })}
          />
          <MeterPart
            machine={form.machine}
            pullers={pullersOf(machines.value?.machines ?? [])}
            dial={form.dial}
            today={today}
            fault={fault}
            onMachine={(next) => set({ machine: { ...form.machine, ...next } })}
            onDial={(next) => set({ dial: { ...form.dial, ...next } })}
          />
        </div>
        <h2 className="assemblies-head">{words.assembly}</h2>
        {form.assemblies.map((assembly, i) => (
          <AssemblyPart
            key={assembly.id}
            assembly={assembly}
            path={`assemblies.${i}`}
            partClasses={classes.value?.classes.map(({ name }) => name) ?? []}
            remarks={remarks}
            onChange={(next) => set({ assemblies: form.assemblies.map((old) => (old.id === next.id ? next : old)) })}
            onDrop={() => set({ assemblies: form.assemblies.filter(({ id }) => id !== assembly.id) })}
          />
        ))}
        <KindKeys
          kinds={shop.value?.kinds ?? []}
          another={form.assemblies.length > 0}
          onKind={(kind) => set({ assemblies: [...form.assemblies, assemblyOfKind(kind, writing)] })}
          onByHand={() => set({ assemblies: [...form.assemblies, assemblyByHand(writing)] })}
        />
      </div>
    </Sheet>
  );
}

/** A refusal of the record as remarks at the form's own fields; none: it is about no field of the form. */
export function refused(fault: Fault | null, form: TakeInForm): (Remark & { expected?: string })[] {
  if (!fault) return [];
  const own = fault.path === undefined ? [] : [{ path: fault.path, expected: String(fault.facts.expected ?? '') }];
  const issues = fault.issues ?? own;
  return issues.map(({ path, expected }) => ({
    path: formPath(path, form),
    why: 'refused',
    facts: { expected: expected === '' ? faultText(fault).what : `${expected} was expected` },
  }));
}
