/** Something that can be found by typing part of what is known of it. `texts` in order of weight: the name first. */
export type Findable = { texts: readonly string[] };

/** Case and accents are let go: "Oster" finds "Øster" only where the letter itself is typed, "Muller" finds "Müller". */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase();

/**
 * What the typed words find: every word must stand somewhere in the texts. A name that starts with what was typed comes
 * first, then a word that starts with it, then the rest; within each the given order stays.
 *
 * @param typed as typed; nothing typed finds everything
 * @param most how many at the most
 */
export function findByWords<T extends Findable>(items: readonly T[], typed: string, most = Infinity): T[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return items.slice(0, most);
  const found = items.flatMap((item) => {
    const texts = item.texts.map(plain);
    const all = texts.join(' ');
    if (!words.every((word) => all.includes(word))) return [];
    const whole = words.join(' ');
    const rank = texts[0]?.startsWith(whole) ? 0 : all.split(/[\s-]+/).some((w) => w.startsWith(words[0]!)) ? 1 : 2;
    return [{ item, rank }];
  });
  return found
    .sort((a, b) => a.rank - b.rank)
    .slice(0, most)
    .map(({ item }) => item);
}
