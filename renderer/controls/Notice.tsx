import type { ReactNode } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { detailsText } from '#renderer/words/detailsWords.ts';
import { type FaultSaid, faultText } from '#renderer/words/faultText.ts';
import { CopyDetails } from './CopyDetails.tsx';

/** A question: the fact first, then the choices as keys. It stands under the row it concerns and stops nothing. */
export function Question({ fact, then, keys }: { fact: ReactNode; then?: ReactNode; keys: ReactNode }) {
  return (
    <section className="question" aria-live="polite">
      <div className="question-words">
        <b>{fact}</b> {then}
      </div>
      <div className="keys">{keys}</div>
    </section>
  );
}

/** Something to know, with nothing to answer; `head` names it. */
export function Notice({
  head,
  children,
  keys,
  kind = 'plain',
}: {
  head: string;
  children?: ReactNode;
  keys?: ReactNode;
  kind?: 'plain' | 'waiting';
}) {
  return (
    <section className={`notice ${kind}`}>
      <h2>{head}</h2>
      {children && <div>{children}</div>}
      {keys && <div className="keys">{keys}</div>}
    </section>
  );
}

/** A fault: what happened, what is safe, what to try. Takes a fault of the door, or words of its own. */
export function FaultBox({ fault, said, keys }: { fault?: Fault; said?: FaultSaid; keys?: ReactNode }) {
  const words = said ?? (fault ? faultText(fault) : null);
  if (!words) return null;
  return (
    <section className="notice fault" role="alert">
      <h2>{words.what}</h2>
      <div>{[words.safe, words.next].filter(Boolean).join(' ')}</div>
      {(keys || fault?.code === 'failed') && (
        <div className="keys">
          {keys}
          {fault?.code === 'failed' && <CopyDetails details={detailsOf(fault)} />}
        </div>
      )}
    </section>
  );
}

const detailsOf = ({ facts }: Fault): string =>
  detailsText({ operation: String(facts.operation ?? ''), detail: String(facts.detail ?? '') }, new Date());

/** Nothing there yet: what like parts do, and the one thing to do next. */
export const Empty = ({ head, children, keys }: { head: string; children?: ReactNode; keys?: ReactNode }) => (
  <Notice head={head} keys={keys}>
    {children}
  </Notice>
);
