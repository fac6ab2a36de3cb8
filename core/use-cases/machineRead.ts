import type { z } from 'zod';
import type { MachineSheet, machineRead, zAssemblySheet, zMachineSheet } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { type AssemblyKind, zAssemblyKind } from '../contract/shop.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { assembliesOnMachine, positionsOf } from '../record/assemblyStore.ts';
import { type CustomerOnRecord, customerOfMachine, customersAmong, ownershipsOf } from '../record/customerStore.ts';
import { listKinds } from '../record/kindStore.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { pointsOfAssemblies } from '../record/pointStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { renewalRowsOfPoints, shimsOfPoints } from '../record/renewalStore.ts';
import { sizeRowsOfPoints } from '../record/sizeStore.ts';
import { slipsOfMachine } from '../record/slipStore.ts';
import { stripDownsOf } from '../record/stripDownStore.ts';
import { jointOfSlack } from '../way/jointOfSlack.ts';
import { machinePlan } from '../way/machinePlan.ts';
import { pointsOfShop } from '../way/pointsOfShop.ts';
import { settingsOf } from '../way/settingsOf.ts';
import type { MachineForecast } from '../way.ts';
import { type Context, recordOf } from './context.ts';
import { findingSheetsWhole } from './findingSheet.ts';
import { hoursFacts } from './hoursFacts.ts';
import { pointSheet } from './pointSheet.ts';
import { type ShopNow, shopAround } from './shopNow.ts';

type Sheet = z.input<typeof zMachineSheet>;

export const machineReadHandler: Handler<typeof machineRead, Context> = (context, { machineId }) =>
  machineSheet(recordOf(context), shopAround(context, machineId), machineId);

/** Everything the machine's page shows. @throws RefusedError unknown-machine */
function machineSheet(record: ReadableRecord, now: ShopNow, machineId: number): Sheet {
  const { note, ...named } = machineOrRefuse(record, machineId);
  const machine = now.shop.hours.ofMachine(machineId);
  const forecast = now.ofMachine(machineId);
  const plan = machinePlan(now.shop, machineId, forecast.points);
  const assemblies = assembliesOnMachine(record, machineId);
  const customer = customerOfMachine(record, machineId, now.asOf);
  return {
    asOf: now.asOf,
    machineId,
    name: named.name,
    make: named.make,
    model: named.model,
    serial: named.serial,
    builtYear: named.builtYear,
    note,
    ...hoursFacts(record, now.shop, machineId),
    customer: customer && withId(customer),
    owners: ownersOf(record, machineId),
    hours: plan.now,
    hoursPerYear: plan.hoursPerYear ?? { low: null, middle: null, high: null },
    useBorrowed: plan.useBorrowed,
    winters: plan.winters,
    planWinter: plan.planWinter,
    planLineMachineHours: plan.planLineMachineHours,
    assemblies: assemblySheets(record, assemblies),
    points: pointSheets(record, now, forecast, plan.roles),
    findings: findingsOfMachine(
      record,
      now,
      machineId,
      assemblies.map(({ id }) => id),
    ),
    slips: slipsOfMachine(record, machineId).map(({ id, number, madeOn }) => ({ slipId: id, number, madeOn })),
    stripDowns: stripDownsOf(record, machineId)
      .map(({ id, takenOn, fitter }) => ({
        stripDownId: id,
        takenOn,
        machineHours: (machine && machineHoursOn(machine.line, takenOn)?.hours) ?? null,
        fitter,
      }))
      .reverse(),
  };
}

function ownersOf(record: ReadableRecord, machineId: number): Sheet['owners'] {
  const owned = ownershipsOf(record, machineId);
  const known = customersAmong(
    record,
    owned.map(({ customerId }) => customerId),
  );
  return owned.map(({ id, customerId, fromOn, struck, reason }) => {
    const { name = '', place = '' } = known.of(customerId) ?? {};
    return { ownershipId: id, customerId: known.survivorOf(customerId), name, place, fromOn, struck, reason };
  });
}

const withId = ({ id, erased: _, ...rest }: CustomerOnRecord) => ({ customerId: id, ...rest });

function pointSheets(
  record: ReadableRecord,
  now: ShopNow,
  forecast: MachineForecast,
  roles: readonly MachineSheet['points'][number]['role'][],
): Sheet['points'] {
  const onRecord = pointsOfShop(now.shop.life.points).byId;
  const pointIds = forecast.points.map(({ pointId }) => pointId);
  const assemblyIds = [...new Set(pointIds.map((pointId) => onRecord.get(pointId)!.assemblyId))];
  const details = new Map(pointsOfAssemblies(record, assemblyIds).map((point) => [point.id, point]));
  const sizes = Map.groupBy(sizeRowsOfPoints(record, pointIds), ({ pointId }) => pointId);
  const shims = Map.groupBy(shimsOfPoints(record, pointIds), ({ pointId }) => pointId);
  const asked = Map.groupBy(
    renewalRowsOfPoints(record, pointIds).filter(({ parked, sizeMm }) => parked && sizeMm !== null),
    ({ pointId }) => pointId,
  );
  return forecast.points.map((its, i) => {
    const point = onRecord.get(its.pointId)!;
    return pointSheet({
      point,
      details: details.get(its.pointId)!,
      series: now.shop.ofPoint(point),
      forecast: its,
      law: forecast.laws.get(its.pointId),
      joint: jointOfSlack(now.shop, point, forecast.laws),
      role: roles[i] ?? 'none',
      settings: settingsOf(now.shop.life),
      machine: now.shop.hours.ofMachine(point.machineId),
      sizes: sizes.get(its.pointId) ?? [],
      shims: shims.get(its.pointId) ?? [],
      renewalsQuestioned: (asked.get(its.pointId) ?? []).map(({ id }) => id),
      asOf: now.asOf,
    });
  });
}

/** The sketch of an assembly is that of its kind, as it stands now. */
function assemblySheets(
  record: ReadableRecord,
  assemblies: ReturnType<typeof assembliesOnMachine>,
): z.input<typeof zAssemblySheet>[] {
  const sketches = sketchesByKind(record);
  return assemblies.map(({ id, name, kind, kindId, serial }) => ({
    assemblyId: id,
    name,
    kind,
    serial,
    sketch: kindId === null ? null : (sketches.get(kindId) ?? null),
    positions: positionsOf(record, id).map((position) => ({
      positionId: position.id,
      item: position.item,
      name: position.name,
      safety: position.safety,
      mustStayStandard: position.mustStayStandard,
    })),
  }));
}

function sketchesByKind(record: ReadableRecord): Map<number, AssemblyKind['sketch']> {
  return new Map(listKinds(record).map(({ id, template }) => [id, zAssemblyKind.parse(template).sketch]));
}

/** Of the assemblies on it now, open ones first, then newest first. */
function findingsOfMachine(
  record: ReadableRecord,
  { shop }: ShopNow,
  machineId: number,
  assemblyIds: readonly number[],
): Sheet['findings'] {
  const findings = shop.life.findings
    .filter((finding) => assemblyIds.includes(finding.assemblyId) || finding.machineId === machineId)
    .sort(
      (a, b) =>
        Number(a.closedOn !== null) - Number(b.closedOn !== null) ||
        (a.takenOn > b.takenOn ? -1 : a.takenOn < b.takenOn ? 1 : b.id - a.id),
    );
  return findingSheetsWhole(record, findings, shop.life);
}
