import { useRef, useState } from 'react';
import { pointAdd } from '#core/contract/oldSheets.ts';
import { zMeasures } from '#core/contract/shapes.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useWriting } from '#renderer/record.tsx';
import { numberFaultWords } from '#renderer/words/fieldWords.ts';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { measuresWords } from '#renderer/words/stripDownWords.ts';
import type { SheetRow } from '../strip-down/boxes.ts';
import { FigureField } from '../take-in/FigureField.tsx';
import { emptyPoint, type PointForm, pointRequest } from './addPoint.ts';
import { useDeskDo } from './useDesk.ts';
import { useEnterTakes } from './useEnterTakes.ts';

const MEASURES = zMeasures.options.map((value) => ({ value, text: measuresWords[value] }));
const YES_NO = [
  { value: 'no' as const, text: words.no },
  { value: 'yes' as const, text: words.yes },
];
const OTHER = '';

/** A point the paper has and the record has not: laid out at its position, so that its size can be typed. */
export function AddPoint({
  machineId,
  rows,
  partClasses,
  by,
  onAdded,
  onLeave,
}: {
  machineId: number;
  rows: readonly SheetRow[];
  /** offered while a class is typed */
  partClasses: readonly string[];
  by: string;
  onAdded: (pointId: number) => void;
  onLeave: () => void;
}) {
  const writing = useWriting();
  const add = useDeskDo(pointAdd);
  const [form, setForm] = useState<PointForm>(() => emptyPoint(rows));
  const [tried, setTried] = useState(false);
  const strip = useRef<HTMLElement>(null);
  const set = (next: Partial<PointForm>) => setForm((was) => ({ ...was, ...next }));
  const { request, remarks } = pointRequest(form, machineId, rows, by, writing);
  const send = async () => {
    setTried(true);
    const reply = request && (await add.run(request));
    if (reply) onAdded(reply.pointId);
  };
  const onKeyDown = useEnterTakes(strip, () => void send(), onLeave);
  const assemblies = [...new Map(rows.map((row) => [row.assemblyId, row.assembly])).entries()];
  const positions = [
    ...new Set(rows.filter((row) => row.assemblyId === form.assemblyId).map(({ position }) => position)),
  ];
  return (
    <section ref={strip} className="desk-strip" aria-label={words.addPoint} onKeyDownCapture={onKeyDown}>
      <h2>{words.addPoint}</h2>
      <div className="desk-fields">
        {assemblies.length > 0 && (
          <Choice
            label={words.assembly}
            options={[
              ...assemblies.map(([id, name]) => ({ value: String(id), text: name })),
              { value: OTHER, text: words.otherAssembly },
            ]}
            value={form.assemblyId === null ? OTHER : String(form.assemblyId)}
            onChange={(id) => set({ assemblyId: id === OTHER ? null : Number(id) })}
          />
        )}
        {form.assemblyId === null && (
          <TextField
            label={words.assemblyName}
            value={form.assemblyName}
            onChange={(assemblyName) => set({ assemblyName })}
            fault={tried && remarks.includes('assembly') ? words.assemblyName : null}
            maxLength={120}
          />
        )}
        <TextField
          label={words.position}
          value={form.position}
          onChange={(position) => set({ position })}
          offered={positions}
          autoFocus={form.assemblyId !== null}
          hint={words.positionHint}
          fault={tried && remarks.includes('position') ? words.needsPosition : null}
          maxLength={120}
        />
        <Choice
          label={words.measures}
          options={MEASURES}
          value={form.measures}
          onChange={(measures) => set({ measures })}
        />
        <TextField
          label={words.pointName}
          value={form.name}
          onChange={(name) => set({ name })}
          hint={measuresWords[form.measures]}
          maxLength={120}
        />
        <FigureField
          label={words.newSize}
          reads="length"
          text={form.newSizeText}
          onText={(newSizeText) => set({ newSizeText })}
          fault={tried && remarks.includes('new-size') ? words.needsNewSize : null}
        />
        <FigureField
          label={words.renewAt}
          reads="length"
          text={form.renewAtText}
          onText={(renewAtText) => set({ renewAtText })}
          fault={remarks.includes('renew-at') ? numberFaultWords('not-a-number', 'mm', writing) : null}
        />
        <TextField
          label={words.stations}
          value={form.stationsText}
          onChange={(stationsText) => set({ stationsText })}
          hint={words.stationsHint}
          maxLength={200}
        />
        <TextField
          label={words.partClass}
          value={form.partClass}
          onChange={(partClass) => set({ partClass })}
          offered={partClasses}
          maxLength={120}
        />
        <Choice
          label={words.safety}
          options={YES_NO}
          value={form.safety ? 'yes' : 'no'}
          onChange={(safety) => set({ safety: safety === 'yes' })}
        />
      </div>
      {add.fault && <FaultBox fault={add.fault} />}
      <div className="keys">
        <Key first letter="Enter" disabled={add.busy} onPress={() => void send()}>
          {words.add}
        </Key>
        <Key letter="Escape" onPress={onLeave}>
          {words.leave}
        </Key>
      </div>
    </section>
  );
}
