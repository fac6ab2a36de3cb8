import type { KeyboardEvent, ReactNode } from 'react';
import { useAccelerator } from './useAccelerator.ts';

export type KeyProps = {
  children: ReactNode;
  onPress: () => void;
  /** printed on the key and pressed by it: a letter, "Enter", "/" ...; none: pressed by pointer, Tab and Enter only */
  letter?: string;
  /** the one that is meant: filled */
  first?: boolean;
  /** fills red: throws something away */
  red?: boolean;
  disabled?: boolean;
  type?: 'button' | 'submit';
  autoFocus?: boolean;
};

/** A button: what is done, in words, with its letter printed on it. 31 px in the office, 48 at the bench. */
export function Key({
  children,
  onPress,
  letter,
  first = false,
  red = false,
  disabled = false,
  type = 'button',
  autoFocus = false,
}: KeyProps) {
  useAccelerator(letter && !disabled ? letter : null, onPress);
  const className = ['key', first && 'first', red && 'red'].filter(Boolean).join(' ');
  return (
    <button
      className={className}
      onClick={(event) => {
        event.stopPropagation(); // the row it stands in is not pressed
        onPress();
      }}
      onKeyDown={pressOnce}
      disabled={disabled}
      type={type}
      // biome-ignore lint/a11y/noAutofocus: the key that is meant next, where a screen or a question has come up for it
      autoFocus={autoFocus}
      {...(letter && { 'aria-keyshortcuts': letter })}
    >
      {children}
      {letter && <Letter>{letter}</Letter>}
    </button>
  );
}

/** Enter and the space bar press it, nothing around it; held down they press once. */
function pressOnce(event: KeyboardEvent): void {
  if (!(event.key === 'Enter' || event.key === ' ') || event.altKey || event.ctrlKey || event.metaKey) return;
  event.stopPropagation();
  if (event.repeat) event.preventDefault();
}

/** A letter as printed on a key; also alone, in a line that explains keys. */
export const Letter = ({ children }: { children: string }) => (
  <span className="letter" aria-hidden="true">
    {children}
  </span>
);

/** A line of keys. */
export const Keys = ({ children }: { children: ReactNode }) => <div className="keys">{children}</div>;
