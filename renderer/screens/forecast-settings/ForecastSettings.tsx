import { useState } from 'react';
import { forecastSettingsRead, forecastSettingsSave, forecastSettingsTry } from '#core/contract/forecastSettings.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { settingGroups } from '#core/words/settingText.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { fieldWords } from '#renderer/words/fieldWords.ts';
import { forecastSettingsWords as words } from '#renderer/words/forecastSettingsWords.ts';
import { useFormKeys } from '../take-in/useFormKeys.ts';
import { SettingRows } from './SettingRows.tsx';
import { type SettingsAsk, type SettingsForm, settingsAsk, settingsForm } from './settingsForm.ts';
import { WorkTypes } from './WorkTypes.tsx';
import './forecast-settings.css';

/** How the forecast works: every figure it starts from, its source, and what the shop has set otherwise. */
export default function ForecastSettings() {
  const read = useAsk(forecastSettingsRead, {});
  if (read.value) return <OfShop key={JSON.stringify(read.value)} read={read.value} />;
  return <NotYetSheet title={words.title} sub={words.sub} of={read} words={words.loading} />;
}

function OfShop({ read }: { read: ReplyOf<typeof forecastSettingsRead> }) {
  const writing = useWriting();
  const [form, setForm] = useState(() => settingsForm(read, writing));
  const [tried, setTried] = useState(false);
  const [trying, setTrying] = useState<SettingsAsk | null>(null);
  const ask = settingsAsk(form, read.settings);
  const unsaved = JSON.stringify(ask) !== JSON.stringify(settingsAsk(settingsForm(read, writing), read.settings));
  const set = (next: Partial<SettingsForm>) => {
    setForm({ ...form, ...next });
    setTrying(null);
  };
  const see = () => {
    setTried(true);
    if (ask && unsaved) setTrying(ask);
  };
  useFormKeys(see);
  const changed = Object.keys(ask?.changed ?? {}).length;
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      actions={
        <Key first disabled={!unsaved || trying !== null} onPress={see}>
          {words.see}
          <Letter>{words.seeKeys}</Letter>
        </Key>
      }
      banner={trying && <Confirm asked={trying} onLeave={() => setTrying(null)} />}
      block={[
        { label: words.block.changed, value: words.block.changedIs(changed) },
        { label: words.block.kinds, value: form.workTypes.map(({ name }) => name).join(', ') },
        { label: words.block.state, value: unsaved ? words.block.unsaved : words.block.asSaved, grow: true },
      ]}
    >
      <div className="forecast-settings">
        <StaysInMm why={fieldWords.recordInMm} />
        <WorkTypes
          form={form}
          tried={tried}
          usual={read.usualWorkTypes}
          source={read.workTypesSource}
          onChange={(workTypes) => set({ workTypes })}
        />
        {settingGroups.map(({ head, names }, place) => (
          <SettingRows
            key={head}
            head={head}
            {...(place === 0 && { help: 'setting' })}
            settings={names.flatMap((name) => read.settings.find((setting) => setting.name === name) ?? [])}
            texts={form.texts}
            onChange={(name, text) => set({ texts: { ...form.texts, [name]: text } })}
          />
        ))}
      </div>
    </Sheet>
  );
}

/** How many forecasts would move, before anything is saved. */
function Confirm({ asked, onLeave }: { asked: SettingsAsk; onLeave: () => void }) {
  const moved = useAsk(forecastSettingsTry, asked);
  const save = useDo(forecastSettingsSave);
  if (moved.fault) return <FaultBox fault={moved.fault} keys={<Key onPress={onLeave}>{words.leave}</Key>} />;
  if (!moved.value) return <FillingRule words={words.trying} />;
  return (
    <>
      {save.fault && <FaultBox fault={save.fault} />}
      <Question
        fact={words.moved(moved.value)}
        then={words.most(moved.value)}
        keys={
          <>
            <Key first disabled={save.busy} onPress={() => void save.run({ ...asked, reason: '' }).then(onLeave)}>
              {words.save}
            </Key>
            <Key onPress={onLeave}>{words.leave}</Key>
          </>
        }
      />
    </>
  );
}
