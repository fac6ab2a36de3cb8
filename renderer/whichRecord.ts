import { useSyncExternalStore } from 'react';
import type { Answer, Operation } from '#core/contract/operation.ts';

/**
 * The record this window's numbers are of: the one that was open when it was loaded, or that it opened itself. Two windows may
 * show one program, and a machine's number means another machine once the other window has opened another record.
 */
let meant = '';
/** another window opened another record: its file */
let elsewhere: { file: string | null } | null = null;
const heard = new Set<() => void>();
const openedHere = new Set<() => void>();

/** What a request says it is meant for; empty: this window knows of no record yet. */
export const meantFor = (): string => meant;

/** Takes from an answer which record is open. @param said what its request had said it is meant for */
export function hearOfRecord(operation: Operation, said: string, answer: Answer): void {
  if (!answer.ok) {
    // what was asked before this window opened another itself is merely late
    if (answer.fault.code === 'another-record' && said === meant) tell({ file: fileOf(answer.fault.facts.file) });
    return;
  }
  const isFirst = operation.meantFor === 'unsaid-too' && meant === '';
  if (!operation.opensRecord && !isFirst) return;
  const before = meant;
  meant = (answer.value as { recordId: string }).recordId;
  tell(null);
  if (before !== '' && before !== meant) for (const hear of openedHere) hear();
}

const fileOf = (fact: unknown): string | null => (typeof fact === 'string' ? fact : null);

function tell(news: typeof elsewhere): void {
  if (news?.file === elsewhere?.file && (news === null) === (elsewhere === null)) return;
  elsewhere = news;
  for (const hear of heard) hear();
}

/** The file of the record that another window opened; null: this window's own is open. */
export const useElsewhere = (): { file: string | null } | null =>
  useSyncExternalStore(
    (hear) => {
      heard.add(hear);
      return () => heard.delete(hear);
    },
    () => elsewhere,
  );

/** This window opened another record: what was known of the one before is true of nothing in it. */
export function onOpenedHere(hear: () => void): () => void {
  openedHere.add(hear);
  return () => openedHere.delete(hear);
}
