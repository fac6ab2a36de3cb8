import type { KeyboardEvent } from 'react';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';

export type SizeBoxProps = {
  /** "1 Slide strip, top front, front" */
  label: string;
  /** what stands small at the left: the last size, or what it is when new */
  reference: { said: string; shown: string; isNew: boolean };
  text: string;
  worst: boolean;
  questioned: boolean;
  /** why the text is no size; null: it is one, or empty */
  notASize: Parameters<typeof words.notASize>[0] | null;
  swapping: boolean;
  /** id of the question or remark under the row */
  describedBy: string | undefined;
  boxRef: (box: HTMLInputElement | null) => void;
  onText: (text: string) => void;
  onFocus: () => void;
  onLeave: () => void;
  onKey: (event: KeyboardEvent<HTMLInputElement>) => void;
};

/** One box of the grid: last time's size inside it, this time's large. The worst of a row is heavy and underlined. */
export function SizeBox(props: SizeBoxProps) {
  const state = [
    'size-box',
    props.worst && 'worst',
    props.questioned && 'questioned',
    props.notASize && 'not-a-size',
    props.swapping && 'swapping',
  ];
  return (
    <td className={state.filter(Boolean).join(' ')}>
      <span className={props.reference.isNew ? 'was new' : 'was'} aria-hidden="true">
        {props.reference.isNew && <small>{words.newSize}</small>}
        {props.reference.shown}
      </span>
      <input
        ref={props.boxRef}
        className="cell"
        value={props.text}
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        aria-label={words.boxLabel(props.label, props.worst ? words.blockWorst : '', props.reference.said)}
        aria-describedby={props.describedBy}
        aria-invalid={props.notASize || props.questioned ? true : undefined}
        onChange={(event) => props.onText(event.target.value)}
        onFocus={(event) => {
          event.target.select();
          props.onFocus();
        }}
        onBlur={props.onLeave}
        onKeyDown={props.onKey}
      />
    </td>
  );
}
