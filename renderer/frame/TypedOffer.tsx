import { copyText } from '#renderer/controls/CopyDetails.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { frameWords as words } from '#renderer/words/frameWords.ts';
import { letTypedGo, putTypedBack, useTypedText } from './typedText.ts';

/** Over a screen that broke and stands again: what had been typed on it, to be put back. */
export function TypedOffer({ at }: { at: string }) {
  const typed = useTypedText(at);
  if (typed.length === 0) return null;
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
