import { gatherKnown, rowKey } from '../../exchange/knownRows.ts';
import type { KnownKind, KnownShop } from '../../exchange/plan.ts';
import { homesOf, listAssemblies, positionsOf, sittingsOf } from '../../record/assemblyStore.ts';
import { namesOfCustomers } from '../../record/customerStore.ts';
import { firstRows } from '../../record/firstRows.ts';
import { loadShopLife } from '../../record/loadShopLife.ts';
import { listMachines } from '../../record/machineStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { kindsOnRecord } from '../kindsOnRecord.ts';

/** What the record holds, as an import has to know it. */
export function knownShop(db: ReadableRecord): KnownShop {
  const first = firstRows(db);
  return {
    life: loadShopLife(db),
    customers: namesOfCustomers(db),
    machines: listMachines(db),
    assemblies: listAssemblies(db),
    positions: positionsOf(db),
    homes: homesOf(db),
    sittings: sittingsOf(db),
    kinds: kindsOnRecord(db).map(({ kindId, name, positions }): KnownKind => ({ id: kindId, name, positions })),
    rows: {
      dials: gatherKnown(first.dials, keyed),
      sizes: gatherKnown(first.sizes, keyed),
      renewals: gatherKnown(first.renewals, keyed),
      shims: gatherKnown(first.shims, keyed),
      moves: gatherKnown(first.moves, keyed),
      findings: gatherKnown(first.findings, (id, values) => {
        const closedOn = values[6];
        return { key: rowKey(...values.slice(0, 6)), item: { id, closed: closedOn !== null } };
      }),
    },
  };
}

const keyed = (id: number, values: readonly (string | number | null)[]) => ({ key: rowKey(...values), item: id });
