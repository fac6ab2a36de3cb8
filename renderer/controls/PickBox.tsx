import { useState } from 'react';
import { Button, ComboBox, Input, Label, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { fieldWords } from '#renderer/words/fieldWords.ts';

export type PickOption = { id: string; text: string; second?: string };

export type PickBoxProps = {
  label: string;
  options: readonly PickOption[];
  /** id of the picked one; null: none */
  value: string | null;
  onChange: (id: string | null) => void;
  /** a name that is not in the list is taken as typed; called as it is typed */
  onOther?: (typed: string) => void;
  hint?: string;
  autoFocus?: boolean;
  /** the list opens as soon as the box has the focus, or only once something is typed: where it would cover a form */
  opens?: 'focus' | 'input';
};

/** One of many, by typing part of its name. */
export function PickBox({
  label,
  options,
  value,
  onChange,
  onOther,
  hint,
  autoFocus = false,
  opens = 'focus',
}: PickBoxProps) {
  const picked = options.find((option) => option.id === value);
  const [typed, setTyped] = useState(picked?.text ?? '');
  const [last, setLast] = useState(value);
  if (value !== last) {
    setLast(value);
    if (picked) setTyped(picked.text);
  }
  const shown = firstMatches(options, typed === picked?.text ? '' : typed);
  return (
    <ComboBox
      className="field pick"
      items={shown}
      inputValue={typed}
      selectedKey={value}
      allowsCustomValue={onOther !== undefined}
      allowsEmptyCollection
      menuTrigger={opens}
      onInputChange={(text) => {
        setTyped(text);
        if (text === '') onChange(null);
        onOther?.(text);
      }}
      onSelectionChange={(key) => {
        const option = options.find((candidate) => candidate.id === key);
        if (option) setTyped(option.text);
        if (option || onOther === undefined) onChange(option?.id ?? null);
      }}
    >
      <Label>{label}</Label>
      <div className="field-box">
        <Input autoFocus={autoFocus} />
        <Button className="pick-open" aria-label={fieldWords.choose}>
          <svg width="12" height="8" aria-hidden="true">
            <path d="M1 1L6 7L11 1" fill="none" stroke="currentColor" strokeWidth="1.6" />
          </svg>
        </Button>
      </div>
      <div className="below">{hint}</div>
      <Popover className="pick-list" offset={0}>
        <ListBox
          className="pick-options"
          renderEmptyState={() => <div className="pick-none">{fieldWords.nothingFound}</div>}
        >
          {(option: PickOption) => (
            <ListBoxItem id={option.id} textValue={option.text} className="pick-option">
              {option.text}
              {option.second && <span className="second">{option.second}</span>}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

/** A list is read through, not scrolled through: who does not see it among so many types more of its name. */
const MOST_SHOWN = 60;

/** The first of those that match, as many as are shown. */
export function firstMatches<T extends { text: string; second?: string }>(options: readonly T[], typed: string): T[] {
  const found: T[] = [];
  for (const option of options) {
    if (found.length === MOST_SHOWN) break;
    if (matches(option, typed.trim())) found.push(option);
  }
  return found;
}

/** Every word typed stands somewhere in the name or its second line. */
export const matches = (option: { text: string; second?: string }, typed: string): boolean => {
  const hay = `${option.text} ${option.second ?? ''}`.toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((word) => hay.includes(word));
};
