import type { z } from 'zod';
import type { stripDownRead, zSavedSize } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { listGauges } from '../record/gaugeStore.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { type SizeRow, sizeRowsOfPoints } from '../record/sizeStore.ts';
import { draftOfStripDown } from '../record/stripDownRows.ts';
import { type StripDownOnRecord, stripDownsOf } from '../record/stripDownStore.ts';
import { type Context, recordOf } from './context.ts';
import { pointsOnMachine } from './pointsOnMachine.ts';
import { seriesAround } from './seriesNow.ts';
import { sheetRow } from './stripDownSheet.ts';

/** A sheet on record as it stands now. @throws RefusedError unknown-strip-down */
export const stripDownReadHandler: Handler<typeof stripDownRead, Context> = (context, { stripDownId }) => {
  const record = recordOf(context);
  const { machineId, takenOn, dialHours, fitter, note } = stripDownOrRefuse(record, stripDownId);
  const sizes = sizesOfStripDown(context, stripDownId);
  const measured = new Set(sizes.map(({ pointId }) => pointId));
  const gauges = listGauges(record).filter(({ active }) => active);
  const points = [...pointsOnMachine(context, machineId, takenOn).values()];
  const around = seriesAround(context, machineId);
  const { renewals, shims, findings } = draftOfStripDown(record, stripDownId);
  const assemblies = new Set(
    points.filter(({ life }) => measured.has(life.pointId)).map(({ life }) => life.assemblyId),
  );
  return {
    machineId,
    machine: machineOrRefuse(record, machineId).name,
    takenOn,
    dialHours,
    fitter,
    note,
    rows: points
      .filter(({ life }) => assemblies.has(life.assemblyId))
      .map((point) => sheetRow(context, around, point, gauges)),
    sizes: savedSizes(sizes),
    renewals,
    shims,
    findings,
  };
};

export type StripDownOnMachine = StripDownOnRecord & { machineId: number };

/** @throws RefusedError unknown-strip-down */
export function stripDownOrRefuse(record: ReadableRecord, stripDownId: number): StripDownOnMachine {
  const found = stripDownsOf(record).find(({ id }) => id === stripDownId);
  if (!found || found.machineId === null)
    throw new RefusedError({ code: 'unknown-strip-down', facts: { path: 'stripDownId', stripDownId } });
  return { ...found, machineId: found.machineId };
}

/** Every size of a strip-down, also what was put right since; undone ones are left out. */
export function sizesOfStripDown(context: Context, stripDownId: number): SizeRow[] {
  const record = recordOf(context);
  const { machineId, takenOn } = stripDownOrRefuse(record, stripDownId);
  const pointIds = [...pointsOnMachine(context, machineId, takenOn).keys()];
  return sizeRowsOfPoints(record, pointIds).filter((row) => row.stripDownId === stripDownId && !row.undone);
}

/** Rows of one place in order of entry: the last stands, the others are what it was. */
function savedSizes(rows: readonly SizeRow[]): z.input<typeof zSavedSize>[] {
  return [...Map.groupBy(rows, ({ chainId }) => chainId).values()].flatMap((chain) => {
    const standing = chain.at(-1);
    if (!standing) return [];
    const { id, pointId, station, event, struck, sizeMm, parked } = standing;
    const before = chain.slice(0, -1).map((row, i) => ({
      sizeMm: row.sizeMm,
      reason: chain[i + 1]?.reason ?? '',
      by: chain[i + 1]?.madeBy ?? '',
      at: chain[i + 1]?.madeAt ?? '',
    }));
    return [{ sizeId: id, pointId, station, event, sizeMm: struck ? null : sizeMm, parked, was: before }];
  });
}
