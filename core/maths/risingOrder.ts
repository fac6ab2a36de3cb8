/**
 * Places of some values in rising order, equal ones as they stand. Values are thrown into as many even boxes as there are of them, a
 * box that many fall into again, and neighbours are put right at last: for values that lie about evenly, in time that grows with their
 * number alone. Nothing is allocated but for more values than ever before.
 *
 * @param values finite, of which the first `count` are looked at
 * @returns the places; good until it is asked again
 * @source D. E. Knuth, The Art of Computer Programming 3, 2nd ed. (1998), 5.2.5, sorting by distribution
 */
export function risingOrder(values: Float64Array, count: number): Uint32Array {
  if (room.order.length < count) room = roomFor(2 * count);
  const { order } = room;
  for (let i = 0; i < count; i++) order[i] = i;
  distribute(values, 0, count);
  for (let i = 1; i < count; i++) {
    const place = order[i]!;
    const value = values[place]!;
    let at = i;
    for (; at > 0 && values[order[at - 1]!]! > value; at--) order[at] = order[at - 1]!;
    order[at] = place;
  }
  return order;
}

/** So many neighbours are put right one by one. */
const FEW = 24;

/** Throws the places from `start` to `end` into boxes by value, in the order they stand in, and what is still crowded again. */
function distribute(values: Float64Array, start: number, end: number): void {
  const { order, thrown, boxOf, ends } = room;
  const count = end - start;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = start; i < end; i++) {
    const value = values[order[i]!]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const perBox = (count - 1) / (most - least);
  if (!(perBox > 0 && perBox < Number.POSITIVE_INFINITY)) return; // all alike
  ends.fill(0, 0, count);
  for (let i = start; i < end; i++) {
    const box = ((values[order[i]!]! - least) * perBox) | 0;
    boxOf[i] = box;
    ends[box] = ends[box]! + 1;
  }
  let filled = start;
  let crowded = 0;
  for (let box = 0; box < count; box++) {
    const held = ends[box]!;
    ends[box] = filled;
    filled += held;
    if (held > FEW) crowded++;
  }
  for (let i = start; i < end; i++) {
    const box = boxOf[i]!;
    thrown[ends[box]!] = order[i]!;
    ends[box] = ends[box]! + 1;
  }
  order.set(thrown.subarray(start, end), start);
  if (crowded === 0) return;
  const full: number[] = [];
  for (let box = 0, from = start; box < count; from = ends[box++]!)
    if (ends[box]! - from > FEW) full.push(from, ends[box]!);
  for (let i = 0; i < full.length; i += 2) distribute(values, full[i]!, full[i + 1]!);
}

/** The order so far; places as they are thrown, the box of each, and where each box ends. */
type Room = { order: Uint32Array; thrown: Uint32Array; boxOf: Uint32Array; ends: Uint32Array };

const roomFor = (count: number): Room => ({
  order: new Uint32Array(count),
  thrown: new Uint32Array(count),
  boxOf: new Uint32Array(count),
  ends: new Uint32Array(count),
});

let room = roomFor(0);
