import { type KeyboardEvent, type Ref, useId, useState } from 'react';
import { matches } from '#renderer/controls/PickBox.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';

export type DeskMachine = { machineId: number; name: string; customer: string; place: string; serial: string };

/** So many are shown at once; a longer name finds the rest. */
const MOST_SHOWN = 8;

/**
 * The machine a sheet is of, by typing part of its name: Enter takes the first that fits, arrows another. A name that is
 * not on record can be taken in.
 */
export function MachineBox({
  machines,
  picked,
  boxRef,
  onPick,
  onNew,
}: {
  machines: readonly DeskMachine[];
  picked: DeskMachine | null;
  boxRef: Ref<HTMLInputElement>;
  onPick: (machineId: number) => void;
  onNew: (name: string) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [at, setAt] = useState(0);
  const text = typed ?? picked?.name ?? '';
  const open = typed !== null && typed.trim() !== '';
  const found = open ? fitting(machines, typed) : [];
  const known = found.some(({ name }) => name.toLowerCase() === typed?.trim().toLowerCase());
  const lines = open ? found.length + (known ? 0 : 1) : 0;
  const lit = Math.min(at, lines - 1);
  const take = (line: number) => {
    const machine = found[line];
    if (machine) onPick(machine.machineId);
    else if (open) onNew(typed.trim());
    setTyped(null);
    setAt(0);
  };
  const onKey = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (by !== 0 && lines > 0) setAt(Math.max(0, Math.min(lines - 1, lit + by)));
    else if (event.key === 'Enter' && lines > 0 && !event.ctrlKey) take(lit);
    else if (event.key === 'Escape' && open) setTyped(null);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div className="field machine-box">
      <label htmlFor={id}>{words.machine}</label>
      <div className="field-box">
        <input
          ref={boxRef}
          id={id}
          role="combobox"
          aria-expanded={open}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          {...(lines > 0 && { 'aria-activedescendant': `${id}-${lit}` })}
          autoComplete="off"
          spellCheck={false}
          value={text}
          onChange={(event) => {
            setTyped(event.target.value);
            setAt(0);
          }}
          onFocus={(event) => event.target.select()}
          onBlur={() => setTyped(null)}
          onKeyDown={onKey}
        />
      </div>
      <div className="below">
        {picked ? [picked.customer, picked.place].filter(Boolean).join(', ') : words.machineHint}
      </div>
      <div
        role="listbox"
        id={`${id}-list`}
        aria-label={words.machinesFound}
        className="machine-list"
        hidden={lines === 0}
      >
        {found.map((machine, i) => (
          <MachineLine key={machine.machineId} id={`${id}-${i}`} lit={lit === i} onTake={() => take(i)}>
            {machine.name}
            <span className="second">
              {[machine.customer, machine.place, machine.serial].filter(Boolean).join(', ')}
            </span>
          </MachineLine>
        ))}
        {open && !known && (
          <MachineLine id={`${id}-${found.length}`} lit={lit === found.length} onTake={() => take(found.length)}>
            {words.takeInNew(typed.trim())}
          </MachineLine>
        )}
      </div>
    </div>
  );
}

function MachineLine({
  id,
  lit,
  onTake,
  children,
}: {
  id: string;
  lit: boolean;
  onTake: () => void;
  children: React.ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: the box above keeps the focus and names the lit line
    // biome-ignore lint/a11y/useKeyWithClickEvents: keys are those of the box above
    <div
      role="option"
      id={id}
      aria-selected={lit}
      className={lit ? 'lit' : ''}
      onMouseDown={(event) => event.preventDefault()}
      onClick={onTake}
    >
      {children}
    </div>
  );
}

/** Machines that fit what was typed; those whose name begins with it first. */
function fitting(machines: readonly DeskMachine[], typed: string): DeskMachine[] {
  const wanted = typed.trim().toLowerCase();
  const begins = (machine: DeskMachine) => (machine.name.toLowerCase().startsWith(wanted) ? 0 : 1);
  return machines
    .filter((machine) =>
      matches({ text: machine.name, second: `${machine.customer} ${machine.place} ${machine.serial}` }, wanted),
    )
    .sort((a, b) => begins(a) - begins(b) || a.name.localeCompare(b.name, 'en', { numeric: true }))
    .slice(0, MOST_SHOWN);
}
