import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { day } from '../units/day.ts';
import { type CalendarDay, calendarFile } from './calendarFile.ts';

/** Read back by another library than the one that writes it; rules as in RFC 5545. */
const aDay = (its: Partial<CalendarDay> = {}): CalendarDay => ({
  uid: 'due-1@record',
  on: day('2026-12-03'),
  to: day('2026-12-03'),
  summary: 'Vessel 118, Hollin Top: in by 6 820 h',
  description: 'One; two, three\nfour',
  location: '',
  cancelled: false,
  busy: false,
  ...its,
});

const MADE_AT = '2026-11-29T10:00:00.000Z';
const eventsOf = (ics: string) =>
  new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));

describe('a calendar file', () => {
  it('is read by an outside parser to the very days and texts', () => {
    const [event] = eventsOf(calendarFile('Fenwater Works', [aDay()], 7, MADE_AT));
    expect(event).toMatchObject({ uid: 'due-1@record', sequence: 7, description: 'One; two, three\nfour' });
    expect(event!.startDate.toString()).toBe('2026-12-03');
    expect(event!.startDate.isDate).toBe(true);
    expect(event!.endDate.toString()).toBe('2026-12-04');
  });

  it('runs to the day after the last of a visit, over the end of a year', () => {
    const [event] = eventsOf(calendarFile('', [aDay({ on: day('2026-12-28'), to: day('2027-01-01') })], 1, MADE_AT));
    expect([event!.startDate.toString(), event!.endDate.toString()]).toEqual(['2026-12-28', '2027-01-02']);
  });

  it('ends its lines with CRLF and folds them by octets, none longer than 75 (RFC 5545, 3.1)', () => {
    const summary = 'Höllin Täp, Œuvre 118 '.repeat(12).trim();
    const ics = calendarFile('Wörks', [aDay({ summary })], 1, MADE_AT);
    for (const line of ics.split('\r\n')) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n]/);
    }
    expect(eventsOf(ics)[0]!.summary).toBe(summary);
  });

  it('takes an event back by name, and has what every event must have (3.6.1)', () => {
    const ics = calendarFile('', [aDay({ cancelled: true, busy: true })], 3, MADE_AT);
    const [event] = new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent');
    expect(event!.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(event!.getFirstPropertyValue('transp')).toBe('TRANSPARENT');
    expect(String(event!.getFirstPropertyValue('dtstamp'))).toBe('2026-11-29T10:00:00Z');
    const calendar = new ICAL.Component(ICAL.parse(ics));
    expect([calendar.getFirstPropertyValue('version'), calendar.getFirstPropertyValue('prodid')]).toEqual([
      '2.0',
      expect.stringContaining('Hours and Wear'),
    ]);
  });
});
