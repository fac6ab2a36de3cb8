import type { WinterOfYear } from '../shop/winter.ts';
import type { RecallMachine, RecallShop, RecallTerms } from './recallMachine.ts';
import { type RecallReason, recallReasons } from './recallReasons.ts';
import { type RecallStanding, recallStanding } from './recallStanding.ts';

/** A farm: who is contacted, and the machines that are theirs now. */
export type RecallFarm = { customerId: number; name: string; terms: RecallTerms; machines: readonly RecallMachine[] };

export type DueMachine = { machine: RecallMachine; reasons: RecallReason[]; standing: RecallStanding };
export type DueFarm = { farm: RecallFarm; due: DueMachine[] };

/**
 * Who to contact, in order, with the machines it is about. A farm that asked not to be contacted is in none of the lists.
 *
 * @returns farms with a machine to be spoken of; those an answer is waited of; those held off for now
 */
export function recallList(
  farms: readonly RecallFarm[],
  shop: RecallShop & { winterOfYear: WinterOfYear },
): { toContact: DueFarm[]; waiting: DueFarm[]; held: DueFarm[] } {
  const due = farmsDue(farms, shop);
  const standing = (code: RecallStanding['code']) => inUrgency(standingAs(code, due));
  return { toContact: standing('to-contact'), waiting: standing('waiting'), held: standing('held') };
}

/** Farms that may be contacted, with whatever each of their machines is due for, in no order. */
export const farmsDue = (farms: readonly RecallFarm[], shop: RecallShop & { winterOfYear: WinterOfYear }): DueFarm[] =>
  farms.filter(({ terms }) => !terms.noContact).map((farm) => ({ farm, due: dueOf(farm, shop) }));

/** Of farms those that have machines standing so, with these alone. */
export const standingAs = (code: RecallStanding['code'], farms: readonly DueFarm[]): DueFarm[] =>
  farms
    .map(({ farm, due }) => ({ farm, due: due.filter((one) => one.standing.code === code) }))
    .filter(({ due }) => due.length > 0);

/** In the order they are contacted. */
export const inUrgency = (farms: readonly DueFarm[]): DueFarm[] => [...farms].sort(byUrgency);

function dueOf({ terms, machines }: RecallFarm, shop: RecallShop & { winterOfYear: WinterOfYear }): DueMachine[] {
  return machines
    .flatMap((machine) => {
      const reasons = recallReasons(machine, terms, shop);
      if (reasons.length === 0) return [];
      return [{ machine, reasons, standing: recallStanding(machine, reasons, terms, shop.asOf, shop.winterOfYear) }];
    })
    .sort((a, b) => compare(rankOf(a), rankOf(b)) || a.machine.machineId - b.machine.machineId);
}

/** Hours within one such step count alike, so that the nearer of two farms is rung first: a tick of the hours rule [h]. */
const STEP_HOURS = 100;

/** Safety first, then promises to ring, then deciding hours by steps; a machine due for its silence alone comes last. */
function rankOf({ reasons }: DueMachine): [grave: number, step: number] {
  const safety = reasons.find(({ code }) => code === 'safety');
  const hours = reasons.find((reason) => reason.code === 'hours');
  const promised = reasons.some(({ code }) => code === 'call-back');
  const grave = safety?.code === 'safety' ? (safety.doNotUse ? 0 : 1) : promised ? 2 : 3;
  return [grave, hours ? Math.floor(hours.hoursLeft / STEP_HOURS) : Number.MAX_SAFE_INTEGER];
}

const compare = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sign, one, i) => sign || one - (b[i] ?? 0), 0);

const byUrgency = (a: DueFarm, b: DueFarm): number =>
  compare(rankOf(a.due[0]!), rankOf(b.due[0]!)) ||
  (a.farm.terms.distanceKm ?? Number.MAX_SAFE_INTEGER) - (b.farm.terms.distanceKm ?? Number.MAX_SAFE_INTEGER) ||
  soonest(a) - soonest(b) ||
  a.farm.name.localeCompare(b.farm.name, 'en') ||
  a.farm.customerId - b.farm.customerId;

const soonest = ({ due }: DueFarm): number =>
  Math.min(...due.map(({ machine }) => machine.deciding?.hoursLeft ?? Number.MAX_SAFE_INTEGER));
