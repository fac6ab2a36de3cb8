import { type AssemblyKind, zAssemblyKind } from '../contract/shop.ts';
import type { Slip } from '../contract/slip.ts';
import { assembliesOnMachine } from '../record/assemblyStore.ts';
import { customerOfMachine } from '../record/customerStore.ts';
import { listKinds } from '../record/kindStore.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { readSettings } from '../record/settingsStore.ts';
import { stripDownsOf } from '../record/stripDownStore.ts';
import { findingIsOpen } from '../shop/finding.ts';
import { forecastSlip, type SlipFrom } from '../slip/forecastSlip.ts';
import type { SlipHours } from '../slip/slipHours.ts';
import type { Day } from '../units/day.ts';
import { type DialGoneBy, dialGoneBy } from '../way/dialGoneBy.ts';
import { machinePlan } from '../way/machinePlan.ts';
import { writingOf } from '../words/quantityText.ts';
import type { ShopNow } from './shopNow.ts';

/** The slip of a machine as it stands now, not yet numbered. @throws RefusedError unknown-machine */
export function slipOfMachine(record: ReadableRecord, now: ShopNow, machineId: number, madeOn: Day): Slip {
  const named = machineOrRefuse(record, machineId);
  const { points } = now.ofMachine(machineId);
  const machine = now.shop.hours.ofMachine(machineId);
  const plan = machinePlan(now.shop, machineId, points);
  const dial = machine ? dialGoneBy(now.shop.hours, machine, now.asOf) : null;
  const customer = customerOfMachine(record, machineId, now.asOf);
  const settings = readSettings(record);
  const { name, headLines, phone, email, greaseAndWatch } = settings;
  const slip = forecastSlip({
    head: {
      number: null,
      madeOn,
      shop: { name, headLines, phone, email, decimalMark: writingOf(settings) },
      customer: { name: customer?.name ?? '', place: customer?.place ?? '' },
      machine: { name: named.name, makeModel: makeModel(named), serial: named.serial },
      measuredBy: lastFitter(record, machineId, now.asOf),
      greaseAndWatch,
      sketch: null,
    },
    asOf: now.asOf,
    hours: plan.now.machineHours === null ? null : slipHours(dial, plan.now.machineHours),
    dialMachine: plan.now.dialMachine?.name ?? null,
    estimated: dial?.estimated ?? plan.now.estimated,
    readOn: plan.now.readOn,
    meterDigits: (dial?.of ?? machine?.life)?.meterDigits ?? null,
    hoursPerYear: plan.hoursPerYear && plan.hoursPerYear.middle / (dial?.hoursPerDialHour ?? 1),
    winters: plan.winters,
    points: pointsOfSlip(now, machineId),
    findings: findingsOfSlip(now, machineId),
  });
  return { ...slip, sketch: sketchOf(record, machineId, slip.machine.assembly) };
}

const makeModel = ({ make, model }: { make: string; model: string }): string =>
  [make, model].filter((word) => word !== '').join(' ');

/** The dial goes on past its full scale here; the paper turns it over. */
const slipHours = (dial: DialGoneBy | null, machineHoursNow: number): SlipHours => ({
  machineHoursNow,
  dialHoursNow: dial?.dialHoursNow ?? null,
  hoursPerDialHour: dial?.hoursPerDialHour ?? 1,
});

const lastFitter = (record: ReadableRecord, machineId: number, asOf: Day): string =>
  stripDownsOf(record, machineId).findLast(({ takenOn, fitter }) => takenOn <= asOf && fitter !== '')?.fitter ?? '';

function pointsOfSlip({ shop, ofMachine }: ShopNow, machineId: number): SlipFrom['points'] {
  const onRecord = new Map(shop.life.points.map((point) => [point.pointId, point]));
  return ofMachine(machineId).points.map((forecast) => {
    const point = onRecord.get(forecast.pointId)!;
    const { history, renewals } = shop.ofPoint(point);
    const { assemblyId, positionId, wears, gaugeErrorMm } = point;
    return { ...forecast, assemblyId, visited: { positionId, wears, gaugeErrorMm, history, renewals } };
  });
}

/** Open and closed ones of the assemblies it carries, oldest first. */
function findingsOfSlip({ shop, asOf }: ShopNow, machineId: number): SlipFrom['findings'] {
  const points = shop.life.points.filter((point) => point.machineId === machineId);
  return shop.life.findings
    .filter(({ assemblyId }) => points.some((point) => point.assemblyId === assemblyId))
    .map((finding) => {
      const at = points.find(({ positionId }) => positionId === finding.positionId);
      const assembly = points.find(({ assemblyId }) => assemblyId === finding.assemblyId)?.assembly ?? '';
      return { finding, item: at?.item ?? null, label: at?.position ?? assembly, open: findingIsOpen(finding, asOf) };
    })
    .sort((a, b) => (a.finding.takenOn < b.finding.takenOn ? -1 : a.finding.takenOn > b.finding.takenOn ? 1 : 0));
}

/** The drawing of the assembly the headline is about. */
function sketchOf(record: ReadableRecord, machineId: number, assembly: string): AssemblyKind['sketch'] {
  const on = assembliesOnMachine(record, machineId).find(({ name }) => name === assembly);
  const kind = on?.kindId == null ? undefined : listKinds(record).find(({ id }) => id === on.kindId);
  return kind ? zAssemblyKind.parse(kind.template).sketch : null;
}
