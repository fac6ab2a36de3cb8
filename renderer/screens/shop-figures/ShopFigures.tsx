import { useState } from 'react';
import { shopFiguresRead, shopFiguresSave } from '#core/contract/shopFigures.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { useWriting } from '#renderer/record.tsx';
import { SettingRows } from '#renderer/screens/forecast-settings/SettingRows.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useFormKeys } from '#renderer/screens/take-in/useFormKeys.ts';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import {
  knownText,
  shopFigureMeaning,
  shopFigureName,
  shopFigureWords as words,
} from '#renderer/words/shopFigureWords.ts';
import {
  barsText,
  EMPTY_ROW,
  type FiguresForm,
  type FiguresRead,
  figuresAsk,
  figuresForm,
  type RackRow,
  readBars,
  readRow,
} from './figuresForm.ts';
import './shop-figures.css';

const GROUPS: readonly { head: string; names: readonly string[] }[] = [
  { head: words.groups.bores, names: ['oversizeStepMm', 'oversizesAtMost', 'bushStepMm', 'cleanUpASideMm', 'roomC'] },
  {
    head: words.groups.standing,
    names: [
      ...['bushWallLeastMm', 'bushWallShareOfBore', 'bossWallLeastMm', 'bossWallShareOfBore', 'endLigamentShareOfBore'],
    ],
  },
  {
    head: words.groups.bars,
    names: ['sawKerfMm', 'sawTrimMm', 'barLengthMm', 'keepFromMm', 'turnedOffMm', 'facedEachEndMm'],
  },
  { head: words.groups.slides, names: ['slidePlayMm', 'stripEvenWithinMm', 'overScrewHeadsMm'] },
];

/** What the shop goes by in its repairs: every default with how it is known, the bars it can get, and what lies on its rack. */
export default function ShopFigures() {
  const read = useAsk(shopFiguresRead, {});
  if (read.value) return <OfShop key={JSON.stringify(read.value)} read={read.value} />;
  return <NotYetSheet title={words.title} sub={words.sub} of={read} words={words.loading} />;
}

function OfShop({ read }: { read: FiguresRead }) {
  const writing = useWriting();
  const [form, setForm] = useState(() => figuresForm(read, writing));
  const [by, setBy] = useBy();
  const save = useDo(shopFiguresSave);
  const ask = figuresAsk(form, read.figures);
  const unsaved = JSON.stringify(ask) !== JSON.stringify(figuresAsk(figuresForm(read, writing), read.figures));
  const send = async () => {
    if (ask && unsaved) await save.run({ ...ask, by });
  };
  useFormKeys(() => void send());
  const set = (next: Partial<FiguresForm>) => setForm({ ...form, ...next });
  const rowsOf = (head: string, names: readonly string[]) => (
    <SettingRows
      key={head}
      head={head}
      nameOf={shopFigureName}
      settings={names.flatMap((name) => {
        const figure = read.figures.find((one) => one.name === name);
        return figure ? [{ ...figure, meaning: shopFigureMeaning(name), source: knownText(figure) }] : [];
      })}
      texts={form.texts}
      onChange={(name, text) => set({ texts: { ...form.texts, [name]: text } })}
    />
  );
  const hours = read.figures.filter(({ unit }) => unit === 'h').map(({ name }) => name);
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      actions={
        <>
          <ByField label={words.by} value={by} onChange={setBy} />
          <Key first disabled={save.busy || !unsaved || !ask} onPress={() => void send()}>
            {words.save}
            <Letter>{words.saveKeys}</Letter>
          </Key>
        </>
      }
      banner={save.fault && <FaultBox fault={save.fault} />}
      block={[
        { label: words.block.changed, value: words.changedIs(Object.keys(ask?.changed ?? {}).length) },
        { label: words.block.rack, value: words.rackIs(form.rack.length) },
        { label: words.block.state, value: unsaved ? words.block.unsaved : words.block.asSaved, grow: true },
      ]}
    >
      <div className="forecast-settings">
        <StaysInMm />
        {GROUPS.slice(0, 3).map(({ head, names }) => rowsOf(head, names))}
        <Bars form={form} read={read} set={set} />
        {GROUPS.slice(3).map(({ head, names }) => rowsOf(head, names))}
        {rowsOf(words.groups.hours, hours)}
      </div>
    </Sheet>
  );
}

type PartProps = { form: FiguresForm; set: (next: Partial<FiguresForm>) => void };

/** Round bars to be had, and what lies on the rack. */
function Bars({ form, read, set }: PartProps & { read: FiguresRead }) {
  const usual = barsText(read.usualRoundBars.barsMm);
  return (
    <section className="form-part bars" aria-label={words.rack}>
      <h2>{words.roundBars}</h2>
      <TextField
        label={words.roundBarsHint}
        value={form.barsText}
        onChange={(text) => set({ barsText: text })}
        lines={2}
        hint={form.barsText === usual ? knownText(read.usualRoundBars) : words.own}
        fault={readBars(form.barsText) ? null : words.roundBarsFault}
        maxLength={1500}
      />
      {form.barsText !== usual && (
        <Keys>
          <Key onPress={() => set({ barsText: usual })}>{words.roundBarsUsual}</Key>
        </Keys>
      )}
      <h2>{words.rack}</h2>
      <p className="second">{form.rack.length === 0 ? words.rackNone : words.rackHint}</p>
      {form.rack.map((row, place) => (
        <RackFields
          key={place}
          row={row}
          onChange={(next) => set({ rack: form.rack.with(place, { ...row, ...next }) })}
          onTakeOut={() => set({ rack: form.rack.toSpliced(place, 1) })}
        />
      ))}
      {form.rack.some((row) => readRow(row) === null) && <p className="remark">{words.rackFault}</p>}
      <Keys>
        <Key onPress={() => set({ rack: [...form.rack, EMPTY_ROW] })}>{words.addBars}</Key>
      </Keys>
    </section>
  );
}

function RackFields({
  row,
  onChange,
  onTakeOut,
}: {
  row: RackRow;
  onChange: (next: Partial<RackRow>) => void;
  onTakeOut: () => void;
}) {
  return (
    <div className="fields rack-row">
      <TextField
        label={words.bar}
        value={row.bar}
        onChange={(bar) => onChange({ bar })}
        hint={words.barHint}
        maxLength={120}
      />
      <FigureField
        label={words.length}
        unit="mm"
        reads="mm"
        text={row.lengthText}
        onText={(lengthText) => onChange({ lengthText })}
      />
      <FigureField
        label={words.count}
        reads="mm"
        text={row.countText}
        onText={(countText) => onChange({ countText })}
      />
      <Key onPress={onTakeOut}>
        {words.takeOut}
        <span className="said">{words.takeOutOf(row.bar)}</span>
      </Key>
    </div>
  );
}
