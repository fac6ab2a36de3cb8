import { type AssemblyKind, zAssemblyKind } from '../contract/shop.ts';
import { listKinds } from '../record/kindStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';

/** The assembly kinds of the shop, their templates read as the contract says. */
export const kindsOnRecord = (db: ReadableRecord): (AssemblyKind & { kindId: number })[] =>
  listKinds(db).map(({ id, template }) => ({ ...zAssemblyKind.parse(template), kindId: id }));
