import { and, eq } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import type { ReadableRecord } from './recordFile.ts';
import { findings, renewals, shims, sizes, stripDowns } from './schema.ts';

/** A strip-down as it was first written, by the entry that brought it: what would be typed to write it again. */
export function draftOfStripDown(db: ReadableRecord, stripDownId: number) {
  const visit = db.read.select().from(stripDowns).where(eq(stripDowns.id, stripDownId)).get();
  assertInvariant(visit && visit.machineId !== null, 'the strip-down is on record, on a machine');
  const { machineId, takenOn, dialHours, fitter, note, entryId } = visit;
  const sizeRows = db.read
    .select()
    .from(sizes)
    .where(and(eq(sizes.stripDownId, stripDownId), eq(sizes.entryId, entryId)))
    .orderBy(sizes.id)
    .all();
  const renewalRows = db.read
    .select()
    .from(renewals)
    .where(and(eq(renewals.stripDownId, stripDownId), eq(renewals.entryId, entryId)))
    .orderBy(renewals.id)
    .all();
  const shimRows = db.read
    .select()
    .from(shims)
    .where(and(eq(shims.stripDownId, stripDownId), eq(shims.entryId, entryId)))
    .orderBy(shims.id)
    .all();
  const findingRows = db.read
    .select()
    .from(findings)
    .where(and(eq(findings.stripDownId, stripDownId), eq(findings.entryId, entryId)))
    .orderBy(findings.id)
    .all();
  return {
    machineId,
    takenOn,
    dialHours,
    fitter,
    note,
    sizes: sizeRows.map(({ pointId, station, event, sizeMm, gaugeId, question, parked }) => ({
      pointId,
      station,
      event,
      sizeMm,
      gaugeId,
      answer: question !== null && !parked ? ('right-as-read' as const) : null,
    })),
    renewals: renewalRows.map(({ pointId, sizeMm, hoursKnown, kind, station, stamped, question, parked }) => ({
      pointId,
      sizeMm,
      hoursKnown,
      kind,
      station,
      stamped,
      answer: question !== null && !parked ? ('right-as-read' as const) : null,
    })),
    shims: shimRows.map(({ pointId, shimMm }) => ({ pointId, shimMm })),
    findings: findingRows.map(({ assemblyId, positionId, kind, severity, note: seen }) => ({
      assemblyId,
      positionId,
      kind,
      severity,
      note: seen,
    })),
  };
}
