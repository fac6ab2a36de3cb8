import { putBest } from './greedyWeeks.ts';
import { isBetter, type SearchChoice, UNDONE } from './weekSearch.ts';

/** Rounds after which it is left to the windows. */
const MOST_ROUNDS = 20;

/**
 * Betters a choice visit by visit until nothing more is gained: each is taken out and put where it does least, alone, then
 * in the room of another that finds a place elsewhere.
 */
export function exchangeWeeks(choice: SearchChoice): void {
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = choice.rank;
    for (const visit of choice.freeVisits) {
      choice.put(visit, UNDONE);
      putBest(choice, visit);
    }
    for (const visit of choice.freeVisits)
      if (choice.costsAnything(visit)) for (const other of choice.freeVisits) exchange(choice, visit, other);
    if (!isBetter(choice.rank, before)) return;
  }
}

/** Takes two visits out and puts them back the other way about, each where it does least; undone again if nothing is gained. */
function exchange(choice: SearchChoice, visit: number, other: number): void {
  if (visit === other) return;
  const before = choice.rank;
  const was = [choice.at[visit]!, choice.at[other]!] as const;
  choice.put(visit, UNDONE);
  choice.put(other, UNDONE);
  putBest(choice, visit);
  putBest(choice, other);
  if (isBetter(choice.rank, before)) return;
  choice.put(visit, UNDONE);
  choice.put(other, UNDONE);
  choice.put(visit, was[0]);
  choice.put(other, was[1]);
}
