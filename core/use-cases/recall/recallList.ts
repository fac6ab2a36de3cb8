import type { GivenReplyOf, Handler } from '../../contract/operation.ts';
import type { recallRead } from '../../contract/recall.ts';
import { lastsTo } from '../../recall/lookAhead.ts';
import { type DueFarm, recallList } from '../../recall/recallList.ts';
import { recallReasons } from '../../recall/recallReasons.ts';
import { listContacts } from '../../record/contactStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { type Context, recordOf } from '../context.ts';
import { forecastsInTurn } from '../forecastsStanding.ts';
import { type MachineNames, machineNamesNow } from '../machineNamesNow.ts';
import type { Due } from './dueOf.ts';
import { contactSheets, type FarmOnRecord, farmSheet, recallFacts } from './recallFacts.ts';

export const recallListHandler: Handler<typeof recallRead, Context> = (context, { atOnce }) =>
  recallNow(context, atOnce);

/** Who to contact, in order. */
export async function recallNow(context: Context, atOnce: boolean): Promise<GivenReplyOf<typeof recallRead>> {
  const standing = await forecastsInTurn(context, atOnce);
  const record = recordOf(context);
  const dues = standing.dues();
  const names = machineNamesNow(context);
  const { shop, farms, nobodys } = recallFacts(record, standing.asOf, dues);
  const lists = recallList(farms, shop);
  const sheets = sheetsOf(record, dues, names, farms);
  const noTerms = { noContact: false, distanceKm: null, seasonTo: null, quiet: [] };
  return {
    asOf: standing.asOf,
    leadDays: shop.leadDays,
    lastsTo: lastsTo(shop, { seasonTo: null }),
    winter: shop.winters[0]?.name ?? '',
    toContact: lists.toContact.map(sheets),
    waiting: lists.waiting.map(sheets),
    held: lists.held.map(sheets),
    noContact: farms.filter(({ terms, machines }) => terms.noContact && machines.length > 0).length,
    nobodys: nobodys
      .filter((machine) => recallReasons(machine, noTerms, shop).length > 0)
      .map(({ machineId }) => ({ machineId, name: names.get(machineId)?.name ?? '' })),
    learning: standing.learning,
  };
}

type Sheet = GivenReplyOf<typeof recallRead>['toContact'][number];

function sheetsOf(
  record: ReadableRecord,
  dues: ReadonlyMap<number, Due>,
  names: ReadonlyMap<number, MachineNames>,
  farms: readonly FarmOnRecord[],
): (one: DueFarm) => Sheet {
  const farmOf = new Map(farms.map((farm) => [farm.customerId, farm]));
  const contacts = contactSheets(
    record,
    listContacts(record).filter(({ struck }) => !struck),
  );
  return ({ farm, due }) => ({
    farm: farmSheet(farmOf.get(farm.customerId)!),
    machines: due.map(({ machine: { machineId }, reasons, standing }) => ({
      machineId,
      name: names.get(machineId)?.name ?? '',
      serial: names.get(machineId)?.serial ?? '',
      reasons,
      standing,
      comeInBy: dues.get(machineId)?.comeInBy ?? null,
      safetyFindings: dues.get(machineId)?.safetyFindings ?? [],
      lastContact:
        contacts.findLast(
          (one) => one.customerId === farm.customerId && (one.machineId === null || one.machineId === machineId),
        ) ?? null,
    })),
  });
}
