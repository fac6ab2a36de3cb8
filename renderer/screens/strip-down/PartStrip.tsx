import { useEffect, useRef } from 'react';
import type { Writing } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { questionText } from '#renderer/words/questionText.ts';
import { kindsFor, renewalWords as words } from '#renderer/words/renewalWords.ts';
import type { SheetRow } from './boxes.ts';
import { isRenewed, type Renewed, type RenewedHow } from './sheet.ts';
import type { Judged } from './useJudged.ts';

/** What was done to a part, under its row: what kind of renewal, which stations, what size, and packing put behind it. */
export function PartStrip({
  row,
  name,
  renewed,
  shimMm,
  asked,
  writing,
  asksFocus,
  onHow,
  onShim,
  onLeave,
}: {
  row: SheetRow;
  name: string;
  renewed: Renewed;
  shimMm: number | null;
  asked: Judged['renewalQuestions'];
  writing: Writing;
  /** somebody pressed its letter: the first control has the focus */
  asksFocus: boolean;
  onHow: (how: Partial<RenewedHow>) => void;
  onShim: (shimMm: number | null) => void;
  onLeave: () => void;
}) {
  const strip = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!asksFocus) return;
    strip.current?.querySelector<HTMLElement>('input')?.focus();
    strip.current?.scrollIntoView({ block: 'nearest' });
  }, [asksFocus]);
  const { how } = renewed;
  const done = isRenewed(renewed);
  const stations = row.stations.map(({ station }) => station).filter((station) => station !== '');
  const [question] = how.sure ? [] : asked;
  return (
    <section
      ref={strip}
      className="part-strip"
      aria-label={words.partAt(name)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        onLeave();
      }}
    >
      <Choice
        label={words.done}
        options={kindsFor(row, done)}
        value={done ? how.kind : 'nothing'}
        onChange={(kind) => kind !== 'nothing' && onHow({ kind, ...(kind === 'oversize' && { stations: [] }) })}
      />
      {done && stations.length > 1 && how.kind !== 'oversize' && (
        <Stations stations={stations} chosen={how.stations} onChange={(chosen) => onHow({ stations: chosen })} />
      )}
      {done && (
        <NumberField
          label={words.size[how.kind]}
          unit="mm"
          writing={writing}
          value={how.sizeMm}
          onChange={(sizeMm) => onHow({ sizeMm })}
          hint={words.sizeHint(how.kind)}
        />
      )}
      {done && how.kind === 'oversize' && (
        <Choice
          label={words.stamped}
          options={words.stampedChoices}
          value={how.stamped === null ? 'not-said' : how.stamped ? 'yes' : 'no'}
          onChange={(said) => onHow({ stamped: said === 'not-said' ? null : said === 'yes' })}
        />
      )}
      <NumberField
        label={words.shim}
        unit="mm"
        writing={writing}
        value={shimMm}
        onChange={onShim}
        hint={words.shimHint(row.measures)}
      />
      <div className="keys">
        <Key letter="Escape" onPress={onLeave}>
          {words.toBoxes}
        </Key>
      </div>
      {row.mustStayStandard && <p className="part-note">{words.mustStayStandard}</p>}
      {question && (
        <p className="part-note" role="status">
          <b>
            <Figures>{questionText(question.question, { writing, measures: row.measures }).fact}</Figures>
          </b>{' '}
          {words.sizeKeptOut} <Key onPress={() => onHow({ sure: true })}>{words.rightAsRead}</Key>
        </p>
      )}
    </section>
  );
}

/** None ticked: the whole part. */
function Stations({
  stations,
  chosen,
  onChange,
}: {
  stations: readonly string[];
  chosen: readonly string[];
  onChange: (chosen: string[]) => void;
}) {
  return (
    <fieldset className="part-stations">
      <legend>{words.stations}</legend>
      {stations.map((station) => (
        <label key={station}>
          <input
            type="checkbox"
            checked={chosen.includes(station)}
            onChange={(event) =>
              onChange(stations.filter((one) => (one === station ? event.target.checked : chosen.includes(one))))
            }
          />
          {station}
        </label>
      ))}
    </fieldset>
  );
}
