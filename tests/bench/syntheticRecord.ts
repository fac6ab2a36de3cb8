import { ensureClass } from '#core/record/classStore.ts';
import { writeEntry } from '#core/record/entry.ts';
import { insertInto } from '#core/record/insertInto.ts';
import { openRecord } from '#core/record/openRecord.ts';
import type { WritableRecord } from '#core/record/recordFile.ts';
import {
  assemblies,
  customers,
  dialReadings,
  machines,
  measuringPoints,
  ownerships,
  pointLimits,
  positions,
  renewals,
  sittings,
  sizes,
  stripDowns,
} from '#core/record/schema.ts';
import { addDays, day } from '#core/units/day.ts';
import { layDownShop } from '#core/use-cases/newShop.ts';
import { seededDice } from '#tests/support/seededDice.ts';

/** How much is laid down: 5,000 machines are 100,000 points, 1,000,000 sizes and 250,000 dial readings. */
export type SyntheticSize = {
  machines: number;
  /** of a machine; absent: 20 */
  points?: number;
  /** of a machine; absent: 10 */
  visits?: number;
  /** how many kinds of point, a class each; absent: all */
  sorts?: number;
};

const DIALS = 50;
const FIRST_DAY = day('2011-01-03');
const YEARS = 15;
export const BENCH_AS_OF = day('2026-11-02');

/** A kind of point: how it wears in the mean [mm in 1,000 h], its new size and limit [mm], its gauge [mm, 1 sd]. */
const SORTS = [
  { partClass: 'bench nylon strip', wears: 'down', newSizeMm: 12, renewAtMm: 9, per1000Mm: 0.5, gaugeMm: 0.05 },
  { partClass: 'bench pin', wears: 'down', newSizeMm: 40, renewAtMm: 39, per1000Mm: 0.14, gaugeMm: 0.02 },
  { partClass: 'bench bush', wears: 'up', newSizeMm: 40, renewAtMm: 41.2, per1000Mm: 0.17, gaugeMm: 0.03 },
  { partClass: 'bench pivot slack', wears: 'up', newSizeMm: 0.3, renewAtMm: 2, per1000Mm: 0.25, gaugeMm: 0.06 },
] as const;

/**
 * Lays down an invented shop far bigger than any: machines of 20 points, each measured in 10 visits and renewed when worn
 * out, each machine's meter read 50 times. Wear is a gamma process with a rate of its own for each part, times a harshness
 * of its machine; nothing of it is drawn from the forecast's model. The same file from the same size.
 */
export function laySyntheticRecord(
  path: string,
  { machines: count, points = 20, visits = 10, sorts = SORTS.length }: SyntheticSize,
): void {
  const record = openRecord(path, { create: true });
  const madeAt = '2026-11-01T08:00:00.000Z';
  layDownShop(record, madeAt, { isDemo: false });
  writeEntry(record, { madeAt, madeBy: 'bench', what: 'record/bringIn' }, (w, entryId) => {
    const classIds = SORTS.slice(0, sorts).map(({ partClass }) => ensureClass(w, entryId, partClass));
    const dice = seededDice(20_261_102);
    for (let number = 1; number <= count; number++) layMachine(w, entryId, { number, points, visits }, classIds, dice);
  });
  record.sqlite.exec('ANALYZE');
  record.close();
}

type Dice = ReturnType<typeof seededDice>;

function layMachine(
  w: WritableRecord,
  entryId: number,
  { number, points, visits: visitCount }: { number: number; points: number; visits: number },
  classIds: readonly number[],
  dice: Dice,
): void {
  const customerId = insertInto(w, customers, {
    name: `Holding ${number}`,
    place: `Parish ${number % 97}`,
    address: '',
    phone: '',
    email: '',
  });
  const machineId = insertInto(w, machines, {
    entryId,
    name: `Bench ${number}`,
    make: 'Bench',
    model: 'B',
    serial: `B-${number}`,
    builtYear: 2010,
    note: '',
  });
  insertInto(w, ownerships, { entryId, machineId, customerId, fromOn: null });
  const hoursPerYear = 300 + 900 * dice.uniform();
  const harshness = Math.exp(0.3 * dice.normal());
  const hoursAt = (year: number) => Math.round(hoursPerYear * year);
  const onDay = (year: number) => addDays(FIRST_DAY, Math.round(year * 365));
  for (let place = 0; place < DIALS; place++) {
    const year = (YEARS * (place + 1)) / DIALS;
    const common = { entryId, machineId, takenOn: onDay(year), errorHours: 1, saidBy: 'bench' };
    insertInto(w, dialReadings, { ...common, kind: 'reading', dialHours: hoursAt(year) });
  }
  const assemblyId = insertInto(w, assemblies, { entryId, kindId: null, name: 'Bench hitch', serial: '' });
  insertInto(w, sittings, { entryId, assemblyId, machineId, fromOn: null });
  const visits = Array.from({ length: visitCount }, (_, place) => {
    const year = (YEARS * (place + 1)) / (visitCount + 0.5);
    const takenOn = onDay(year);
    const dialHours = hoursAt(year);
    const id = insertInto(w, stripDowns, { entryId, machineId, takenOn, dialHours, fitter: 'bench', note: '' });
    return { id, dialHours };
  });
  for (let item = 1; item <= points; item++) {
    const sort = SORTS[item % classIds.length]!;
    const safety = item % 5 === 0;
    const positionId = insertInto(w, positions, { entryId, assemblyId, item, name: `Place ${item}`, safety });
    const pointId = insertInto(w, measuringPoints, {
      entryId,
      positionId,
      name: 'size',
      measures: sort.wears === 'down' ? 'diameter' : 'bore',
      wears: sort.wears,
      partClassId: classIds[item % classIds.length]!,
      gaugeErrorMm: sort.gaugeMm,
      fittedMachineHours: 0,
      stations: [],
    });
    const { newSizeMm, renewAtMm } = sort;
    const limits = { newSizeMm, newSizeTolMm: 0.1, renewAtMm, rejectAtMm: null, source: 'bench', enteredBy: 'bench' };
    insertInto(w, pointLimits, { entryId, pointId, fromOn: null, ...limits });
    layWear(w, entryId, pointId, sort, visits, harshness, dice);
  }
}

function layWear(
  w: WritableRecord,
  entryId: number,
  pointId: number,
  sort: (typeof SORTS)[number],
  visits: readonly { id: number; dialHours: number }[],
  harshness: number,
  dice: Dice,
): void {
  const sign = sort.wears === 'down' ? -1 : 1;
  const limitMm = Math.abs(sort.renewAtMm - sort.newSizeMm);
  const newRate = () => (sort.per1000Mm / 1000) * harshness * Math.exp(0.35 * dice.normal());
  let rate = newRate();
  let wearMm = 0;
  let from = 0;
  for (const { id, dialHours } of visits) {
    wearMm += rate * (dialHours - from) * gammaFactor(dice);
    from = dialHours;
    const sizeMm = sort.newSizeMm + sign * wearMm + sort.gaugeMm * dice.normal();
    insertInto(w, sizes, { entryId, stripDownId: id, pointId, station: '', event: 'as-found', sizeMm: round(sizeMm) });
    if (wearMm < 0.8 * limitMm) continue;
    insertInto(w, renewals, { entryId, stripDownId: id, pointId, hoursKnown: true, sizeMm: null });
    wearMm = 0;
    rate = newRate();
  }
}

/** Mean 1, coefficient of variation about a third: the sum of nine exponentials over nine. */
const gammaFactor = ({ uniform }: Dice): number =>
  Array.from({ length: 9 }, () => -Math.log(1 - uniform())).reduce((sum, one) => sum + one, 0) / 9;

const round = (mm: number): number => Math.round(mm * 100) / 100;
