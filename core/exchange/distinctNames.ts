/**
 * Gives everything a name of its own among its likes, where the record may hold two alike and a file tells them only by
 * name: the second "Hitch" becomes "Hitch (2)". Names are alike written large or small.
 *
 * @param near the groups within which two names must differ: positions of one assembly, assemblies that met on a machine
 */
export function distinctNames<T>(
  items: Iterable<T>,
  nameOf: (item: T) => string,
  near: (item: T) => readonly (string | number)[],
): Map<T, string> {
  const taken = new Map<string | number, Set<string>>();
  const names = new Map<T, string>();
  for (const item of items) {
    const groups = near(item).map((group) => taken.get(group) ?? new Set<string>());
    const own = nameOf(item);
    let name = own;
    for (let number = 2; groups.some((group) => group.has(name.toLowerCase())); number++) name = `${own} (${number})`;
    for (const [index, key] of near(item).entries()) taken.set(key, groups[index]!.add(name.toLowerCase()));
    names.set(item, name);
  }
  return names;
}
