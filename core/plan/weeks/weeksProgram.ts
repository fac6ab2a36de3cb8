import type { IntegerProgram } from '../integerProgram.ts';
import type { SearchShop } from './weekSearch.ts';

/** A shop's weeks as an integer program, and which variable says what. */
export type WeeksProgram = {
  rules: IntegerProgram['rules'];
  yesOrNo: ReadonlySet<number>;
  /** what each variable does of harm and of trouble */
  harm: readonly number[];
  trouble: readonly number[];
  /** variable of each placement of each visit */
  placed: readonly (readonly number[])[];
};

/**
 * The weeks as an integer program:
 *   each visit has one of its placements or is undone
 *   work + way of a week <= bench hours + overload, overload <= what the shop allows
 *   a visit of a place asks for the way there; all of a place's work in a week fits beside it
 *
 * @source own formulation: assignment with fixed charges; the last rule, tighter than its parts, after Padberg, Van Roy and
 *   Wolsey, Valid linear inequalities for fixed charge problems, Operations Research 33 (1985)
 */
export function weeksProgram(shop: SearchShop): WeeksProgram {
  const harm: number[] = [];
  const trouble: number[] = [];
  const yesOrNo = new Set<number>();
  const rules: IntegerProgram['rules'][number][] = [];
  const variable = (ofHarm: number, ofTrouble: number, whole = true): number => {
    trouble.push(ofTrouble);
    const number = harm.push(ofHarm) - 1;
    if (whole) yesOrNo.add(number);
    return number;
  };
  const inWeek = shop.weeks.map(() => [] as [number, number][]);
  const ways = shop.places.map(({ setUpHours }) =>
    shop.weeks.map((_, week) => {
      const way = variable(0, setUpHours);
      inWeek[week]!.push([way, setUpHours]);
      return way;
    }),
  );
  const atPlace = shop.places.map(() => shop.weeks.map(() => [] as [number, number][]));

  const placed = shop.visits.map((visit, number) => {
    const own = visit.placements.map((placement) => variable(placement.harm, placement.trouble));
    const undone = visit.held ? [] : [variable(visit.risk + shop.prices.undone, 0)];
    rules.push({ sum: [...own, ...undone].map((one) => [one, 1]), is: '=', than: 1 });
    const place = shop.placeOf[number]!;
    visit.placements.forEach(({ week: first, pieces }, placement) => {
      for (let week = first; week < first + pieces; week++) {
        const takes: [number, number] = [own[placement]!, visit.hours / pieces];
        inWeek[week]!.push(takes);
        if (place >= 0) {
          atPlace[place]![week]!.push(takes);
        }
      }
    });
    if (place >= 0)
      shop.weeks.forEach((_, week) => {
        const here = visit.placements.flatMap((at, k) =>
          at.week <= week && week < at.week + at.pieces ? [[own[k]!, 1] as const] : [],
        );
        if (here.length > 0) rules.push({ sum: [...here, [ways[place]![week]!, -1]], is: '<=', than: 0 });
      });
    return own;
  });

  shop.weeks.forEach(({ benchHours, mostOverload }, week) => {
    if (inWeek[week]!.length === 0) return;
    const over = mostOverload > 0 ? [variable(shop.prices.overloadHour, 0, false)] : [];
    rules.push({ sum: [...inWeek[week]!, ...over.map((one) => [one, -1] as const)], is: '<=', than: benchHours });
    for (const one of over) rules.push({ sum: [[one, 1]], is: '<=', than: mostOverload });
    shop.places.forEach(({ setUpHours }, place) => {
      const work = atPlace[place]![week]!;
      const room = benchHours + mostOverload - setUpHours;
      if (work.length > 1) rules.push({ sum: [...work, [ways[place]![week]!, -room]], is: '<=', than: 0 });
    });
  });
  return { rules, yesOrNo, harm, trouble, placed };
}
