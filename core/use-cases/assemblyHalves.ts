import type { assemblyHalves } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { readAssembly } from '../record/assemblyStore.ts';
import { type Context, recordOf } from './context.ts';
import { halvesOf, kindInHalves, whereabouts } from './halves.ts';

export const assemblyHalvesHandler: Handler<typeof assemblyHalves, Context> = (context, { assemblyId }) => {
  const record = recordOf(context);
  const assembly = readAssembly(record, assemblyId);
  if (!assembly) throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'assemblyId', assemblyId } });
  const { assemblies, positions } = kindInHalves(record, assembly.kindId);
  const where = whereabouts(record);
  const placed = positions.filter(({ onShelf }) => !onShelf);
  const onShelf = Map.groupBy(
    positions.filter((position) => position.onShelf),
    (position) => `${position.assemblyId} ${position.since} ${position.group}`,
  );
  return {
    ...where(assembly),
    kind: assembly.kind,
    halves: halvesOf(placed.filter((position) => position.assemblyId === assemblyId)),
    others: assemblies
      .filter(({ id }) => id !== assemblyId)
      .map((other) => ({
        ...where(other),
        halves: halvesOf(placed.filter((position) => position.assemblyId === other.id)),
      })),
    shelf: [...onShelf.values()].flatMap((own) => {
      const last = assemblies.find(({ id }) => id === own[0]?.assemblyId);
      const since = own[0]?.since ?? null;
      return last && since !== null ? halvesOf(own).map((half) => ({ ...half, since, last: where(last) })) : [];
    }),
  };
};
