import { RefusedError } from '../outcome.ts';

/** What is to be changed is in the list, and no other of the list has the name it is to have. */
export function refuseUnknownOrTaken(
  list: readonly { id: number; name: string }[],
  asked: { id: number | null; name: string },
  unknownCode: string,
  idPath: string,
  namePath = 'name',
): void {
  if (asked.id !== null && !list.some(({ id }) => id === asked.id))
    throw new RefusedError({ code: unknownCode, facts: { path: idPath, id: asked.id } });
  if (list.some(({ id, name }) => id !== asked.id && name.toLowerCase() === asked.name.toLowerCase()))
    throw new RefusedError({ code: 'name-taken', facts: { path: namePath, name: asked.name } });
}
