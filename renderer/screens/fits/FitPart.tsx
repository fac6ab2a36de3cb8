import type { fitRead } from '#core/contract/fits.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { decimalFigure, pointOf } from '#core/words/quantityText.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { useWriting } from '#renderer/record.tsx';
import type { Asked } from '#renderer/useAsk.ts';
import { deviationFigure, limitSizeFigure, fitsWords as words } from '#renderer/words/fitsWords.ts';
import { howKnownWords } from '#renderer/words/howKnownWords.ts';
import { useKept } from './useKept.ts';
import { ZonesPicture } from './ZonesPicture.tsx';

export type FitShown = ReplyOf<typeof fitRead>;

/** Size and fit in, limits and zones out. */
export function FitPart({ fit, onFit, asked }: { fit: string; onFit: (fit: string) => void; asked: Asked<FitShown> }) {
  const kept = useKept(asked.value, fit.trim() === '' || asked.fault !== null);
  return (
    <section className="form-part" id="fits-fit">
      <h2>{words.fitHead}</h2>
      <div className="fits-part">
        <div className="fits-form">
          <TextField label={words.fit} value={fit} onChange={onFit} hint={words.fitHint} maxLength={40} autoFocus />
          {kept && <ForRepair of={kept} onFit={onFit} />}
        </div>
        <div className="fits-answer" aria-live="polite">
          {asked.fault && <FaultBox fault={asked.fault} />}
          {!asked.fault && !kept && fit.trim() === '' && <Empty head={words.nothingYet}>{words.nothingYetNext}</Empty>}
          {kept && <Limits of={kept} />}
        </div>
        {kept && <ZonesPicture of={kept} />}
      </div>
    </section>
  );
}

/** A shop's usual fits at this size; pressing one takes it over. */
function ForRepair({ of, onFit }: { of: FitShown; onFit: (fit: string) => void }) {
  const writing = useWriting();
  const size = String(of.nominalMm).replace('.', pointOf(writing));
  return (
    <div className="for-repair">
      <p className="label">{words.forRepair}</p>
      <ul>
        {of.forRepair.map(({ use, pair, howKnown, source }) => (
          <li key={use}>
            <Key onPress={() => onFit(`${size} ${pair}`)}>{pair}</Key>
            <span title={source}>
              {words.uses[use] ?? use}
              <small className="second">{howKnownWords[howKnown]}</small>
            </span>
          </li>
        ))}
      </ul>
      <Besides of={of.besides} />
    </div>
  );
}

/** What a pair of hole and shaft cannot say. */
function Besides({ of: { pinsInPressedBush, wrappedBush, weldedBossOverMm } }: { of: FitShown['besides'] }) {
  const writing = useWriting();
  const mm = (value: number) => decimalFigure(value, 2, writing);
  const pins = (all: string[]) => all.join(words.besides.or);
  const lines = [
    { text: words.besides.pins(pins(pinsInPressedBush.pins)), ...pinsInPressedBush },
    { text: words.besides.wrapped(wrappedBush.seat, pins(wrappedBush.pins), wrappedBush.bore), ...wrappedBush },
    { text: words.besides.welded(mm(weldedBossOverMm.low), mm(weldedBossOverMm.high)), ...weldedBossOverMm },
  ];
  return (
    <ul className="besides">
      {lines.map(({ text, howKnown, source }) => (
        <li key={text} title={source}>
          {text} <small className="second">{howKnownWords[howKnown]}</small>
        </li>
      ))}
    </ul>
  );
}

function Limits({ of }: { of: FitShown }) {
  const writing = useWriting();
  const { kind, range, feel } = words.answer(of, of.feel, writing);
  return (
    <>
      <p className="fit-answer">
        <b>{kind}</b> {range}
      </p>
      <p className="fit-feel">
        <b>{feel}</b> <span className="second">{words.feelIs}</span>
      </p>
      <table className="table">
        <caption>{words.tableCaption}</caption>
        <thead>
          <tr>
            <td />
            <th className="figures">{words.heads.deviations}</th>
            <th className="figures">{words.heads.largest}</th>
            <th className="figures">{words.heads.smallest}</th>
          </tr>
        </thead>
        <tbody>
          {[of.hole, of.shaft].map((limits) => (
            <tr key={limits.of}>
              <th scope="row">
                {words.parts[limits.of]} {words.nominal(String(limits.nominalMm).replace('.', pointOf(writing)))}{' '}
                {limits.toleranceClass}
              </th>
              <td className="figures">
                {deviationFigure(limits.upperDeviationUm, writing)}
                <br />
                {deviationFigure(limits.lowerDeviationUm, writing)}
              </td>
              <td className="figures size">{limitSizeFigure(limits.largestMm, writing)}</td>
              <td className="figures size">{limitSizeFigure(limits.smallestMm, writing)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
