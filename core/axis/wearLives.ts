/** A governing reading, or the size a part started with. */
export type LifePoint = { machineHours: number; sizeMm: number };

/**
 * The lives at a position, one after another: readings joined from one renewal to the next, each starting with the size of
 * the part put in where that is known. A renewal whose hours are not known starts its life at its first reading.
 *
 * @param visits governing size of each visit; `asLeft` ones at a renewal's hours belong to the new part
 * @param renewals sorted by hours
 * @returns one list of points for each part of which a size is known, oldest part first
 */
export function wearLives(
  visits: readonly { machineHours: number; sizeMm: number | null; asLeft: boolean }[],
  renewals: readonly { machineHours: number; known: boolean; sizeMm: number | null }[],
): LifePoint[][] {
  const lives: LifePoint[][] = [[], ...renewals.map((renewal) => startOf(renewal))];
  for (const visit of visits) {
    if (visit.sizeMm === null) continue;
    const life = renewals.filter((renewal) =>
      visit.asLeft ? renewal.machineHours <= visit.machineHours : renewal.machineHours < visit.machineHours,
    ).length;
    lives[life]?.push({ machineHours: visit.machineHours, sizeMm: visit.sizeMm });
  }
  return lives.map((life) => life.sort((a, b) => a.machineHours - b.machineHours)).filter((life) => life.length > 0);
}

const startOf = (renewal: { machineHours: number; known: boolean; sizeMm: number | null }): LifePoint[] =>
  renewal.known && renewal.sizeMm !== null ? [{ machineHours: renewal.machineHours, sizeMm: renewal.sizeMm }] : [];
