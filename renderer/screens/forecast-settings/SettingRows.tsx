import type { ForecastSetting } from '#core/contract/forecastSettings.ts';
import { settingName } from '#core/words/settingText.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { HelpMark } from '#renderer/help/HelpMark.tsx';
import { useWriting } from '#renderer/record.tsx';
import { valueText, forecastSettingsWords as words } from '#renderer/words/forecastSettingsWords.ts';
import type { HelpTopicId } from '#renderer/words/helpWords.ts';
import { readSetting } from './settingsForm.ts';

/** Settings of one sort, a row each: what it is, its value here, the program's own, and where that comes from. */
export function SettingRows({
  head,
  settings,
  texts,
  onChange,
  nameOf = settingName,
  help,
}: {
  head: string;
  settings: readonly ForecastSetting[];
  texts: Readonly<Record<string, string>>;
  onChange: (name: string, text: string) => void;
  /** what a setting is called */
  nameOf?: (name: string) => string;
  /** what is asked of such figures */
  help?: HelpTopicId;
}) {
  return (
    <section className="form-part" aria-label={head}>
      <h2>
        {head} {help && <HelpMark about={help} />}
      </h2>
      <Across>
        <table className="table setting-rows wide-table">
          <caption className="said">{head}</caption>
          <thead>
            <tr>
              <th scope="col">{words.setting}</th>
              <th scope="col" className="figures">
                {words.value}
              </th>
              <th scope="col">
                <span className="said">{words.unit}</span>
              </th>
              <th scope="col" className="figures">
                {words.usual}
              </th>
              <th scope="col">{words.bounds}</th>
              <th scope="col">{words.source}</th>
              <th scope="col">
                <span className="said">{words.back}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {settings.map((setting) => (
              <SettingRow
                key={setting.name}
                setting={setting}
                name={nameOf(setting.name)}
                text={texts[setting.name] ?? ''}
                onText={(text) => onChange(setting.name, text)}
              />
            ))}
          </tbody>
        </table>
      </Across>
    </section>
  );
}

function SettingRow({
  setting,
  name,
  text,
  onText,
}: {
  setting: ForecastSetting;
  name: string;
  text: string;
  onText: (text: string) => void;
}) {
  const writing = useWriting();
  const value = readSetting(setting, text);
  const isUsual = value === setting.usual;
  return (
    <tr className={isUsual ? undefined : 'set-otherwise'}>
      <th scope="row">
        {name}
        <span className="second">{setting.meaning}</span>
        {value === null && <span className="remark">{words.beyond(setting, writing)}</span>}
      </th>
      <td className="figures">
        <input
          className="cell"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-label={words.rowOf(words.value, name)}
          aria-invalid={value === null || undefined}
          onChange={(event) => onText(event.target.value)}
        />
      </td>
      <td className="second">{setting.unit}</td>
      <td className="figures">{valueText(setting.usual, writing)}</td>
      <td className="second">{words.between(setting, writing)}</td>
      <td className="second">{setting.source}</td>
      <td className="row-key">
        {!isUsual && (
          <Key onPress={() => onText(valueText(setting.usual, writing))}>
            {words.back}
            <span className="said">{words.backOf(name)}</span>
          </Key>
        )}
      </td>
    </tr>
  );
}
