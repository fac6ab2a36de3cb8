import { describe, expect, it } from 'vitest';
import { addDays, day } from '../units/day.ts';
import { lastsTo } from './lookAhead.ts';
import { type RecallFarm, recallList } from './recallList.ts';
import type { RecallContact, RecallMachine, RecallTerms } from './recallMachine.ts';

/** Rules of our own; nothing outside the project says whom a shop should ring. */
const AS_OF = day('2026-11-29');
const shop = {
  asOf: AS_OF,
  leadDays: 28,
  winterOfYear: { winterFrom: '11-01', winterTo: '02-28' },
  winters: [
    { from: day('2026-11-01'), to: day('2027-02-28') },
    { from: day('2027-11-01'), to: day('2028-02-29') },
  ],
};

const aMachine = (its: Partial<RecallMachine> = {}): RecallMachine => ({
  machineId: 1,
  safetyFindings: [],
  deciding: { hoursLeft: 300, on: day('2027-06-15') },
  hoursReadOn: day('2026-10-01'),
  hasMeter: true,
  visitTo: null,
  contacts: [],
  ...its,
});
const terms = (its: Partial<RecallTerms> = {}): RecallTerms => ({
  noContact: false,
  distanceKm: null,
  seasonTo: null,
  quiet: [],
  ...its,
});
const aFarm = (customerId: number, machines: RecallMachine[], its: Partial<RecallTerms> = {}): RecallFarm => ({
  ...{ customerId, name: `Farm ${customerId}`, terms: terms(its), machines },
});
const aContact = (its: Partial<RecallContact> = {}): RecallContact => ({
  entered: 10,
  madeOn: day('2026-11-10'),
  way: 'phone',
  answer: null,
  answerOn: null,
  callBackOn: null,
  ...its,
});

const far = { hoursLeft: 4000, on: day('2031-05-01') };

/** What one machine is on the list for, and where it stands. */
function standing(machine: Partial<RecallMachine>, its: Partial<RecallTerms> = {}, asOf = AS_OF) {
  const lists = recallList([aFarm(1, [aMachine(machine)], its)], { ...shop, asOf });
  const due = [...lists.toContact, ...lists.waiting, ...lists.held][0]?.due[0];
  if (!due) return 'not due';
  return due.standing.code === 'held' ? `held, ${due.standing.why} to ${due.standing.until}` : due.standing.code;
}

function reasonsOf(machine: Partial<RecallMachine>, its: Partial<RecallTerms> = {}) {
  const { toContact } = recallList([aFarm(1, [aMachine(machine)], its)], shop);
  return toContact[0]?.due[0]?.reasons.map(({ code }) => code) ?? [];
}

describe('a machine is due', () => {
  it.each([
    { on: '2027-11-28', due: true, why: 'less the lead it is the last day before the next winter' },
    { on: '2027-11-29', due: false, why: 'a day later it can come in next winter' },
    { on: '2026-12-20', due: true, why: 'within the lead itself' },
  ])('by hours that fall on $on: $due, $why', ({ on, due }) => {
    expect(reasonsOf({ deciding: { hoursLeft: 400, on: day(on) } })).toEqual(due ? ['hours'] : []);
  });

  it.each([
    { seasonTo: '08-31', on: '2027-09-28', due: true },
    { seasonTo: '08-31', on: '2027-09-29', due: false },
    { seasonTo: '02-01', on: '2028-02-20', due: true },
  ])('up to the end of a farm’s own season, $seasonTo: $on is $due', ({ seasonTo, on, due }) => {
    expect(reasonsOf({ deciding: { hoursLeft: 400, on: day(on) } }, { seasonTo })).toEqual(due ? ['hours'] : []);
  });

  it('by hours gone by, even where no day can be said', () => {
    expect(reasonsOf({ deciding: { hoursLeft: -1, on: null } })).toEqual(['hours']);
    expect(reasonsOf({ deciding: { hoursLeft: 1, on: null } })).toEqual([]);
    expect(reasonsOf({ deciding: null })).toEqual([]);
  });

  it('by every open safety finding, however far its hours reach', () => {
    const found = { foundOn: day('2024-01-01'), doNotUse: false, entered: 1 };
    expect(reasonsOf({ deciding: far, safetyFindings: [found] })).toEqual(['safety']);
  });

  it.each([
    { readOn: '2025-11-29', silent: false },
    { readOn: '2025-11-28', silent: true },
    { readOn: null, silent: true },
  ])('when its meter was last read on $readOn: silent $silent', ({ readOn, silent }) => {
    const hoursReadOn = readOn === null ? null : day(readOn);
    expect(reasonsOf({ deciding: far, hoursReadOn })).toEqual(silent ? ['no-hours'] : []);
    expect(reasonsOf({ deciding: far, hoursReadOn, hasMeter: false })).toEqual([]);
  });

  it('on the day its owner was promised to be rung', () => {
    const promise = (callBackOn: string) => [aContact({ callBackOn: day(callBackOn) })];
    expect(reasonsOf({ deciding: far, contacts: promise('2026-11-29') })).toEqual(['call-back']);
    expect(standing({ contacts: promise('2026-11-30') })).toBe('held, call-back to 2026-11-29');
    const kept = [...promise('2026-11-20'), aContact({ madeOn: day('2026-11-20') })];
    expect(reasonsOf({ deciding: far, contacts: kept })).toEqual([]);
  });
});

it('a 29th of February ends a season on the 28th where there is none', () => {
  expect(lastsTo({ ...shop, winters: shop.winters.slice(0, 1) }, { seasonTo: '02-29' })).toBe('2028-02-29');
  expect(lastsTo(shop, { seasonTo: null })).toBe('2027-10-31');
});

describe('what was answered keeps a machine off the list', () => {
  const on = day('2026-12-10');
  it.each([
    { answer: { answer: 'booked', answerOn: on }, stands: 'held, booked to 2026-12-10', back: '2026-12-11' },
    { answer: { answer: 'booked' }, stands: 'held, booked to 2027-02-28', back: '2027-03-01' },
    { answer: { answer: 'later', answerOn: on }, stands: 'held, later to 2026-12-09', back: '2026-12-10' },
    { answer: { answer: 'later' }, stands: 'held, later to 2026-12-09', back: '2026-12-10' },
    { answer: { answer: 'declined' }, stands: 'held, declined to 2027-02-28', back: '2027-03-01' },
  ] as const)('$answer: $stands, back on $back', ({ answer, stands, back }) => {
    const contacts = [aContact(answer)];
    expect(standing({ contacts })).toBe(stands);
    expect(standing({ contacts }, {}, day(back))).toBe('to-contact');
  });

  it('sold keeps it off for good, whatever is found', () => {
    const contacts = [aContact({ answer: 'sold' }), aContact({ madeOn: day('2026-11-20') })];
    const safetyFindings = [{ foundOn: day('2026-11-25'), doNotUse: true, entered: 1 }];
    expect(standing({ contacts, safetyFindings }, {}, day('2029-01-01'))).toBe('held, sold to null');
  });

  it('but not what is found since: nobody has told them of that', () => {
    const contacts = [aContact({ answer: 'declined' })];
    const found = (foundOn: string, entered = 1) => [{ foundOn: day(foundOn), doNotUse: false, entered }];
    expect(standing({ contacts, safetyFindings: found('2026-11-09') })).toBe('held, declined to 2027-02-28');
    expect(standing({ contacts, safetyFindings: found('2026-11-10') })).toBe('held, declined to 2027-02-28');
    expect(standing({ contacts, safetyFindings: found('2026-11-11') })).toBe('to-contact');
    // a sheet of before that came on record since
    expect(standing({ contacts, safetyFindings: found('2026-11-01', 11) })).toBe('to-contact');
  });

  it.each(['slip', 'email', 'message'] as const)('a %s sent is waited for two weeks', (way) => {
    const contacts = [aContact({ way })];
    expect(standing({ contacts }, {}, day('2026-11-24'))).toBe('waiting');
    expect(standing({ contacts }, {}, day('2026-11-25'))).toBe('to-contact');
  });

  it('a call that reached nobody keeps nothing off', () => {
    expect(standing({ contacts: [aContact()] })).toBe('to-contact');
  });

  it('a visit on the plan keeps it off till then, but for what must not be used', () => {
    expect(standing({ visitTo: day('2027-01-10') })).toBe('held, booked to 2027-01-10');
    const safetyFindings = [{ foundOn: day('2026-11-01'), doNotUse: true, entered: 1 }];
    expect(standing({ visitTo: day('2027-01-10'), safetyFindings })).toBe('to-contact');
    expect(standing({ visitTo: day('2026-11-28') })).toBe('to-contact');
  });
});

describe('wishes', () => {
  const stop = { foundOn: day('2026-11-01'), doNotUse: true, entered: 1 };
  it('a farm that asked not to be contacted is in no list at all', () => {
    const lists = recallList([aFarm(1, [aMachine({ safetyFindings: [stop] })], { noContact: true })], shop);
    expect(lists).toEqual({ toContact: [], waiting: [], held: [] });
  });

  it('a quiet period holds back all but a finding that forbids use', () => {
    const quiet = [{ fromOn: day('2026-11-20'), toOn: AS_OF }];
    expect(standing({}, { quiet })).toBe('held, quiet to 2026-11-29');
    expect(standing({}, { quiet }, addDays(AS_OF, 1))).toBe('to-contact');
    expect(standing({ safetyFindings: [{ ...stop, doNotUse: false }] }, { quiet })).toBe('held, quiet to 2026-11-29');
    expect(standing({ safetyFindings: [stop] }, { quiet })).toBe('to-contact');
  });
});

describe('the order', () => {
  const left = (hoursLeft: number) => ({ deciding: { hoursLeft, on: day('2027-03-01') } });
  const order = (...farms: RecallFarm[]) => recallList(farms, shop).toContact.map(({ farm }) => farm.customerId);

  it('is safety, promises, deciding hours, distance, and silence last', () => {
    const found = (doNotUse: boolean) => ({ safetyFindings: [{ foundOn: day('2026-11-01'), doNotUse, entered: 1 }] });
    const silent = { deciding: null, hoursReadOn: null };
    const promised = { contacts: [aContact({ callBackOn: AS_OF })] };
    expect(
      order(
        aFarm(1, [aMachine(silent)]),
        aFarm(2, [aMachine(left(210))], { distanceKm: 40 }),
        aFarm(3, [aMachine(left(290))], { distanceKm: 3 }),
        aFarm(4, [aMachine(left(-20))]),
        aFarm(5, [aMachine(found(false))]),
        aFarm(6, [aMachine({ ...left(900), ...found(true) })]),
        aFarm(7, [aMachine({ ...left(900), ...promised })]),
        aFarm(8, [aMachine(left(201))]),
      ),
    ).toEqual([6, 5, 7, 4, 3, 2, 8, 1]);
  });

  it('of one farm is that of its gravest machine; the others stand under it', () => {
    const farm = aFarm(1, [
      aMachine({ machineId: 1, ...left(500) }),
      aMachine({ machineId: 2, ...left(-50) }),
      aMachine({ machineId: 3, deciding: far }),
    ]);
    expect(order(aFarm(2, [aMachine(left(100))]), farm)).toEqual([1, 2]);
    const [first] = recallList([farm], shop).toContact;
    expect(first!.due.map(({ machine }) => machine.machineId)).toEqual([2, 1]);
  });
});
