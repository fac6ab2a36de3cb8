import type { forecastSettingsRead } from '#core/contract/forecastSettings.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { useWriting } from '#renderer/record.tsx';
import { forecastSettingsWords as words } from '#renderer/words/forecastSettingsWords.ts';
import { isSoundType, type SettingsForm, typesForm } from './settingsForm.ts';

type Types = SettingsForm['workTypes'];

/** The shop's kinds of work, a row each, and how many times as fast parts wear in each. */
export function WorkTypes({
  form,
  tried,
  usual,
  source,
  onChange,
}: {
  form: SettingsForm;
  tried: boolean;
  usual: ReplyOf<typeof forecastSettingsRead>['usualWorkTypes'];
  source: string;
  onChange: (types: Types) => void;
}) {
  const writing = useWriting();
  const own = typesForm(usual, writing);
  const set = (row: number, next: Partial<Types[number]>) =>
    onChange(form.workTypes.map((type, i) => (i === row ? { ...type, ...next } : type)));
  return (
    <section className="form-part" aria-label={words.workTypes}>
      <h2>{words.workTypes}</h2>
      <p className="second">{`${words.workTypesHint} ${words.source}: ${source}.`}</p>
      <table className="table work-types">
        <caption className="said">{words.workTypes}</caption>
        <thead>
          <tr>
            <th scope="col">{words.workType}</th>
            <th scope="col" className="figures">
              {words.timesAsFast}
            </th>
            <th scope="col">
              <span className="said">{words.drop}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {form.workTypes.map((type, row) => {
            const sound = isSoundType(form, row);
            const box = (what: string, field: 'name' | 'timesText') => (
              <input
                className="cell"
                value={type[field]}
                maxLength={120}
                autoComplete="off"
                aria-label={words.rowOf(what, type.name || words.newKind)}
                aria-invalid={(tried && !sound) || undefined}
                onChange={(event) => set(row, { [field]: event.target.value })}
              />
            );
            return (
              <tr key={row}>
                <td>{box(words.workType, 'name')}</td>
                <td className="figures">{box(words.timesAsFast, 'timesText')}</td>
                <td className="row-key">
                  <Key onPress={() => onChange(form.workTypes.filter((_, i) => i !== row))}>
                    {words.drop}
                    <span className="said">{words.workTypeDrop(type.name)}</span>
                  </Key>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {tried && form.workTypes.some((_, row) => !isSoundType(form, row)) && (
        <p className="remark">{words.workTypeFault}</p>
      )}
      <div className="keys">
        <Key onPress={() => onChange([...form.workTypes, { name: '', timesText: '1' }])}>{words.workTypeAdd}</Key>
        {JSON.stringify(form.workTypes) !== JSON.stringify(own) && (
          <Key onPress={() => onChange(own)}>{words.workTypesBack}</Key>
        )}
      </div>
    </section>
  );
}
