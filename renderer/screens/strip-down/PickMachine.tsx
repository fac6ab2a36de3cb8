import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { HoursNow } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText, hoursText } from '#core/words/quantityText.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { firstMatches } from '#renderer/controls/PickBox.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { OldSheetsKey } from '#renderer/screens/old-sheets/OldSheetsKey.tsx';
import { useMachineLines, useMachineNames } from '#renderer/useMachines.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';

/** First step of a strip-down: the machine, by typing part of it; arrows and Enter choose. */
export function PickMachine() {
  const [, goTo] = useLocation();
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const machines = useMachineNames();
  const found = firstMatches(
    (machines.value?.machines ?? []).map((machine) => ({
      ...machine,
      text: machine.name,
      second: `${machine.customer} ${machine.place} ${machine.serial}`,
    })),
    typed,
  );
  const lines = useMachineLines(machines.value ? found.map(({ machineId }) => machineId) : null).value?.lines ?? [];
  const lineOf = new Map(lines.map((line) => [line.machineId, line]));
  const lit = Math.min(at, found.length - 1);
  const open = (machineId: number) => goTo(`/strip-down/${machineId}`);

  if (machines.value?.machines.length === 0) {
    return (
      <Sheet title={words.title} bench>
        <Empty
          head={words.noMachines}
          keys={
            <>
              <Key first letter="N" onPress={() => goTo('/take-in')}>
                {words.takeIn}
              </Key>
              <OldSheetsKey />
            </>
          }
        >
          {words.noMachinesNext}
        </Empty>
      </Sheet>
    );
  }
  return (
    <Sheet title={words.title} sub={words.pick} bench actions={<OldSheetsKey />}>
      <NotYet of={machines} words={words.loadingMachines} />
      <search
        className="bench-find"
        onKeyDown={(event) => {
          const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
          if (by !== 0) {
            event.preventDefault();
            setAt(Math.max(0, Math.min(found.length - 1, lit + by)));
          }
          const chosen = found[lit];
          if (event.key === 'Enter' && chosen) open(chosen.machineId);
        }}
      >
        <TextField
          label={words.pickHint}
          value={typed}
          autoFocus
          onChange={(text) => {
            setTyped(text);
            setAt(0);
          }}
        />
      </search>
      <ul className="bench-machines">
        {found.map((machine, i) => (
          <li key={machine.machineId}>
            <Link href={`/strip-down/${machine.machineId}`} className={i === lit ? 'lit' : ''}>
              <b>{machine.name}</b>
              <span>
                {[machine.customer, lineOf.get(machine.machineId)?.assemblies.join(', ').toLowerCase()]
                  .filter(Boolean)
                  .join(' · ')}
              </span>
              <span className="read">
                <LastRead hours={lineOf.get(machine.machineId)?.hours} />
              </span>
            </Link>
          </li>
        ))}
        {machines.value && found.length === 0 && <li className="none">{words.nobodyFound}</li>}
      </ul>
    </Sheet>
  );
}

function LastRead({ hours }: { hours: HoursNow | undefined }) {
  if (!hours) return null;
  if (hours.readOn === null || hours.machineHoursRead === null) return words.neverRead;
  return <Figures>{`${hoursText(hours.machineHoursRead)}, ${words.lastRead(dayText(day(hours.readOn)))}`}</Figures>;
}
