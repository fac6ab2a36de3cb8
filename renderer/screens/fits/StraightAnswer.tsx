import type { fitStraighten } from '#core/contract/fits.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { decimalFigure } from '#core/words/quantityText.ts';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { useWriting } from '#renderer/record.tsx';
import { kiloNewtons, tonneForce, fitsWords as words } from '#renderer/words/fitsWords.ts';
import { howKnownWords } from '#renderer/words/howKnownWords.ts';
import { Cautions } from './Cautions.tsx';

type Straight = ReplyOf<typeof fitStraighten>;

/** Closed with its reasons, or the force and how far it springs back; cautions either way. */
export function StraightAnswer({ of }: { of: Straight }) {
  return (
    <>
      {of.press ? <Forces press={of.press} yieldAbove={of.yieldAbove} /> : <Closed because={of.closedBecause} />}
      <Cautions {...of} />
    </>
  );
}

function Closed({ because }: { because: Straight['closedBecause'] }) {
  return (
    <section className="closed" role="note">
      <StruckBox />
      <div>
        <b>{words.closed}:</b> {because.map((reason) => words.because[reason]).join('; ')}. {words.replaceIt}
      </div>
    </section>
  );
}

function Forces({ press, yieldAbove }: { press: NonNullable<Straight['press']>; yieldAbove: Straight['yieldAbove'] }) {
  const writing = useWriting();
  const rows = [
    [words.straightRows.firstYield, press.firstYieldN],
    [words.straightRows.plastic, press.plasticN],
    [words.straightRows.press, press.pressForN],
  ] as const;
  const mm = (value: number) => decimalFigure(value, 1, writing);
  return (
    <>
      <table className="table press-table">
        <caption>{words.straightCaption}</caption>
        <thead>
          <tr>
            <td />
            <th className="figures">{words.straightHeads.kN}</th>
            <th className="figures">{words.straightHeads.tonnes}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([row, newtons]) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              <td className="figures">{kiloNewtons(newtons, writing)}</td>
              <td className="figures">{tonneForce(newtons, writing)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <b>{words.springNote(mm(press.springBackMm.low), mm(press.springBackMm.high))}</b>
      </p>
      {press.strain !== null && <p>{words.strain(decimalFigure(press.strain * 100, 1, writing))}</p>}
      <p>{words.goSlowly(kiloNewtons(press.firstYieldN, writing), kiloNewtons(press.pressForN, writing))}</p>
      <p className="second">
        {words.yieldNote(mm(yieldAbove.low), mm(yieldAbove.high))} ({howKnownWords[yieldAbove.howKnown]})
      </p>
    </>
  );
}
