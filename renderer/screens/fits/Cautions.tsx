import type { fitPress } from '#core/contract/fits.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { fitsWords as words } from '#renderer/words/fitsWords.ts';
import { howKnownWords } from '#renderer/words/howKnownWords.ts';

type Shown = Pick<ReplyOf<typeof fitPress>, 'cautions' | 'prevail'>;

/** What can hurt someone at this work, where the rule stands and how it is known. */
export function Cautions({ cautions, prevail }: Shown) {
  if (cautions.length === 0) return null;
  return (
    <section className="cautions">
      <h3>{words.cautions}</h3>
      <ul>
        {cautions.map(({ id, text, references, howKnown }) => (
          <li key={id}>
            {text}{' '}
            <small className="second">
              {references}; {howKnownWords[howKnown]}
            </small>
          </li>
        ))}
      </ul>
      <p>{prevail}</p>
    </section>
  );
}
