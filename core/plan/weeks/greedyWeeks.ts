import { isBetter, type Rank, SearchChoice, type SearchShop } from './weekSearch.ts';

/**
 * A first plan: what is held, then visit by visit those with fewest weeks open first, then those that risk most,
 * then the longest; each where it does least harm, then least trouble, then earliest.
 */
export function greedyWeeks(shop: SearchShop): SearchChoice {
  const choice = new SearchChoice(shop);
  const numbers = shop.visits.map((_, number) => number);
  const free = numbers.filter((number) => !shop.visits[number]!.held);
  for (const number of numbers.filter((one) => shop.visits[one]!.held)) choice.put(number, 0);
  const narrow = (number: number) => shop.visits[number]!.placements.length;
  const risk = (number: number) => shop.visits[number]!.risk;
  const hours = (number: number) => shop.visits[number]!.hours;
  const order = (a: number, b: number) => narrow(a) - narrow(b) || risk(b) - risk(a) || hours(b) - hours(a) || a - b;
  for (const number of free.sort(order)) putBest(choice, number);
  return choice;
}

/** Puts an undone visit where there is room and it costs least; leaves it undone where that costs no more. */
export function putBest(choice: SearchChoice, visit: number): void {
  let best = -1;
  let least: Rank = choice.rank;
  for (let placement = 0; placement < choice.shop.visits[visit]!.placements.length; placement++) {
    if (!choice.hasRoom(visit, placement)) continue;
    choice.put(visit, placement);
    const rank = choice.rank;
    choice.put(visit, -1);
    if (isBetter(rank, least)) {
      least = rank;
      best = placement;
    }
  }
  choice.put(visit, best);
}
