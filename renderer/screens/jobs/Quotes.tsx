import { useState } from 'react';
import { type Rebuild, ratesRead, ratesSave, rebuildQuote } from '#core/contract/rebuild.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useWriting } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { priceText, jobWords as words } from '#renderer/words/jobWords.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

/** Quotes made, newest last, and the shop's own rates they go by. */
export function Quotes({ job, isOpen }: { job: Rebuild; isOpen: boolean }) {
  const writing = useWriting();
  const rates = useAsk(ratesRead, {});
  const quote = useDo(rebuildQuote);
  const [by] = useBy();
  const [changing, setChanging] = useState(false);
  if (!isOpen && job.quotes.length === 0) return null;
  const make = (kind: 'strip-and-report' | 'work') =>
    void quote.run({ rebuildId: job.rebuildId, kind, fixedPrice: null, by });
  const known = rates.value?.rates;
  return (
    <section>
      <h2>{words.quote}</h2>
      {job.quotes.map((one) => (
        <details key={`${one.kind} ${one.madeOn} ${one.price}`}>
          <summary>
            {words.quoted(
              words.quoteKinds[one.kind],
              dayText(day(one.madeOn)),
              priceText(one.price, one.currency, writing),
            )}
          </summary>
          <table className="table quote-lines">
            <tbody>
              {one.lines.map((line) => (
                <tr key={line.what}>
                  <td>{line.what === 'strip-and-report' ? words.quoteKinds['strip-and-report'] : line.what}</td>
                  <td className="figures nw">{priceText(line.price, one.currency, writing)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ))}
      {job.quotes.length > 0 && <p className="second">{words.noTax}</p>}
      {isOpen && rates.value && (known == null || changing) && (
        <Rates known={known ?? null} onDone={() => setChanging(false)} />
      )}
      {isOpen && known != null && !changing && (
        <Keys>
          <Key disabled={quote.busy} onPress={() => make('strip-and-report')}>
            {words.quoteStrip}
          </Key>
          <Key letter="Q" disabled={quote.busy || job.lines.length === 0} onPress={() => make('work')}>
            {words.quoteWork}
          </Key>
          <Key onPress={() => setChanging(true)}>{words.changeRates}</Key>
        </Keys>
      )}
      {quote.fault && <FaultBox fault={quote.fault} />}
    </section>
  );
}

type Known = { currency: string; hourPrice: number; stripAndReportPrice: number } | null;

function Rates({ known, onDone }: { known: Known; onDone: () => void }) {
  const save = useDo(ratesSave);
  const [by, setBy] = useBy();
  const [currency, setCurrency] = useState(known?.currency ?? '');
  const [hour, setHour] = useState(known ? String(known.hourPrice) : '');
  const [strip, setStrip] = useState(known ? String(known.stripAndReportPrice) : '');
  const [hourRead, stripRead] = [readNumber(hour, 'mm'), readNumber(strip, 'mm')];
  const complete = currency.trim() !== '' && hourRead.ok && stripRead.ok;
  const send = async () => {
    if (!hourRead.ok || !stripRead.ok) return;
    const rates = { currency, hourPrice: hourRead.value, stripAndReportPrice: stripRead.value };
    if (await save.run({ ...rates, by })) onDone();
  };
  return (
    <RowForm
      fact={known === null && words.noRates}
      complete={complete}
      doing={save}
      send={words.saveRates}
      onSend={send}
    >
      <TextField label={words.currency} value={currency} onChange={setCurrency} maxLength={10} />
      <FigureField label={words.hourPrice} reads="mm" unit={currency} text={hour} onText={setHour} />
      <FigureField label={words.stripPrice} reads="mm" unit={currency} text={strip} onText={setStrip} />
      <ByField label={words.by} value={by} onChange={setBy} />
    </RowForm>
  );
}
