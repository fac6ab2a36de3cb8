import { useState } from 'react';
import type { RingState } from '#core/axis/itemRing.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Sketch } from '#renderer/marks/Sketch.tsx';
import { useWriting } from '#renderer/record.tsx';
import { remarkText, takeInWords as words } from '#renderer/words/takeInWords.ts';
import { FigureField } from './FigureField.tsx';
import type { AssemblyForm, Fitted } from './form.ts';
import { PositionTable } from './PositionTable.tsx';
import type { Remark } from './request.ts';

const FITTED = (['as-built', 'at-hours', 'not-known'] as const).map((value) => ({
  value,
  text: words.fittedKinds[value],
}));

/** One assembly of the form: its name, how old its parts are, its drawing, and its table of positions. */
export function AssemblyPart({
  assembly,
  path,
  partClasses,
  remarks,
  onChange,
  onDrop,
}: {
  assembly: AssemblyForm;
  path: string;
  partClasses: readonly string[];
  remarks: readonly Remark[];
  onChange: (assembly: AssemblyForm) => void;
  onDrop: () => void;
}) {
  const writing = useWriting();
  const [item, setItem] = useState<string | null>(null);
  const set = (next: Partial<AssemblyForm>) => onChange({ ...assembly, ...next });
  const fault = (field: string) => {
    const remark = remarks.find((one) => one.path === `${path}.${field}`);
    return remark ? remarkText(remark.why, remark.facts, writing) : null;
  };
  const states = new Map<number, RingState>(
    assembly.positions.map(({ itemText, leftOut }) => [Number(itemText), leftOut ? 'none' : 'leave']),
  );
  return (
    <section className="assembly-part" aria-label={assembly.name || words.assembly}>
      <div className="assembly-head">
        <div className="assembly-fields">
          <TextField
            label={words.assemblyName}
            value={assembly.name}
            onChange={(name) => set({ name })}
            fault={fault('name')}
            maxLength={120}
          />
          <TextField
            label={words.assemblySerial}
            value={assembly.serial}
            onChange={(serial) => set({ serial })}
            maxLength={120}
          />
          <Choice
            label={words.fitted}
            options={FITTED}
            value={assembly.fitted}
            onChange={(fitted: Fitted) => set({ fitted })}
          />
          {assembly.fitted === 'at-hours' && (
            <FigureField
              label={words.fittedHours}
              unit="h"
              text={assembly.fittedText}
              onText={(fittedText) => set({ fittedText })}
              fault={fault('fitted')}
            />
          )}
          <div className="keys drop">
            <Key onPress={onDrop}>{words.dropAssembly}</Key>
          </div>
        </div>
        {assembly.sketch && (
          <Sketch
            sketch={assembly.sketch}
            states={states}
            chosen={item === null ? null : Number(item)}
            width={330}
            label={words.sketchOf(assembly.name)}
          />
        )}
      </div>
      <PositionTable
        name={assembly.name}
        path={path}
        positions={assembly.positions}
        partClasses={partClasses}
        remarks={remarks}
        onChange={(positions) => set({ positions })}
        onItem={setItem}
      />
    </section>
  );
}
