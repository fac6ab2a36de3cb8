import type { ReactNode } from 'react';
import { Key } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { takeInWords as words } from '#renderer/words/takeInWords.ts';

/** What keeps the form back, counted, with a key to the first; each is said at its own field too. */
export function RemarksBox({ count, onFirst, children }: { count: number; onFirst: () => void; children?: ReactNode }) {
  if (count === 0) return <>{children}</>;
  return (
    <Question
      fact={words.remarksHead(count)}
      then={words.remarksSafe}
      keys={<Key onPress={onFirst}>{words.toFirst}</Key>}
    />
  );
}
