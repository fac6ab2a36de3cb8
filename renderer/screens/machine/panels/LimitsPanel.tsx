import { type ReactNode, useState } from 'react';
import { type PointSheet, pointLimits } from '#core/contract/machine.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText, gaugeErrorText, limitFigure, limitText, type Writing } from '#core/words/quantityText.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { pointName } from '#renderer/words/machinesWords.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { ByField, useBy } from './ByField.tsx';

type Limits = PointSheet['limits'];

/** What a point is judged by, whose figures those are, and new ones from a day on. */
export function LimitsPanel({ point }: { point: PointSheet }) {
  const [changing, setChanging] = useState(false);
  const writing = useWriting();
  return (
    <>
      <h2 className="panel-head">{panelWords.limitsOf(`${point.item} ${pointName(point)}`)}</h2>
      <dl className="facts">
        {factsOf(point, writing).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {changing ? (
        <LimitsForm point={point} onClose={() => setChanging(false)} />
      ) : (
        <Keys>
          <Key onPress={() => setChanging(true)}>{panelWords.change}</Key>
        </Keys>
      )}
    </>
  );
}

function factsOf({ limits, forecast, ...point }: PointSheet, writing: Writing): [string, ReactNode][] {
  const mm = (sizeMm: number | null, none: string) => (sizeMm === null ? none : limitText(sizeMm, writing));
  return [
    [panelWords.newSizeName, newSize(limits, writing)],
    [panelWords.renewAt, mm(limits.renewAtMm, panelWords.noLimit)],
    [panelWords.rejectAt, mm(limits.rejectAtMm, panelWords.none)],
    [panelWords.source, limits.source || panelWords.noSource],
    [panelWords.since, limits.from === null ? panelWords.asBuilt : dayText(day(limits.from))],
    [panelWords.wears, panelWords.wearsWay[point.wears]],
    [panelWords.decides, panelWords.decidesBy[forecast.decides]],
    [panelWords.stations, point.stations.filter(Boolean).join(', ') || panelWords.oneStation],
    [panelWords.gauge, gaugeErrorText(point.gaugeErrorMm, writing)],
  ];
}

const newSize = (limits: Limits, writing: Writing): string =>
  limits.newSizeTolMm
    ? `${limitFigure(limits.newSizeMm, writing)} ±${limitText(limits.newSizeTolMm / 2, writing)}`
    : limitText(limits.newSizeMm, writing);

type Figure = 'newSizeMm' | 'newSizeTolMm' | 'renewAtMm' | 'rejectAtMm';
/** While being typed the new size too may stand empty. */
type Typed = Omit<Limits, 'newSizeMm'> & { newSizeMm: number | null };

function LimitsForm({ point, onClose }: { point: PointSheet; onClose: () => void }) {
  const writing = useWriting();
  const today = useToday();
  const save = useDo(pointLimits);
  const [limits, setLimits] = useState<Typed>(point.limits);
  const [unread, setUnread] = useState<readonly Figure[]>([]);
  const [from, setFrom] = useState<Day | null>(today);
  const [by, setBy] = useBy();
  const type = (of: Figure, value: number | null, typed: string) => {
    setLimits((was) => ({ ...was, [of]: value }));
    // an empty box takes a limit away; one that cannot be read must not
    setUnread((was) => [
      ...was.filter((other) => other !== of),
      ...(value === null && typed.trim() !== '' ? [of] : []),
    ]);
  };
  const figure = (label: string, of: Figure) => (
    <NumberField
      label={label}
      unit="mm"
      writing={writing}
      value={limits[of]}
      onChange={(value, typed) => type(of, value, typed)}
      needed={of === 'newSizeMm'}
      autoFocus={of === 'newSizeMm'}
    />
  );
  const { newSizeMm, newSizeTolMm, renewAtMm, rejectAtMm, source } = limits;
  const complete = from !== null && newSizeMm !== null && unread.length === 0;
  const send = async () => {
    if (from === null || newSizeMm === null || unread.length > 0) return;
    const done = await save.run({
      pointId: point.pointId,
      from,
      newSizeMm,
      newSizeTolMm,
      renewAtMm,
      rejectAtMm,
      source: source || null,
      enteredBy: by,
    });
    if (done) onClose();
  };
  return (
    <RowForm
      complete={complete}
      doing={save}
      send={panelWords.saveLimits}
      onSend={send}
      onLeave={onClose}
      below={<p className="second">{panelWords.limitsNote}</p>}
    >
      {figure(panelWords.newSizeName, 'newSizeMm')}
      {figure(panelWords.tolerance, 'newSizeTolMm')}
      {figure(panelWords.renewAt, 'renewAtMm')}
      {figure(panelWords.rejectAt, 'rejectAtMm')}
      <DayField label={panelWords.from} value={from} onChange={setFrom} today={today} />
      <TextField
        label={panelWords.source}
        hint={panelWords.sourceHint}
        value={limits.source ?? ''}
        onChange={(source) => setLimits((was) => ({ ...was, source }))}
      />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
