import type { Handler } from '../../contract/operation.ts';
import type { ComeInBy, recallCalendar } from '../../contract/recall.ts';
import { type CalendarDay, calendarFile } from '../../exchange/calendarFile.ts';
import { plainText } from '../../papers/letters/letterFacts.ts';
import { readAbout } from '../../record/aboutStore.ts';
import { type AgreedVisit, visitsEverAgreed } from '../../record/calendarStore.ts';
import { type ContactRow, listContacts } from '../../record/contactStore.ts';
import { lastEntryId } from '../../record/entryStore.ts';
import { machineNames } from '../../record/machineStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { addDays, day } from '../../units/day.ts';
import { hoursText, wholeFigure } from '../../words/quantityText.ts';
import { type Context, recordOf } from '../context.ts';
import { forecastsStanding } from '../forecastsStanding.ts';
import { isLarge } from '../learning/heardNow.ts';
import { machineNamesNow } from '../machineNamesNow.ts';
import { type FarmOnRecord, recallFacts } from './recallFacts.ts';

/**
 * Visits that were agreed, and the day each machine's deciding hours fall on. What was given out and is no more stays in the
 * file, cancelled, so that a calendar which has it lets go of it. A farm that asked not to be contacted has no due dates in it.
 */
export const recallCalendarHandler: Handler<typeof recallCalendar, Context> = (context) => {
  const record = recordOf(context);
  const { asOf, dues } = forecastsStanding(context, isLarge(context));
  const due = dues();
  const names = machineNamesNow(context);
  const identity = readAbout(record)?.identity ?? 'record';
  const { farms } = recallFacts(record, asOf, due);
  const planned = visitsEverAgreed(record);
  const visits = [...visitDays(record, farms, planned, identity), ...plannedDays(record, farms, planned, identity)];
  const dueDates = farms.flatMap((farm) =>
    farm.machines.flatMap(({ machineId }) =>
      dueDay(
        due.get(machineId)?.comeInBy ?? null,
        farm,
        { machineId, name: names.get(machineId)?.name ?? '' },
        identity,
      ),
    ),
  );
  const { name } = readSettings(record);
  return {
    fileName: `recall-${context.today()}.ics`,
    ics: calendarFile(name || 'Recall', [...visits, ...dueDates], lastEntryId(record), context.now()),
    visits: visits.filter(({ cancelled }) => !cancelled).length,
    dueDates: dueDates.filter(({ cancelled }) => !cancelled).length,
  };
};

function visitDays(
  record: ReadableRecord,
  farms: readonly FarmOnRecord[],
  planned: readonly AgreedVisit[],
  identity: string,
): CalendarDay[] {
  const names = machineNames(record);
  const farmOf = new Map(farms.map((farm) => [farm.customerId, farm]));
  return listContacts(record)
    .filter(({ answer, answerOn }) => answer === 'booked' && answerOn !== null)
    .map((row) => {
      const machine = row.machineId === null ? '' : (names.get(row.machineId) ?? '');
      const customer = farmOf.get(row.customerId)?.customer;
      return {
        uid: `visit-${row.id}@${identity}`,
        on: row.answerOn ?? row.madeOn,
        to: row.answerOn ?? row.madeOn,
        summary: ['Visit: ', [machine, customer?.name ?? ''].filter(Boolean).join(', ')].join(''),
        description: visitText(row, customer?.phone ?? ''),
        location: '',
        cancelled: row.struck || planned.some((visit) => covers(visit, row)),
        busy: true,
      };
    });
}

/** A day agreed on the telephone that the winter plan has taken over stands in the calendar once. */
const covers = ({ machineId, holds, weeks }: AgreedVisit, row: ContactRow): boolean =>
  holds &&
  machineId === row.machineId &&
  weeks.some(
    ({ weekFrom }) => row.answerOn !== null && weekFrom <= row.answerOn && row.answerOn <= addDays(weekFrom, 6),
  );

/**
 * Visits of the winter plan that were agreed: from the day of the first week told on the telephone, else its Monday, to the
 * Friday of the last. One at the farm says where.
 */
function plannedDays(
  record: ReadableRecord,
  farms: readonly FarmOnRecord[],
  planned: readonly AgreedVisit[],
  identity: string,
): CalendarDay[] {
  const names = machineNames(record);
  const booked = listContacts(record).filter(({ answer, struck }) => answer === 'booked' && !struck);
  return planned.flatMap((visit) => {
    const { id, machineId, weeks, note, atFarm, holds } = visit;
    const [first] = weeks;
    const last = weeks.at(-1);
    if (!first || !last) return [];
    const farm = farms.find(({ machines }) => machines.some((machine) => machine.machineId === machineId));
    const told = booked.findLast((row) => covers({ ...visit, weeks: [first] }, row))?.answerOn ?? null;
    const friday = addDays(last.weekFrom, 4);
    const hours = weeks.reduce((sum, { benchHours }) => sum + benchHours, 0);
    return [
      {
        uid: `plan-${id}@${identity}`,
        ...{ on: told ?? first.weekFrom, to: told !== null && told > friday ? told : friday },
        summary: `${atFarm ? 'At the farm' : 'Visit'}: ${[names.get(machineId) ?? '', farm?.name ?? ''].filter(Boolean).join(', ')}`,
        description: plainText(
          [`${wholeFigure(hours)} bench hours on the winter plan.`, note, farm && `Telephone ${farm.customer.phone}`]
            .filter(Boolean)
            .join('\n'),
        ),
        location:
          atFarm && farm ? plainText([farm.customer.address, farm.customer.place].filter(Boolean).join(', ')) : '',
        ...{ cancelled: !holds, busy: true },
      },
    ];
  });
}

const visitText = ({ madeOn, saidBy, note }: ContactRow, phone: string): string =>
  [`Agreed on ${madeOn}${saidBy === '' ? '' : ` with ${saidBy}`}.`, note, phone && `Telephone ${phone}`]
    .filter(Boolean)
    .join('\n');

function dueDay(
  by: ComeInBy | null,
  { customer, terms }: FarmOnRecord,
  { machineId, name }: { machineId: number; name: string },
  identity: string,
): CalendarDay[] {
  if (!by?.about) return [];
  const dial = by.hoursAre === 'machine' ? 'since new' : `on the meter${by.dialMachine ? ` of ${by.dialMachine}` : ''}`;
  return [
    {
      uid: `due-${machineId}@${identity}`,
      on: day(by.about),
      to: day(by.about),
      summary: plainText(`${name}, ${customer.name}: in by ${hoursText(Math.round(by.dialHours / 10) * 10)}`),
      description: plainText(
        `${by.label}: deciding hours ${hoursText(Math.round(by.dialHours / 10) * 10)} ${dial}, about this day at this farm's use. A planning aid, not a certificate.`,
      ),
      location: '',
      cancelled: terms.noContact,
      busy: false,
    },
  ];
}
