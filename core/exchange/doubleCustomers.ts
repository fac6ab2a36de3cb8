import { editDistance } from './editDistance.ts';

export type NamedPerson = { id: number; name: string; place: string; address: string; phone: string; email: string };
export type Alike = 'name' | 'phone' | 'email' | 'place' | 'address';

/** Words that stand in many names and tell nobody apart. */
const COMMON = new Set(['mr', 'mrs', 'ms', 'and', 'the', 'farm', 'farms', 'ltd', 'sons', 'son', 'bros']);

const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
/** Words in the order of the alphabet, so that "Holm, Jan" is "Jan Holm"; those that tell nothing are left out. */
const nameKey = (name: string): string => {
  const words = plain(name).split(' ');
  const telling = words.filter((word) => !COMMON.has(word));
  return (telling.length > 0 ? telling : words).sort().join(' ');
};
/** The last nine digits: with the country's number or a nought before it. */
const phoneKey = (phone: string): string => phone.replace(/\D/g, '').slice(-9);

/** One slip of the pen in a short name, two in a long one (common practice, no source). */
const slips = (letters: number): number => (letters < 5 ? 0 : letters < 10 ? 1 : 2);

/**
 * Pairs that may be one person: like names where nothing speaks against it, or the same telephone or mail address. A
 * suggestion only; whether they are one is for a person to say.
 * @returns likeliest first
 */
export function doubleCustomers(people: readonly NamedPerson[]): { oneId: number; otherId: number; alike: Alike[] }[] {
  const keyed = people.map((person) => ({
    id: person.id,
    name: nameKey(person.name),
    letters: plain(person.name).length,
    place: plain(person.place),
    address: plain(person.address),
    phone: phoneKey(person.phone),
    email: person.email.trim().toLowerCase(),
  }));
  const pairs = keyed.flatMap((one, at) =>
    keyed.slice(at + 1).flatMap((other) => {
      const alike = alikeIn(one, other);
      return alike === null ? [] : [{ oneId: one.id, otherId: other.id, alike }];
    }),
  );
  return pairs.sort((a, b) => b.alike.length - a.alike.length);
}

type Keyed = { name: string; letters: number; place: string; address: string; phone: string; email: string };

function alikeIn(one: Keyed, other: Keyed): Alike[] | null {
  const most = slips(Math.min(one.letters, other.letters));
  const sameName = one.name !== '' && editDistance(one.name, other.name, most) <= most;
  const same = (key: 'place' | 'address' | 'email') => one[key] !== '' && one[key] === other[key];
  const samePhone = one.phone.length >= 6 && one.phone === other.phone;
  const alike: Alike[] = [
    ...(sameName ? ['name' as const] : []),
    ...(samePhone ? ['phone' as const] : []),
    ...(same('email') ? ['email' as const] : []),
    ...(same('place') ? ['place' as const] : []),
    ...(same('address') ? ['address' as const] : []),
  ];
  // two farms of one name in two places are two farms
  const apart = one.place !== '' && other.place !== '' && !same('place');
  return samePhone || same('email') || (sameName && !apart) ? alike : null;
}
