import { columnLetter, exchangeWords as words } from '#renderer/words/exchangeWords.ts';
import {
  type ColumnForm,
  headsLeft,
  type SeenColumn,
  type SeenSheet,
  type SheetForm,
  withColumn,
} from './sheetForm.ts';

/** Which column of the sheet is which of ours: suggested, and a person's to change. */
export function ColumnTable({
  seen,
  form,
  onChange,
}: {
  seen: SeenSheet;
  form: SheetForm;
  onChange: (form: SheetForm) => void;
}) {
  const left = headsLeft(seen, form);
  return (
    <>
      <table className="table column-table">
        <caption className="said">{words.columnsCaption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.ours}</th>
            <th scope="col">{words.theirs}</th>
            <th scope="col">{words.unit}</th>
            <th scope="col">{words.holds}</th>
            <th scope="col">{words.how}</th>
          </tr>
        </thead>
        <tbody>
          {seen.columns.map((column, index) => {
            const chosen = form.columns[index];
            return chosen ? (
              <ColumnRow
                key={column.column}
                seen={seen}
                column={column}
                chosen={chosen}
                onChange={(changed) => onChange(withColumn(form, column.column, changed))}
              />
            ) : null;
          })}
        </tbody>
      </table>
      {left.length > 0 && <p className="second">{words.left(left)}</p>}
    </>
  );
}

type RowProps = {
  seen: SeenSheet;
  column: SeenColumn;
  chosen: ColumnForm;
  onChange: (changed: Partial<ColumnForm>) => void;
};

function ColumnRow({ seen, column, chosen, onChange }: RowProps) {
  const name = words.columns[column.column] ?? column.column;
  const head = typeof chosen.place === 'number' ? seen.heads[chosen.place] : undefined;
  const waits = column.needed && chosen.place === null;
  return (
    <tr className={waits ? 'waits' : chosen.place === null ? 'unused' : undefined}>
      <th scope="row">
        {name} {column.needed && <span className="second">{words.needed}</span>}
      </th>
      <td>
        <div className="field">
          <select
            aria-label={words.columnFor(name)}
            value={String(chosen.place ?? '')}
            onChange={({ target: { value } }) =>
              onChange({
                place: value === '' ? null : value === 'every-row' ? 'every-row' : Number(value),
                how: value === '' ? null : 'chosen',
              })
            }
          >
            <option value="">{words.none}</option>
            {seen.heads.map(({ place, head: text }) => (
              <option key={place} value={place}>
                {text || words.unnamed(columnLetter(place))}
              </option>
            ))}
            <option value="every-row">{words.everyRow}</option>
          </select>
          {chosen.place === 'every-row' && <EveryRow name={name} column={column} chosen={chosen} onChange={onChange} />}
        </div>
      </td>
      <td>
        <UnitCell name={name} column={column} chosen={chosen} onChange={onChange} />
      </td>
      <td className="samples">{head?.samples.join(' · ')}</td>
      <td className={chosen.how === 'near' ? 'near' : 'second'}>{chosen.how && words.howWords[chosen.how]}</td>
    </tr>
  );
}

type CellProps = Omit<RowProps, 'seen'> & { name: string };

function EveryRow({ name, column, chosen, onChange }: CellProps) {
  const label = words.everyRowWord(name);
  if (column.words.length === 0)
    return (
      <input
        aria-label={label}
        value={chosen.fixed}
        maxLength={120}
        onChange={({ target }) => onChange({ fixed: target.value })}
      />
    );
  return (
    <select aria-label={label} value={chosen.fixed} onChange={({ target }) => onChange({ fixed: target.value })}>
      <option value="" />
      {column.words.map((word) => (
        <option key={word} value={word}>
          {word}
        </option>
      ))}
    </select>
  );
}

/** Only lengths come in more than one unit. */
function UnitCell({ name, column, chosen, onChange }: CellProps) {
  if (column.unit !== 'mm' || chosen.place === null) return <>{column.unit}</>;
  return (
    <div className="field">
      <select
        aria-label={words.unitFor(name)}
        value={chosen.unit ?? 'mm'}
        onChange={({ target }) => onChange({ unit: target.value === 'in' ? 'in' : 'mm' })}
      >
        <option value="mm">mm</option>
        <option value="in">in</option>
      </select>
    </div>
  );
}
