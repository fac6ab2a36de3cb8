import { useState } from 'react';
import { machineRead } from '#core/contract/machine.ts';
import { type Rebuild, ratesRead, rebuildLineSave } from '#core/contract/rebuild.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import { PlacePick } from './PlacePick.tsx';
import { placesOf } from './placesOf.ts';
import {
  type CutForm,
  EMPTY_CUT,
  EMPTY_MAKE,
  formOf,
  type MakeForm,
  type WorkForm as Typed,
  workOf,
} from './workForm.ts';

/** A line of work, put on the job or put right. */
export function WorkForm({
  job,
  line,
  onDone,
}: {
  job: Rebuild;
  line: Rebuild['lines'][number] | null;
  onDone: () => void;
}) {
  const [form, setForm] = useState<Typed>(() => formOf(line));
  const [by, setBy] = useBy();
  const save = useDo(rebuildLineSave);
  const machine = useAsk(machineRead, { machineId: job.machineId });
  const rates = useAsk(ratesRead, {});
  const work = workOf(form);
  const put = (changed: Partial<Typed>) => setForm({ ...form, ...changed });
  const send = async () => {
    if (work && (await save.run({ rebuildId: job.rebuildId, lineId: line?.lineId ?? null, work, by }))) onDone();
  };
  return (
    <RowForm
      className="job-form"
      complete={work !== null}
      doing={save}
      send={words.saveWork}
      onSend={send}
      keys={
        <>
          <Key onPress={() => put({ cuts: [...form.cuts, EMPTY_CUT] })}>{words.addCut}</Key>
          <Key onPress={() => put({ makes: [...form.makes, EMPTY_MAKE] })}>{words.addMake}</Key>
        </>
      }
      onLeave={onDone}
      leave={words.leave}
      above={
        <>
          <PlaceAndPoints machine={machine.value} form={form} put={put} />
          <TextField
            label={words.what}
            value={form.what}
            onChange={(what) => put({ what })}
            maxLength={400}
            autoFocus
          />
          <TextField
            label={words.takeOffs}
            hint={words.takeOffsHint}
            value={form.takeOffs}
            onChange={(takeOffs) => put({ takeOffs })}
            lines={3}
          />
        </>
      }
      below={
        <>
          <label className="tick">
            <input type="checkbox" checked={form.safety} onChange={(event) => put({ safety: event.target.checked })} />
            {words.safety}
          </label>
          {form.cuts.map((cut, place) => (
            <CutFields
              key={place}
              cut={cut}
              onChange={(changed) => put({ cuts: replaced(form.cuts, place, changed) })}
              onRemove={() => put({ cuts: form.cuts.toSpliced(place, 1) })}
            />
          ))}
          {form.makes.map((make, place) => (
            <MakeFields
              key={place}
              make={make}
              onChange={(changed) => put({ makes: replaced(form.makes, place, changed) })}
              onRemove={() => put({ makes: form.makes.toSpliced(place, 1) })}
            />
          ))}
        </>
      }
    >
      <FigureField label={words.ownHours} unit="h" text={form.ownHours} onText={(ownHours) => put({ ownHours })} />
      <FigureField
        label={words.partsPrice}
        reads="mm"
        unit={rates.value?.rates?.currency ?? ''}
        text={form.partsPrice}
        onText={(partsPrice) => put({ partsPrice })}
      />
      <ByField label={words.by} value={by} onChange={setBy} />
    </RowForm>
  );
}

const replaced = <T,>(all: readonly T[], place: number, one: T): T[] => all.with(place, one);

type Machine = {
  points: readonly {
    pointId: number;
    positionId: number;
    item: number;
    position: string;
    point: string;
    safety: boolean;
    limits: { newSizeMm: number; newSizeTolMm: number | null };
  }[];
};

/** Where it is done; the points measured there start their wear again when the work is handed over. */
function PlaceAndPoints({
  machine,
  form,
  put,
}: {
  machine: Machine | undefined;
  form: Typed;
  put: (changed: Partial<Typed>) => void;
}) {
  const points = machine?.points ?? [];
  const here = points.filter(({ positionId }) => positionId === form.positionId);
  return (
    <>
      <PlacePick
        places={placesOf(points)}
        positionId={form.positionId}
        onPick={(positionId) => {
          const own = points.filter((point) => point.positionId === positionId);
          put({ positionId, renews: [], safety: own.some(({ safety }) => safety) });
        }}
      />
      {here.length > 0 && (
        <fieldset className="ticks">
          <legend>{words.renews}</legend>
          {here.map(({ pointId, point, limits }) => (
            <label key={pointId} className="tick">
              <input
                type="checkbox"
                checked={form.renews.some((one) => one.pointId === pointId)}
                onChange={(event) => {
                  const others = form.renews.filter((one) => one.pointId !== pointId);
                  const half = (limits.newSizeTolMm ?? 0.2) / 2;
                  const meant = {
                    pointId,
                    kind: 'new-part' as const,
                    lowerMm: Math.max(0, limits.newSizeMm - half),
                    upperMm: limits.newSizeMm + half,
                  };
                  put({ renews: event.target.checked ? [...others, meant] : others });
                }}
              />
              {point}
            </label>
          ))}
        </fieldset>
      )}
    </>
  );
}

type Row<T> = { onChange: (changed: T) => void; onRemove: () => void };

function CutFields({ cut, onChange, onRemove }: { cut: CutForm } & Row<CutForm>) {
  return (
    <div className="fields job-row">
      <TextField label={words.cutWhat} value={cut.what} onChange={(what) => onChange({ ...cut, what })} />
      <TextField label={words.cutCentre} value={cut.centre} onChange={(centre) => onChange({ ...cut, centre })} />
      <FigureField
        label={words.lower}
        unit="mm"
        reads="mm"
        text={cut.lower}
        onText={(lower) => onChange({ ...cut, lower })}
      />
      <FigureField
        label={words.upper}
        unit="mm"
        reads="mm"
        text={cut.upper}
        onText={(upper) => onChange({ ...cut, upper })}
      />
      <Key onPress={onRemove}>{words.remove}</Key>
    </div>
  );
}

const KINDS = (Object.keys(words.makeKinds) as MakeForm['kind'][]).map((value) => ({
  value,
  text: words.makeKinds[value],
}));

function MakeFields({ make, onChange, onRemove }: { make: MakeForm } & Row<MakeForm>) {
  const put = (changed: Partial<MakeForm>) => onChange({ ...make, ...changed });
  return (
    <div className="fields job-row">
      <Choice label={words.makeKind} options={KINDS} value={make.kind} onChange={(kind) => put({ kind })} />
      <TextField label={words.makeWhat} value={make.what} onChange={(what) => put({ what })} />
      <TextField label={words.material} value={make.material} onChange={(material) => put({ material })} />
      <FigureField
        label={words.outside}
        unit="mm"
        reads="mm"
        text={make.outside}
        onText={(outside) => put({ outside })}
      />
      <FigureField label={words.inside} unit="mm" reads="mm" text={make.inside} onText={(inside) => put({ inside })} />
      <FigureField label={words.length} unit="mm" reads="mm" text={make.length} onText={(length) => put({ length })} />
      <FigureField label={words.width} unit="mm" reads="mm" text={make.width} onText={(width) => put({ width })} />
      <FigureField label={words.partCount} text={make.count} onText={(count) => put({ count })} />
      <TextField label={words.partLimits} value={make.limits} onChange={(limits) => put({ limits })} maxLength={200} />
      <TextField label={words.stock} value={make.stock} onChange={(stock) => put({ stock })} />
      <FigureField label={words.bought} unit="days" text={make.leadDays} onText={(leadDays) => put({ leadDays })} />
      <Key onPress={onRemove}>{words.remove}</Key>
    </div>
  );
}
