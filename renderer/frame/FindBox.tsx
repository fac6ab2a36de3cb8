import { memo, useEffect, useRef, useState } from 'react';
import { ComboBox, Input, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { useLocation } from 'wouter';
import { navigate } from 'wouter/use-hash-location';
import { Letter } from '#renderer/controls/Key.tsx';
import { firstMatches } from '#renderer/controls/PickBox.tsx';
import { useAccelerator } from '#renderer/controls/useAccelerator.ts';
import { StopMark } from '#renderer/screens/machine/StopBanner.tsx';
import { useMachineNames } from '#renderer/useMachines.ts';
import { shared } from '#renderer/words/english.ts';
import { fieldWords } from '#renderer/words/fieldWords.ts';
import { type TakenFind, useTakenFind } from './findFilter.ts';

type Found = { id: string; text: string; second: string };

/**
 * Finds a machine by any part of its name, farm or serial. Over the list of machines it narrows that list. It stands in the frame
 * and is not drawn anew as screens come and go.
 */
export const FindBox = memo(function FindBox() {
  const taken = useTakenFind();
  return taken ? <NarrowingBox taken={taken} /> : <GoingBox />;
});

/** Another screen was gone to: what was looked for is found, or given up. By itself, so that the box hears of nothing else. */
function Left({ onLeft }: { onLeft: () => void }) {
  const [here] = useLocation();
  useEffect(onLeft, [here]);
  return null;
}

function NarrowingBox({ taken }: { taken: TakenFind }) {
  const box = useRef<HTMLInputElement>(null);
  useAccelerator('/', () => box.current?.focus());
  return (
    <div className="find" data-finds>
      <input
        ref={box}
        type="search"
        aria-label={shared.find}
        placeholder={shared.find}
        value={taken.text}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => taken.setText(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') taken.keys.enter();
          else if (event.key === 'Escape') taken.setText('');
          else if (event.key !== 'ArrowDown') return;
          event.preventDefault();
          if (event.key !== 'Enter') box.current?.blur();
          if (event.key === 'ArrowDown') taken.keys.down();
        }}
      />
      <Letter>/</Letter>
    </div>
  );
}

/** Enter goes to the machine found. */
function GoingBox() {
  const [typed, setTyped] = useState('');
  const box = useRef<HTMLInputElement>(null);
  useAccelerator('/', () => box.current?.focus());
  const [looking, setLooking] = useState(false);
  const machines = useMachineNames(looking);
  const all: Found[] = (machines.value?.machines ?? []).map((machine) => ({
    id: String(machine.machineId),
    text: machine.name,
    second: [machine.customer, machine.place, machine.serial].filter(Boolean).join(', '),
  }));
  return (
    <ComboBox
      className="find"
      data-finds
      aria-label={shared.find}
      items={typed.trim() === '' ? [] : firstMatches(all, typed)}
      inputValue={typed}
      onInputChange={setTyped}
      onFocus={() => setLooking(true)}
      selectedKey={null}
      allowsEmptyCollection={typed.trim() !== ''}
      onSelectionChange={(key) => {
        if (key === null) return;
        setTyped('');
        box.current?.blur();
        navigate(`/machine/${key}`);
      }}
    >
      <Input
        ref={box}
        placeholder={shared.find}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          setTyped('');
          box.current?.blur();
        }}
      />
      <Letter>/</Letter>
      <Left onLeft={() => setTyped('')} />
      <Popover className="pick-list" offset={2}>
        <ListBox
          className="pick-options"
          renderEmptyState={() => <div className="pick-none">{fieldWords.nothingFound}</div>}
        >
          {(found: Found) => (
            <ListBoxItem id={found.id} textValue={found.text} className="pick-option">
              {found.text}
              <StopMark machineId={Number(found.id)} />
              <span className="second">{found.second}</span>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
