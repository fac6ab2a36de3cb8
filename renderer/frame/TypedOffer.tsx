import { useIsFetching } from '@tanstack/react-query';
import { useEffect } from 'react';
import { copyText } from '#renderer/controls/CopyDetails.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { useRecord } from '#renderer/record.tsx';
import { frameWords as words } from '#renderer/words/frameWords.ts';
import { keepTypedOverReload, letStandingGo, letTypedGo, putTypedBack, useTypedText } from './typedText.ts';

/** Over a screen that broke or was loaded anew and stands again: what had been typed on it, to be put back. */
export function TypedOffer({ at }: { at: string }) {
  const { path } = useRecord();
  const typed = useTypedText(at);
  const stands = useIsFetching() === 0;
  useEffect(() => keepTypedOverReload(path ?? '', at), [path, at]);
  useEffect(() => {
    if (stands && typed.length > 0) letStandingGo(at);
  }, [stands, typed, at]);
  if (typed.length === 0 || !stands) return null;
  const lines = typed.map(({ label, text }) => words.typedLine(label, text));
  return (
    <Question
      fact={words.typedHead}
      then={
        <>
          {words.typedNext}
          <ul className="typed-lines">
            {lines.map((line, place) => (
              <li key={place}>{line}</li>
            ))}
          </ul>
        </>
      }
      keys={
        <>
          <Key first onPress={() => void putTypedBack(at)}>
            {words.typedPutBack}
          </Key>
          <Key onPress={() => copyText(lines.join('\n'))}>{words.typedCopy}</Key>
          <Key onPress={() => letTypedGo(at)}>{words.typedLetGo}</Key>
        </>
      }
    />
  );
}
