import { eq, sql } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import type { Measures } from '../shop/assemblyKinds.ts';
import type { PartClass } from '../shop/partClass.ts';
import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { classKnowledge, partClasses } from './schema.ts';

export type ClassOnRecord = PartClass & { id: number };

/** All part classes by name, each with the last that was said of it. */
export function listClasses(db: ReadableRecord, knownAt = NOW_KNOWN): ClassOnRecord[] {
  type Row = [
    id: number,
    name: string,
    wearFromMm: number | null,
    wearToMm: number | null,
    hoursFrom: number | null,
    hoursTo: number | null,
    source: string | null,
    newSizeTolMm: number | null,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT c.id, c.name, k.wear_from_mm, k.wear_to_mm, k.hours_from, k.hours_to, k.source, k.new_size_tol_mm
     FROM part_classes c LEFT JOIN class_knowledge k ON k.id =
       (SELECT max(n.id) FROM class_knowledge n WHERE n.part_class_id = c.id AND ${standing('n')})
     WHERE ${standing('c')} OR EXISTS (SELECT 1 FROM measuring_points p WHERE p.part_class_id = c.id AND ${standing('p')})
     ORDER BY c.name COLLATE NOCASE`,
    { knownAt },
  );
  return rows.map(([id, name, wearFromMm, wearToMm, hoursFrom, hoursTo, source, newSizeTolMm]) => ({
    id,
    name,
    tradeWear:
      wearFromMm === null || wearToMm === null || hoursFrom === null || hoursTo === null
        ? null
        : { wearFromMm, wearToMm, hoursFrom, hoursTo, source: source ?? '' },
    newSizeTolMm,
  }));
}

/** The class of that name, made when it is not there yet. */
export function ensureClass(w: WritableRecord, entryId: number, name: string): number {
  const known = w.read
    .select({ id: partClasses.id })
    .from(partClasses)
    .where(sql`${partClasses.name} = ${name} COLLATE NOCASE`)
    .get();
  return known?.id ?? insertInto(w, partClasses, { name, entryId });
}

/** Says anew what is known of a class; what was said before stays in the record. */
export const addKnowledge = (
  w: WritableRecord,
  entryId: number,
  partClassId: number,
  { tradeWear, newSizeTolMm }: Pick<PartClass, 'tradeWear' | 'newSizeTolMm'>,
): number => insertInto(w, classKnowledge, { entryId, partClassId, newSizeTolMm, ...tradeWear });

export function renameClass(w: WritableRecord, partClassId: number, name: string): void {
  const done = w.write.update(partClasses).set({ name }).where(eq(partClasses.id, partClassId)).run();
  assertInvariant(done.changes === 1, 'the class to be renamed is in the record');
}

/** Part classes of the points laid out, by name, with what is measured of the first of each. */
export const classesMeasured = (db: ReadableRecord): { partClass: string; measures: Measures }[] =>
  bulk<[partClass: string, measures: Measures, firstId: number]>(
    db,
    `SELECT c.name, p.measures, min(p.id) FROM measuring_points p JOIN part_classes c ON c.id = p.part_class_id
     WHERE ${standing('p')} GROUP BY c.name ORDER BY c.name`,
    { knownAt: NOW_KNOWN },
  ).map(([partClass, measures]) => ({ partClass, measures }));
