import { type Day, isDay } from '#core/units/day.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { PickBox, type PickOption } from '#renderer/controls/PickBox.tsx';
import { takeInWords as words } from '#renderer/words/takeInWords.ts';
import { FigureField } from './FigureField.tsx';
import type { DialForm, MachineForm } from './form.ts';

export type FaultOf = (path: string) => string | null;

/** The machine itself. */
export function MachinePart({
  machine,
  workTypes,
  fault,
  onChange,
}: {
  machine: MachineForm;
  /** kinds of work the shop knows */
  workTypes: readonly string[];
  fault: FaultOf;
  onChange: (next: Partial<MachineForm>) => void;
}) {
  return (
    <section className="form-part" aria-label={words.machine}>
      <h2>{words.machine}</h2>
      <TextField
        label={words.machineName}
        value={machine.name}
        onChange={(name) => onChange({ name })}
        hint={words.machineNameHint}
        fault={fault('machine.name')}
        maxLength={120}
      />
      <div className="pair">
        <TextField label={words.make} value={machine.make} onChange={(make) => onChange({ make })} maxLength={120} />
        <TextField
          label={words.model}
          value={machine.model}
          onChange={(model) => onChange({ model })}
          maxLength={120}
        />
      </div>
      <div className="pair">
        <TextField
          label={words.serial}
          value={machine.serial}
          onChange={(serial) => onChange({ serial })}
          maxLength={120}
        />
        <TextField
          label={words.builtYear}
          value={machine.builtYearText}
          onChange={(builtYearText) => onChange({ builtYearText })}
          fault={fault('machine.builtYear')}
        />
      </div>
      <div className="pair">
        <TextField
          label={words.workType}
          value={machine.workType}
          onChange={(workType) => onChange({ workType })}
          hint={words.workTypeHint}
          offered={workTypes}
          maxLength={120}
        />
        <FigureField
          label={words.workShare}
          unit={words.percent}
          hint={words.workShareHint}
          text={machine.workShareText}
          onText={(workShareText) => onChange({ workShareText })}
          fault={fault('machine.workShare')}
        />
      </div>
      <TextField
        label={words.note}
        value={machine.note}
        onChange={(note) => onChange({ note })}
        lines={2}
        maxLength={2000}
      />
    </section>
  );
}

const METERS = (['meter', 'none'] as const).map((value) => ({ value, text: words.meterKinds[value] }));
const DIALS = (['read', 'estimate'] as const).map((value) => ({ value, text: words.dialKinds[value] }));

/** Its hour meter, and what it shows; a machine without one takes an estimate of its hours. */
export function MeterPart({
  machine,
  pullers,
  dial,
  today,
  fault,
  onMachine,
  onDial,
}: {
  machine: MachineForm;
  /** machines that may pull it */
  pullers: readonly PickOption[];
  dial: DialForm;
  today: Day;
  fault: FaultOf;
  onMachine: (next: Partial<MachineForm>) => void;
  onDial: (next: Partial<DialForm>) => void;
}) {
  const hasMeter = machine.meter === 'meter';
  return (
    <section className="form-part" aria-label={words.meter}>
      <h2>{words.meter}</h2>
      <div className="pair">
        <Choice
          label={words.meterKind}
          options={METERS}
          value={machine.meter}
          onChange={(meter) => onMachine({ meter })}
        />
        {hasMeter && (
          <Choice
            label={words.dialKind}
            options={DIALS}
            value={dial.estimate ? 'estimate' : 'read'}
            onChange={(kind) => onDial({ estimate: kind === 'estimate' })}
          />
        )}
      </div>
      <div className="pair">
        <FigureField
          label={hasMeter ? words.dial : words.machineHours}
          unit="h"
          text={dial.dialText}
          onText={(dialText) => onDial({ dialText })}
          hint={words.dialHint}
          fault={fault('dial.dialHours')}
        />
        <DayField
          label={words.day}
          today={today}
          value={isDay(dial.takenOn) ? dial.takenOn : null}
          onChange={(takenOn) => onDial({ takenOn: takenOn ?? '' })}
          fault={fault('dial.takenOn')}
        />
      </div>
      {hasMeter && (
        <div className="pair">
          <FigureField
            label={words.digits}
            text={machine.meterDigitsText}
            onText={(meterDigitsText) => onMachine({ meterDigitsText })}
            hint={words.digitsHint}
            fault={fault('machine.meterDigits')}
          />
          <FigureField
            label={words.hoursBefore}
            unit="h"
            text={machine.hoursBeforeText}
            onText={(hoursBeforeText) => onMachine({ hoursBeforeText })}
            hint={words.hoursBeforeHint}
            fault={fault('machine.hoursBefore')}
          />
        </div>
      )}
      {hasMeter && (
        <div className="pair">
          <FigureField
            label={words.clock}
            unit={words.clockUnit}
            text={machine.clockText}
            onText={(clockText) => onMachine({ clockText })}
            hint={words.clockHint}
            fault={fault('machine.clock')}
          />
          {machine.clockText.trim() !== '' && (
            <TextField
              label={words.clockWhy}
              value={machine.clockReason}
              onChange={(clockReason) => onMachine({ clockReason })}
              fault={fault('machine.clockReason')}
              maxLength={2000}
            />
          )}
        </div>
      )}
      {!hasMeter && <SourcePart machine={machine} pullers={pullers} fault={fault} onMachine={onMachine} />}
      <TextField label={words.saidBy} value={dial.saidBy} onChange={(saidBy) => onDial({ saidBy })} maxLength={120} />
    </section>
  );
}

const SOURCES = (['estimate', 'pulled', 'yearly'] as const).map((value) => ({ value, text: words.sourceKinds[value] }));

/** From that day on its hours come from somewhere: the machine that pulls it, so many a year, or estimates now and then. */
function SourcePart({
  machine,
  pullers,
  fault,
  onMachine,
}: {
  machine: MachineForm;
  pullers: readonly PickOption[];
  fault: FaultOf;
  onMachine: (next: Partial<MachineForm>) => void;
}) {
  return (
    <>
      <Choice
        label={words.sourceKind}
        options={SOURCES}
        value={machine.source}
        onChange={(source) => onMachine({ source })}
      />
      {machine.source === 'pulled' && (
        <div className="pair">
          <PickBox
            label={words.puller}
            options={pullers}
            value={machine.pullerId === null ? null : String(machine.pullerId)}
            onChange={(id) => onMachine({ pullerId: id === null ? null : Number(id) })}
            hint={fault('machine.pullerId') ?? words.pullerHint}
            opens="input"
          />
          <FigureField
            label={words.pulledShare}
            unit={words.percent}
            hint={words.pulledShareHint}
            text={machine.pulledShareText}
            onText={(pulledShareText) => onMachine({ pulledShareText })}
            fault={fault('machine.pulledShare')}
          />
        </div>
      )}
      {machine.source === 'yearly' && (
        <FigureField
          label={words.hoursPerYear}
          unit={words.hoursPerYearUnit}
          text={machine.hoursPerYearText}
          onText={(hoursPerYearText) => onMachine({ hoursPerYearText })}
          fault={fault('machine.hoursPerYear')}
        />
      )}
    </>
  );
}
