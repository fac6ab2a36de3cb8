import { type ReactNode, useState } from 'react';
import { MATERIAL_NAMES, PART_KIND_NAMES } from '#core/contract/fits.ts';
import {
  BORE_GAUGE_NAMES,
  DATUM_NAMES,
  HOLE_RUN_NAMES,
  REPAIR_USE_NAMES,
  type RepairFacts,
  type RepairSheet,
  repairSaveFacts,
  type WAY_NAMES,
} from '#core/contract/repair.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { readNumber } from '#renderer/words/readNumber.ts';
import { repairForm, repairWords } from '#renderer/words/repairWords.ts';

type SizeName =
  | ('standardMm' | 'newBoreMm' | 'mayMoveMm' | 'aSideMm' | 'bossOutsideMm' | 'bossLengthMm')
  | ('offMiddleMm' | 'centreToEdgeMm' | 'pinMm' | 'pinLengthMm');
type Asker = { facts: RepairFacts; set: (change: Partial<RepairFacts>) => void; writing: Writing };

/** Ways square to the hole, in the order of its picture. */
const WAYS_OF: Readonly<Record<RepairFacts['run'], readonly (typeof WAY_NAMES)[number][]>> = {
  across: ['front', 'rear', 'up', 'down'],
  upright: ['front', 'rear', 'left', 'right'],
  lengthwise: ['left', 'right', 'up', 'down'],
};

/** What the bench says of a joint: kept in the record, and worked out at once. */
export function FactsForm({ sheet, writing }: { sheet: RepairSheet; writing: Writing }) {
  const [facts, setFacts] = useState(sheet.facts);
  const [by, setBy] = useBy();
  const save = useDo(repairSaveFacts);
  const set = (change: Partial<RepairFacts>) => setFacts({ ...facts, ...change });
  const asker = { facts, set, writing };
  return (
    <form
      className="facts-form"
      onSubmit={(event) => {
        event.preventDefault();
        void save.run({ positionId: sheet.positionId, facts, by });
      }}
    >
      <h2>{repairForm.head}</h2>
      <p className="second">{sheet.factsKept ? repairForm.kept : repairForm.notKept}</p>
      <Group head={repairForm.groups.hole}>
        <HoleFields {...asker} sheet={sheet} />
      </Group>
      <Group head={repairForm.groups.boss}>
        <BossFields {...asker} />
      </Group>
      <Group head={repairForm.groups.pin}>
        <PinFields {...asker} />
      </Group>
      <Group head={repairForm.groups.part}>
        <PartFields {...asker} />
      </Group>
      <div className="facts-end">
        <ByField label={repairWords.who} value={by} onChange={setBy} />
        <Key first type="submit" disabled={save.busy || by.trim() === ''} onPress={() => undefined}>
          {repairForm.save}
        </Key>
      </div>
      {save.fault && <FaultBox fault={save.fault} />}
    </form>
  );
}

const Group = ({ head, children }: { head: string; children: ReactNode }) => (
  <fieldset>
    <legend>{head}</legend>
    <div className="fields">{children}</div>
  </fieldset>
);

function Size({ name, facts, set, writing, hint, least }: Asker & { name: SizeName; hint?: string; least?: number }) {
  return (
    <NumberField
      label={repairForm[name]}
      unit="mm"
      writing={writing}
      value={facts[name]}
      {...(hint !== undefined && { hint })}
      onChange={(value) => {
        // a size the joint cannot do without keeps its last sound figure while the box is empty
        if (value !== null || least === undefined) set({ [name]: value });
      }}
    />
  );
}

const YES_NO = [
  { value: 'yes', text: repairForm.yes },
  { value: 'no', text: repairForm.no },
] as const;

type YesNoName = 'split' | 'weldsNear' | 'pinRenewed' | 'mustStayStandard' | 'nylonNear' | 'alignmentBar';
const YesNo = ({ name, facts, set }: Asker & { name: YesNoName }) => (
  <Choice
    label={repairForm[name]}
    options={YES_NO}
    value={facts[name] ? 'yes' : 'no'}
    onChange={(value) => set({ [name]: value === 'yes' })}
  />
);

/** One of several, or not said. */
function OrNotSaid<T extends string>(props: {
  label: string;
  names: readonly T[];
  words: (name: T) => string;
  value: T | null;
  onChange: (value: T | null) => void;
}) {
  const options = [
    ...props.names.map((value) => ({ value: value as string, text: props.words(value) })),
    { value: 'not-said', text: repairForm.notSaid },
  ];
  return (
    <Choice
      label={props.label}
      options={options}
      value={props.value ?? 'not-said'}
      onChange={(value) => props.onChange(props.names.find((name) => name === value) ?? null)}
    />
  );
}

function HoleFields({ sheet, ...asker }: Asker & { sheet: RepairSheet }) {
  const { facts, set, writing } = asker;
  const others = sheet.joints.filter(({ positionId }) => positionId !== sheet.positionId);
  return (
    <>
      <Choice
        label={repairForm.run}
        options={HOLE_RUN_NAMES.map((value) => ({ value, text: repairForm.runs[value] }))}
        value={facts.run}
        onChange={(run) => set({ run, wornTowards: null })}
      />
      <Size {...asker} name="standardMm" />
      <Size {...asker} name="newBoreMm" />
      {facts.axesMm.map((mm, i) => (
        <NumberField
          key={repairForm.axes[facts.run][i]}
          label={repairForm.axes[facts.run][i] ?? ''}
          unit="mm"
          writing={writing}
          value={mm}
          onChange={(value) => set({ axesMm: facts.axesMm.map((old, j) => (j === i ? value : old)) })}
        />
      ))}
      <Choice
        label={repairForm.gauge}
        options={BORE_GAUGE_NAMES.map((value) => ({ value, text: repairForm.gauges[value] }))}
        value={facts.gauge}
        onChange={(gauge) => set({ gauge })}
      />
      <OrNotSaid
        label={repairForm.wornTowards}
        names={WAYS_OF[facts.run]}
        words={repairWords.way}
        value={facts.wornTowards}
        onChange={(wornTowards) => set({ wornTowards })}
      />
      <OrNotSaid
        label={repairForm.datum}
        names={DATUM_NAMES}
        words={(name) => repairForm.datums[name]}
        value={facts.datum}
        onChange={(datum) => set({ datum })}
      />
      <Size {...asker} name="mayMoveMm" />
      <Size {...asker} name="aSideMm" least={0} />
      {others.length > 0 && (
        <PickBox
          label={repairForm.boredWith}
          options={others.map(({ positionId, position }) => ({ id: String(positionId), text: position }))}
          value={facts.boredWith === null ? null : String(facts.boredWith)}
          hint={repairForm.boredWithHint}
          onChange={(id) => set({ boredWith: id === null ? null : Number(id) })}
        />
      )}
    </>
  );
}

function BossFields(asker: Asker) {
  const { facts, set } = asker;
  const [yieldText, setYieldText] = useState(facts.yieldMpa === null ? '' : String(facts.yieldMpa));
  return (
    <>
      <Size {...asker} name="bossOutsideMm" />
      <Size {...asker} name="bossLengthMm" />
      <Size {...asker} name="offMiddleMm" least={0} />
      <Size {...asker} name="centreToEdgeMm" hint={repairForm.round} />
      <OrNotSaid
        label={repairForm.material}
        names={MATERIAL_NAMES}
        words={(name) => repairForm.materials[name]}
        value={facts.material}
        onChange={(material) => set({ material })}
      />
      <FigureField
        label={repairForm.yieldMpa}
        unit="MPa"
        reads="mm"
        text={yieldText}
        onText={(text) => {
          setYieldText(text);
          const read = readNumber(text, 'mm');
          set({ yieldMpa: read.ok && read.value > 0 && read.value <= 3000 ? read.value : null });
        }}
        hint={repairForm.yieldHint}
      />
      <YesNo {...asker} name="split" />
      <YesNo {...asker} name="weldsNear" />
      <Choice
        label={repairForm.plate}
        options={(['sound', 'thin-or-unknown', 'not-looked-at'] as const).map((value) => ({
          value,
          text: repairForm.plates[value],
        }))}
        value={facts.plate}
        onChange={(plate) => set({ plate })}
      />
    </>
  );
}

type OtherHalf = NonNullable<RepairFacts['otherHalf']>;

function PinFields(asker: Asker) {
  const { facts, set, writing } = asker;
  const { otherHalf } = facts;
  const standardMm = facts.standardMm ?? 40;
  const half = (change: Partial<OtherHalf>) => otherHalf && set({ otherHalf: { ...otherHalf, ...change } });
  const usual: OtherHalf = {
    ...{ worn: 'eye', thicknessMm: standardMm / 2, widthMm: 2 * standardMm, endMm: standardMm, gapEachSideMm: 1 },
  };
  return (
    <>
      <Size {...asker} name="pinMm" />
      <Size {...asker} name="pinLengthMm" />
      <YesNo {...asker} name="pinRenewed" />
      <Choice
        label={repairForm.use}
        options={REPAIR_USE_NAMES.filter((use) => use !== 'bush-in-boss').map((value) => ({
          value,
          text: repairForm.uses[value],
        }))}
        value={facts.use}
        onChange={(use) => set({ use })}
      />
      <Choice
        label={repairForm.otherHalf}
        options={YES_NO}
        value={otherHalf ? 'yes' : 'no'}
        onChange={(value) => set({ otherHalf: value === 'yes' ? usual : null })}
      />
      {otherHalf && (
        <>
          <Choice
            label={repairForm.worn}
            options={(['eye', 'fork'] as const).map((value) => ({ value, text: repairForm.wornHalves[value] }))}
            value={otherHalf.worn}
            onChange={(worn) => half({ worn })}
          />
          {(['thicknessMm', 'widthMm', 'endMm', 'gapEachSideMm'] as const).map((name) => (
            <NumberField
              key={name}
              label={repairForm[name]}
              unit="mm"
              writing={writing}
              value={otherHalf[name]}
              onChange={(value) => value !== null && half({ [name]: value })}
            />
          ))}
        </>
      )}
    </>
  );
}

function PartFields(asker: Asker) {
  const { facts, set } = asker;
  const { procedure, forgedOrHeatTreated } = facts;
  return (
    <>
      <YesNo {...asker} name="mustStayStandard" />
      <Choice
        label={repairForm.oversizes}
        options={repairForm.oversizesTimes.map((text, i) => ({ value: String(i), text }))}
        value={String(Math.min(2, facts.oversizes))}
        onChange={(times) => set({ oversizes: Number(times) })}
      />
      <Choice
        label={repairForm.partKind}
        options={PART_KIND_NAMES.map((value) => ({ value, text: repairForm.partKinds[value] }))}
        value={facts.partKind}
        onChange={(partKind) => set({ partKind })}
      />
      <OrNotSaid
        label={repairForm.forged}
        names={['yes', 'no'] as const}
        words={(name) => repairForm[name]}
        value={forgedOrHeatTreated === null ? null : forgedOrHeatTreated ? 'yes' : 'no'}
        onChange={(value) => set({ forgedOrHeatTreated: value === null ? null : value === 'yes' })}
      />
      <YesNo {...asker} name="nylonNear" />
      <YesNo {...asker} name="alignmentBar" />
      <TextField
        label={repairForm.pressKn}
        value={facts.pressKn === null ? '' : String(facts.pressKn)}
        onChange={(typed) => {
          const force = Number(typed.replace(',', '.'));
          set({ pressKn: force > 0 ? force : null });
        }}
        maxLength={6}
      />
      <Choice
        label={repairForm.procedure}
        options={YES_NO}
        value={procedure ? 'yes' : 'no'}
        onChange={(value) => set({ procedure: value === 'yes' ? { by: '', reference: '' } : null })}
      />
      {procedure && (
        <>
          <TextField
            label={repairForm.procedureBy}
            value={procedure.by}
            onChange={(by) => set({ procedure: { ...procedure, by } })}
            maxLength={120}
          />
          <TextField
            label={repairForm.procedureReference}
            value={procedure.reference}
            onChange={(reference) => set({ procedure: { ...procedure, reference } })}
            maxLength={120}
          />
        </>
      )}
    </>
  );
}
