import type { GivenReplyOf, Handler } from '../../contract/operation.ts';
import type { recallRead } from '../../contract/recall.ts';
import { lastsTo } from '../../recall/lookAhead.ts';
import { type DueFarm, recallList } from '../../recall/recallList.ts';
import { recallReasons } from '../../recall/recallReasons.ts';
import { listContacts } from '../../record/contactStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { type Context, recordOf } from '../context.ts';
import { findingSheet } from '../findingSheet.ts';
import { isFromPriors } from '../learning/shopLearning.ts';
import { type ShopNow, shopNow } from '../shopNow.ts';
import { comeInBy, contactSheets, type FarmOnRecord, farmSheet, recallFacts, safetyFindings } from './recallFacts.ts';

export const recallListHandler: Handler<typeof recallRead, Context> = (context, { atOnce }) =>
  recallNow(context, atOnce);

/** Who to contact, in order. */
export function recallNow(context: Context, atOnce: boolean): GivenReplyOf<typeof recallRead> {
  const record = recordOf(context);
  const now = shopNow(context, context.today(), atOnce);
  const { shop, farms, nobodys } = recallFacts(record, now);
  const lists = recallList(farms, shop);
  const sheets = sheetsOf(record, now, farms);
  const noTerms = { noContact: false, distanceKm: null, seasonTo: null, quiet: [] };
  return {
    asOf: now.asOf,
    leadDays: shop.leadDays,
    lastsTo: lastsTo(shop, { seasonTo: null }),
    winter: shop.winters[0]?.name ?? '',
    toContact: lists.toContact.map(sheets),
    waiting: lists.waiting.map(sheets),
    held: lists.held.map(sheets),
    noContact: farms.filter(({ terms, machines }) => terms.noContact && machines.length > 0).length,
    nobodys: nobodys
      .filter((machine) => recallReasons(machine, noTerms, shop).length > 0)
      .map(({ machineId }) => ({ machineId, name: nameOf(now, machineId) })),
    learning: isFromPriors(now.learning),
  };
}

type Sheet = GivenReplyOf<typeof recallRead>['toContact'][number];

function sheetsOf(record: ReadableRecord, now: ShopNow, farms: readonly FarmOnRecord[]): (one: DueFarm) => Sheet {
  const farmOf = new Map(farms.map((farm) => [farm.customerId, farm]));
  const safety = safetyFindings(now);
  const machines = new Map(now.shop.life.machines.map((machine) => [machine.machineId, machine]));
  const contacts = contactSheets(
    record,
    listContacts(record).filter(({ struck }) => !struck),
  );
  return ({ farm, due }) => ({
    farm: farmSheet(farmOf.get(farm.customerId)!),
    machines: due.map(({ machine: { machineId }, reasons, standing }) => ({
      machineId,
      name: machines.get(machineId)?.name ?? '',
      serial: machines.get(machineId)?.serial ?? '',
      reasons,
      standing,
      comeInBy: comeInBy(now, machineId),
      safetyFindings: safety(machineId).map((finding) => findingSheet(finding, now.shop.life)),
      lastContact:
        contacts.findLast(
          (one) => one.customerId === farm.customerId && (one.machineId === null || one.machineId === machineId),
        ) ?? null,
    })),
  });
}

const nameOf = (now: ShopNow, machineId: number): string =>
  now.shop.life.machines.find((machine) => machine.machineId === machineId)?.name ?? '';
