import { createContext, type ReactNode, useContext } from 'react';
import type { RecordState } from '#core/contract/record.ts';
import type { Day } from '#core/units/day.ts';
import { day } from '#core/units/day.ts';
import { type Writing, writingOf } from '#core/words/quantityText.ts';

const OpenRecord = createContext<RecordState | null>(null);

/** The record all screens inside it look at. */
export const RecordProvider = ({ record, children }: { record: RecordState; children: ReactNode }) => (
  <OpenRecord.Provider value={record}>{children}</OpenRecord.Provider>
);

/** @throws outside a RecordProvider: screens that need a record stand inside one */
export function useRecord(): RecordState {
  const record = useContext(OpenRecord);
  if (!record) throw new Error('Broken invariant: this screen stands inside an open record');
  return record;
}

/** The program's today: screens have no clock of their own. */
export const useToday = (): Day => day(useRecord().today);

/** How this shop writes figures; a point and millimetres where no record is open. */
export function useWriting(): Writing {
  const record = useContext(OpenRecord);
  return record ? writingOf(record) : '.';
}
