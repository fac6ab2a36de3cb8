import { Fragment, type ReactNode, useState } from 'react';
import { useLocation } from 'wouter';
import type { ReplyOf } from '#core/contract/operation.ts';
import { classesList } from '#core/contract/partClass.ts';
import { shopRead, shopSave } from '#core/contract/shop.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { useRecord } from '#renderer/record.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { fitsWords } from '#renderer/words/fitsWords.ts';
import { forecastSettingsWords } from '#renderer/words/forecastSettingsWords.ts';
import { historyWords } from '#renderer/words/historyWords.ts';
import { shopFigureWords } from '#renderer/words/shopFigureWords.ts';
import { shopWords as words } from '#renderer/words/shopWords.ts';
import { FigureField } from '../take-in/FigureField.tsx';
import { useFormKeys } from '../take-in/useFormKeys.ts';
import { Fitters } from './Fitters.tsx';
import { Gauges } from './Gauges.tsx';
import { Kinds } from './Kinds.tsx';
import { Season } from './Season.tsx';
import { type ShopField, type ShopForm, shopForm, shopSettings } from './shopForm.ts';
import './shop.css';

/** Shop: head, winter, season, fitters, gauges, assembly kinds. */
export default function Shop() {
  const shop = useAsk(shopRead, {});
  if (shop.value) return <OfShop shop={shop.value} />;
  return <NotYetSheet title={words.title} sub={words.sub} of={shop} words={words.loading} />;
}

function OfShop({ shop }: { shop: ReplyOf<typeof shopRead> }) {
  const { path } = useRecord();
  const [, goTo] = useLocation();
  const classes = useAsk(classesList, {});
  const save = useDo(shopSave);
  const [form, setForm] = useState(() => shopForm(shop.settings));
  const [tried, setTried] = useState(false);
  const { settings, remarks } = shopSettings(form);
  // as the form would give it back untouched: shares of the year are shown rounded
  const unsaved = JSON.stringify(settings) !== JSON.stringify(shopSettings(shopForm(shop.settings)).settings);
  const set = (next: Partial<ShopForm>) => {
    setForm({ ...form, ...next });
    save.clear();
  };
  const send = async () => {
    setTried(true);
    if (settings && (await save.run(settings))) setForm(shopForm(settings));
  };
  useFormKeys(() => void send());
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      actions={
        <Key first disabled={save.busy || !unsaved} onPress={() => void send()}>
          {words.save}
          <Letter>{words.saveKeys}</Letter>
        </Key>
      }
      banner={save.fault && <FaultBox fault={save.fault} />}
      block={[
        { label: words.block.record, value: path?.split(/[\\/]/).at(-1) ?? '' },
        {
          label: words.block.winter,
          value: words.block.winterIs(form.winterFromText, form.winterToText, form.winterHoursText),
        },
        { label: words.block.decimals, value: words.decimalMarks[form.decimalMark] },
        { label: words.block.state, value: unsaved ? words.unsaved : words.saved, grow: true },
      ]}
    >
      <div className="shop">
        <Settings form={form} fault={(field) => tried && remarks.has(field)} onChange={set} />
        <div className="shop-half">
          <Part head={words.parts.fitters}>
            <Fitters fitters={shop.fitters} />
          </Part>
          <Part head={words.parts.further}>
            <div className="key-lines">
              {FURTHER.map(({ at, key, what }) => (
                <Fragment key={at}>
                  <Key onPress={() => goTo(at)}>{key}</Key>
                  <p className="second">{what}</p>
                </Fragment>
              ))}
            </div>
          </Part>
        </div>
        <Part head={words.parts.gauges}>
          <Gauges gauges={shop.gauges} />
        </Part>
        <Part head={words.parts.kinds}>
          <Kinds kinds={shop.kinds} partClasses={classes.value?.classes.map(({ name }) => name) ?? []} />
        </Part>
      </div>
    </Sheet>
  );
}

/** Screens of the shop's own that have no tab. */
const FURTHER = [
  { at: '/start', key: words.recordOpen, what: words.recordWhat },
  { at: '/history', key: historyWords.key, what: historyWords.sub },
  { at: '/forecast-settings', key: forecastSettingsWords.key, what: forecastSettingsWords.keyWhat },
  { at: '/shop-figures', key: shopFigureWords.key, what: shopFigureWords.keyWhat },
  { at: '/fits', key: fitsWords.key, what: fitsWords.keySub },
];

const MARKS = (['.', ','] as const).map((value) => ({ value, text: words.decimalMarks[value] }));
const LENGTHS = (['mm', 'inch'] as const).map((value) => ({ value, text: words.lengthUnits[value] }));
const THEMES = (['light', 'dark', 'system'] as const).map((value) => ({ value, text: words.themes[value] }));

function Settings({
  form,
  fault,
  onChange,
}: {
  form: ShopForm;
  fault: (field: ShopField) => boolean;
  onChange: (next: Partial<ShopForm>) => void;
}) {
  return (
    <>
      <div className="shop-half">
        <Part head={words.parts.head}>
          <TextField
            label={words.name}
            value={form.name}
            onChange={(name) => onChange({ name })}
            hint={words.nameHint}
            maxLength={120}
          />
          <TextField
            label={words.headLines}
            value={form.headText}
            onChange={(headText) => onChange({ headText })}
            lines={3}
            hint={words.headLinesHint}
            fault={fault('headText') ? words.headLinesHint : null}
            maxLength={500}
          />
          <div className="pair">
            <TextField
              label={words.phone}
              value={form.phone}
              onChange={(phone) => onChange({ phone })}
              maxLength={60}
            />
            <TextField
              label={words.email}
              value={form.email}
              onChange={(email) => onChange({ email })}
              maxLength={200}
            />
          </div>
        </Part>
        <Part head={words.parts.watch}>
          <TextField
            label={words.watchHint}
            value={form.watchText}
            onChange={(watchText) => onChange({ watchText })}
            lines={7}
            fault={fault('watchText') ? words.watchHint : null}
            maxLength={1700}
          />
        </Part>
      </div>
      <div className="shop-half">
        <Part head={words.parts.winter}>
          <div className="triple">
            <TextField
              label={words.winterFrom}
              value={form.winterFromText}
              onChange={(winterFromText) => onChange({ winterFromText })}
              hint={words.winterHint}
              fault={fault('winterFromText') ? words.winterFault : null}
            />
            <TextField
              label={words.winterTo}
              value={form.winterToText}
              onChange={(winterToText) => onChange({ winterToText })}
              fault={fault('winterToText') ? words.winterFault : null}
            />
            <FigureField
              label={words.hoursPerWeek}
              unit="h"
              text={form.winterHoursText}
              onText={(winterHoursText) => onChange({ winterHoursText })}
              fault={fault('winterHoursText') ? words.hoursPerWeek : null}
            />
          </div>
        </Part>
        <Part head={words.parts.writing}>
          <div className="choices">
            <Choice
              label={words.decimalMark}
              options={MARKS}
              value={form.decimalMark}
              onChange={(decimalMark) => onChange({ decimalMark })}
            />
            <Choice
              label={words.lengths}
              options={LENGTHS}
              value={form.lengths}
              onChange={(lengths) => onChange({ lengths })}
            />
            <Choice label={words.theme} options={THEMES} value={form.theme} onChange={(theme) => onChange({ theme })} />
          </div>
        </Part>
      </div>
      <Part head={words.parts.season}>
        <div className="season-line">
          <Season
            texts={form.seasonTexts}
            fault={fault('seasonTexts')}
            onChange={(seasonTexts) => onChange({ seasonTexts })}
          />
          <FigureField
            label={words.hoursPerYear}
            unit="h"
            text={form.hoursPerYearText}
            onText={(hoursPerYearText) => onChange({ hoursPerYearText })}
            fault={fault('hoursPerYearText') ? words.hoursPerYear : null}
          />
        </div>
      </Part>
    </>
  );
}

const Part = ({ head, children }: { head: string; children: ReactNode }) => (
  <section className="form-part" aria-label={head}>
    <h2>{head}</h2>
    {children}
  </section>
);
