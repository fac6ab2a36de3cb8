import type { ContactTerms } from '#core/contract/recall.ts';
import { day } from '#core/units/day.ts';
import { readDay } from '#renderer/words/readDay.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

/** What is to be kept to, as typed. */
export type ReachForm = {
  noContact: boolean;
  words: string;
  kmText: string;
  minutesText: string;
  /** "15.10." */
  seasonText: string;
};

export const reachFormOf = ({ noContact, words, distanceKm, driveMinutes, seasonTo }: ContactTerms): ReachForm => ({
  noContact,
  words,
  kmText: distanceKm === null ? '' : String(distanceKm),
  minutesText: driveMinutes === null ? '' : String(driveMinutes),
  seasonText: seasonTo === null ? '' : `${Number(seasonTo.slice(3))}.${Number(seasonTo.slice(0, 2))}.`,
});

export type ReachFaults = { km: boolean; minutes: boolean; season: boolean };

/** Nothing to send while a box cannot be read; an empty one says that it is not known. */
export function readReach(form: ReachForm): { terms: ContactTerms | null; faults: ReachFaults } {
  const km = figureOf(form.kmText);
  const minutes = figureOf(form.minutesText);
  const season = seasonOf(form.seasonText);
  const faults = { km: km === undefined, minutes: minutes === undefined, season: season === undefined };
  if (km === undefined || minutes === undefined || season === undefined) return { terms: null, faults };
  const { noContact, words } = form;
  return { terms: { noContact, words, distanceKm: km, driveMinutes: minutes, seasonTo: season }, faults };
}

const figureOf = (text: string): number | null | undefined => {
  if (text.trim() === '') return null;
  const read = readNumber(text, 'mm');
  return read.ok && read.value >= 0 && read.value <= 2000 ? read.value : undefined;
};

/** Read as in a year that has a 29th of February. */
const seasonOf = (text: string): string | null | undefined => {
  if (text.trim() === '') return null;
  return readDay(text, day('2028-12-31'))?.slice(5);
};
