import type { VisitStands, VisitWeek } from '../shop/visit.ts';
import { bulk } from './bulk.ts';
import { chainOf, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import type { ReadableRecord } from './recordFile.ts';

/** A visit that is, or once was, agreed with the customer. `id` is the first row of its chain. */
export type AgreedVisit = {
  id: number;
  machineId: number;
  /** in order; empty: no week any more */
  weeks: readonly VisitWeek[];
  note: string;
  /** done at the farm */
  atFarm: boolean;
  /** it stands as agreed, or the machine has been in */
  holds: boolean;
};

/** Every visit of the winter plan that was ever agreed, struck ones too: a calendar that has it must hear what became of it. */
export const visitsEverAgreed = (db: ReadableRecord): AgreedVisit[] =>
  bulk<[number, number, VisitStands, string, string, number, number]>(
    db,
    `SELECT ${chainOf('v')}, v.machine_id, v.stands, v.weeks, v.note, v.at_farm, v.struck FROM plan_visits v
     WHERE ${standing('v')} AND ${isLastOfChain('plan_visits', 'v')} AND EXISTS (
       SELECT 1 FROM plan_visits a WHERE ${chainOf('a')} = ${chainOf('v')} AND a.stands = 'agreed')
     ORDER BY ${chainOf('v')}`,
    { knownAt: NOW_KNOWN },
  ).map(([id, machineId, stands, weeks, note, atFarm, struck]) => ({
    ...{ id, machineId, note, atFarm: atFarm === 1, weeks: JSON.parse(weeks) as VisitWeek[] },
    holds: struck === 0 && (stands === 'agreed' || stands === 'done'),
  }));
