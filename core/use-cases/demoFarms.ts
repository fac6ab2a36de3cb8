import { insertContact, saveTerms } from '../record/contactStore.ts';
import { type CustomerOnRecord, insertDetails, listCustomers } from '../record/customerStore.ts';
import { writeEntry } from '../record/entry.ts';
import { day } from '../units/day.ts';
import { type Context, entryNow, recordOf } from './context.ts';

/** What is said of the farms of the demo: another version of it is another demo. */
export const DEMO_FARMS_VERSION = '1';

/** The last day anything of it is dated. */
const LAST_DAY = day('2026-10-28');
const BY = 'Demo manager';

/**
 * Telephone numbers, ways and a few calls for the farms of the demo, all invented, so that recall, telephone and winter plan
 * have something to go by. A farm's figures follow from its place among the names: the demo is the same each time.
 * @source numbers: 01632 960000 to 960999, set aside by Ofcom for drama, so that they ring nobody
 */
export function layDemoFarms(context: Context): void {
  if (context.today() < LAST_DAY) return;
  const record = recordOf(context);
  const farms = listCustomers(record);
  writeEntry(record, entryNow(context, 'record/openDemo', BY), (w, entryId) => {
    for (const [place, farm] of farms.entries()) {
      const { id: customerId, erased: _, ...details } = farm;
      insertDetails(w, entryId, customerId, { ...details, phone: `01632 960 ${String(100 + 7 * place)}` });
      saveTerms(w, entryId, { customerId, saidOn: LAST_DAY, noContact: false, words: '', ...wayTo(place) });
    }
    const [one, other] = farms;
    if (one) insertContact(w, entryId, callOf(one, LAST_NOTE));
    if (other) insertContact(w, entryId, callOf(other, RINGS_BACK));
  });
}

/** By road, one way; the contractors' season ends later than the shop's summer. */
const wayTo = (place: number) => {
  const distanceKm = 4 + ((place * 17) % 41);
  return {
    distanceKm,
    driveMinutes: 5 * Math.ceil((6 + 1.3 * distanceKm) / 5),
    seasonTo: place % 6 === 5 ? '11-20' : null,
  };
};

type Call = Pick<Parameters<typeof insertContact>[2], 'answer' | 'callBackOn' | 'note' | 'saidBy'>;
const LAST_NOTE: Call = {
  ...{ answer: null, callBackOn: null, saidBy: 'The son' },
  note: 'Asks what a slide costs in hours before he decides.',
};
const RINGS_BACK: Call = {
  ...{ answer: null, callBackOn: day('2026-11-09'), saidBy: 'The farmer' },
  note: 'Still drilling; ring again once the beet is in.',
};

const callOf = ({ id: customerId }: CustomerOnRecord, said: Call): Parameters<typeof insertContact>[2] => ({
  ...{ customerId, machineId: null, madeOn: LAST_DAY, way: 'phone', slipId: null, answerOn: null },
  ...said,
});
