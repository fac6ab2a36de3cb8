import ical, { ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import { addDays, type Day } from '../units/day.ts';

/** Whole days in somebody's calendar. */
export type CalendarDay = {
  /** the same for the same thing each time the file is made, so that bringing it in again changes it and adds none */
  uid: string;
  on: Day;
  /** last day of it */
  to: Day;
  summary: string;
  description: string;
  location: string;
  /** it was given out once and is no more */
  cancelled: boolean;
  /** the day is taken by it; else it is only a date to keep in mind */
  busy: boolean;
};

/**
 * A calendar file of whole days.
 *
 * @param version rises whenever the record changes: a program that has an event of that name takes the later one
 * @param madeAt ISO instant of its making
 * @source RFC 5545: 3.8.4.7 UID, 3.8.7.4 SEQUENCE, 3.8.7.2 DTSTAMP; an all-day event ends on the day after (3.6.1)
 * @checked core/exchange/calendarFile.test.ts
 */
export function calendarFile(name: string, days: readonly CalendarDay[], version: number, madeAt: string): string {
  const calendar = ical({
    name,
    prodId: { company: 'Hours and Wear', product: 'Recall', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  for (const { uid, on, to, summary, description, location, cancelled, busy } of days) {
    calendar.createEvent({
      id: uid,
      sequence: version,
      stamp: new Date(madeAt),
      allDay: true,
      start: midnight(on),
      end: midnight(addDays(to, 1)),
      summary,
      description,
      location: location === '' ? null : location,
      status: cancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
      transparency: busy && !cancelled ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
    });
  }
  return calendar.toString();
}

/** The library writes a date without a zone as it stands in UTC. */
const midnight = (on: Day): Date => new Date(`${on}T00:00:00Z`);
