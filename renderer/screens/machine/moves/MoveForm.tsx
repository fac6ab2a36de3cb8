import { useState } from 'react';
import { assemblyMove, assemblyMoveHalf } from '#core/contract/machine.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { PickBox, type PickOption } from '#renderer/controls/PickBox.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { moveWords as words } from '#renderer/words/moveWords.ts';
import {
  choicesOf,
  dialsAsked,
  type MoveForm as Form,
  goings,
  type Halves,
  halfThere,
  isWhole,
  moveRequest,
  type What,
} from './moveForm.ts';

/** Moves an assembly, or half of it: what, where to, when, by which dials; and what goes where, before it goes. */
export function MoveForm({ halves, onClose }: { halves: Halves; onClose: () => void }) {
  const writing = useWriting();
  const today = useToday();
  const machines = useMachineNames().value?.machines ?? [];
  const moveWhole = useDo(assemblyMove);
  const moveHalf = useDo(assemblyMoveHalf);
  const onShelf = halves.machineId === null;
  const [form, setForm] = useState<Form>({
    what: { is: 'whole' },
    to: null,
    toShelf: false,
    theirs: 'in-exchange',
    takenOn: today,
    dialHours: null,
    toDialHours: null,
  });
  const change = (next: Partial<Form>) => setForm((was) => ({ ...was, ...next }));
  const choices = choicesOf(halves);
  const nameOf = (machineId: number) => machines.find((machine) => machine.machineId === machineId)?.name ?? '';
  const { what } = form;
  const there = halfThere(halves, form);
  const dials = dialsAsked(halves, form);
  const where: PickOption[] =
    what.is === 'whole'
      ? machines
          .filter(({ machineId }) => machineId !== halves.machineId)
          .map(({ machineId, name, customer }) => ({ id: String(machineId), text: name, second: customer }))
      : halves.others.map(({ assemblyId, assembly, machine }) => ({
          id: String(assemblyId),
          text: machine ?? assembly,
          second: machine ? assembly : words.onShelf,
        }));
  const send = async () => {
    const { takenOn } = form;
    if (takenOn === null || !isWhole(form)) return;
    const request = moveRequest(halves, { ...form, takenOn });
    const done = 'whole' in request ? await moveWhole.run(request.whole) : await moveHalf.run(request.half);
    if (done) onClose();
  };
  return (
    <RowForm
      className="move-form"
      complete={isWhole(form)}
      doing={{ fault: moveWhole.fault ?? moveHalf.fault, busy: moveWhole.busy || moveHalf.busy }}
      send={words.move}
      onSend={send}
      onLeave={onClose}
      leave={words.leave}
      above={
        <>
          {choices.length > 1 ? (
            <Choice
              label={words.what}
              options={choices.map((choice, place) => ({ value: String(place), text: whatText(choice) }))}
              value={String(choices.findIndex((choice) => same(choice, what)))}
              onChange={(place) => change({ what: choices[Number(place)]!, to: null, toShelf: false })}
            />
          ) : (
            <p className="second">{words.noHalves}</p>
          )}
          {what.is !== 'shelved' && (
            <div className="fields">
              {!(onShelf && what.is === 'whole') && (
                <Choice
                  label={words.to}
                  options={[
                    { value: 'another', text: what.is === 'whole' ? words.another : words.otherAssembly },
                    { value: 'shelf', text: words.shelf },
                  ]}
                  value={form.toShelf ? 'shelf' : 'another'}
                  onChange={(to) => change({ toShelf: to === 'shelf', to: null })}
                />
              )}
              {!form.toShelf && (
                <PickBox
                  key={what.is}
                  label={what.is === 'whole' ? words.toMachine : words.toAssembly(what.half.group)}
                  options={where}
                  value={form.to === null ? null : String(form.to)}
                  onChange={(id) => change({ to: id === null ? null : Number(id) })}
                  opens="input"
                  {...(where.length === 0 && { hint: what.is === 'whole' ? words.noMachines : words.noOthers })}
                />
              )}
            </div>
          )}
          {there && what.is === 'half' && (
            <Choice
              label={words.theirs(there.group, nameOfTarget(halves, form.to))}
              options={[
                { value: 'in-exchange', text: words.inExchange },
                { value: 'shelf', text: words.theirsToShelf },
              ]}
              value={form.theirs}
              onChange={(theirs) => change({ theirs })}
            />
          )}
        </>
      }
      below={
        isWhole(form) && (
          <section className="going" aria-label={words.goesWhere} aria-live="polite">
            <b>{words.goesWhere}</b>
            <ul>
              {goings(halves, form, nameOf).map(({ group, items, from, to }) => (
                <li key={`${group} ${from}`}>{words.goes(words.the(group, items), from, to)}</li>
              ))}
            </ul>
            <p className="second">{words.note}</p>
          </section>
        )
      }
    >
      <DayField label={words.on} value={form.takenOn} onChange={(takenOn) => change({ takenOn })} today={today} />
      {dials.off !== null && (
        <NumberField
          label={words.offDial(halves.machine ?? '')}
          unit="h"
          writing={writing}
          value={form.dialHours}
          onChange={(dialHours) => change({ dialHours })}
          hint={words.dialHint}
        />
      )}
      {dials.on !== null && dials.on !== dials.off && (
        <NumberField
          label={words.offDial(nameOf(dials.on))}
          unit="h"
          writing={writing}
          value={form.toDialHours}
          onChange={(toDialHours) => change({ toDialHours })}
          hint={words.dialHint}
        />
      )}
    </RowForm>
  );
}

function whatText(what: What): string {
  if (what.is === 'whole') return words.whole;
  if (what.is === 'half') return words.half(what.half.group);
  return words.fromShelf(what.half.group, what.half.last.machine ?? what.half.last.assembly, what.half.since);
}

const same = (one: What, other: What): boolean =>
  one.is === 'whole' || other.is === 'whole'
    ? one.is === other.is
    : one.half.positions[0]?.positionId === other.half.positions[0]?.positionId;

function nameOfTarget({ others }: Halves, assemblyId: number | null): string {
  const target = others.find((other) => other.assemblyId === assemblyId);
  return target?.machine ?? target?.assembly ?? '';
}
