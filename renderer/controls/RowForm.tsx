import type { ReactNode } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { Key, Keys } from './Key.tsx';
import { FaultBox } from './Notice.tsx';

/** A form under the row it concerns: the fact, its boxes, what was refused, and the keys. Enter sends it once it is complete. */
export function RowForm({
  className,
  fact,
  above,
  children,
  below,
  complete,
  doing,
  send,
  onSend,
  red = false,
  meant = 'send',
  keys,
  onLeave,
  leave = frameWords.leave,
}: {
  className?: string;
  /** what it is about */
  fact?: ReactNode;
  /** what comes before its boxes and needs the whole width */
  above?: ReactNode;
  /** its boxes, side by side */
  children?: ReactNode;
  /** what needs the whole width */
  below?: ReactNode;
  /** nothing that must be said is missing */
  complete: boolean;
  doing: { fault: Fault | null; busy: boolean };
  /** words on the key that sends it */
  send: string;
  onSend: () => unknown;
  /** it takes something away */
  red?: boolean;
  /** the key that is meant: leaving, where what it does cannot be taken back; none beside another form's */
  meant?: 'send' | 'leave' | 'neither';
  /** between the key that sends and the one that leaves */
  keys?: ReactNode;
  /** absent: it stays open */
  onLeave?: () => void;
  leave?: string;
}) {
  return (
    <form
      className={className ? `row-form ${className}` : 'row-form'}
      onSubmit={(event) => {
        event.preventDefault();
        if (complete && !doing.busy) onSend();
      }}
    >
      {fact && <p>{fact}</p>}
      {above}
      {children && <div className="fields">{children}</div>}
      {below}
      {doing.fault && <FaultBox fault={doing.fault} />}
      <Keys>
        <Key first={meant === 'send'} red={red} type="submit" disabled={!complete || doing.busy} onPress={() => {}}>
          {send}
        </Key>
        {keys}
        {onLeave && (
          <Key first={meant === 'leave'} letter="Escape" onPress={onLeave}>
            {leave}
          </Key>
        )}
      </Keys>
    </form>
  );
}
