/** Keeping labels apart. */

/** A box on the sheet [px]. */
export type Box = { x: number; y: number; width: number; height: number };

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** How much two boxes share [px²]; 0 when they do not meet. */
const shared = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));

/**
 * Moves labels that want a height each apart until none is nearer to the next than `gapPx`, as little as can be:
 * labels that touch form a block, which stands about the middle of what its members want.
 *
 * @param wantedPx where each label wants to stand [px], any order
 * @param within first and last place a label may take; blocks are pushed inside
 * @returns where each stands [px], in the order given
 * @assumes there is room: more labels than (last - first) / gap are set at the gap and run over the end
 */
export function spreadLabels(wantedPx: readonly number[], gapPx: number, within: readonly [number, number]): number[] {
  const order = wantedPx.map((_, i) => i).sort((a, b) => (wantedPx[a] ?? 0) - (wantedPx[b] ?? 0) || a - b);
  type Block = { members: number[]; top: number };
  const blocks: Block[] = [];
  for (const index of order) {
    let block: Block = { members: [index], top: blockTop([index], wantedPx, gapPx, within) };
    for (let last = blocks.at(-1); last && bottomOf(last, gapPx) > block.top - gapPx; last = blocks.at(-1)) {
      blocks.pop();
      const members = [...last.members, ...block.members];
      block = { members, top: blockTop(members, wantedPx, gapPx, within) };
    }
    blocks.push(block);
  }
  const placed: number[] = new Array(wantedPx.length);
  for (const { members, top } of blocks) for (const [i, index] of members.entries()) placed[index] = top + i * gapPx;
  return placed;
}

const bottomOf = (block: { members: number[]; top: number }, gapPx: number): number =>
  block.top + (block.members.length - 1) * gapPx;

function blockTop(
  members: number[],
  wantedPx: readonly number[],
  gapPx: number,
  within: readonly [number, number],
): number {
  const wantedTop = members.reduce((sum, index, i) => sum + (wantedPx[index] ?? 0) - i * gapPx, 0) / members.length;
  return Math.max(within[0], Math.min(wantedTop, within[1] - (members.length - 1) * gapPx));
}

/** Where a label may stand about its point, in the order they are tried. */
export type LabelSide = 'above-right' | 'below-left' | 'above-left' | 'below-right' | 'right' | 'left';

export type PlacedLabel = Box & { side: LabelSide };

/**
 * Stands each label at the side of its point where it covers least of what is already there; points given first are
 * placed first.
 *
 * @param points where the points are and how large their labels [px]; `sides` in the order to be tried
 * @param taken boxes that must stay clear: dots, lines, other words
 * @returns the label boxes, in the order given
 */
export function placeLabels(
  points: readonly { x: number; y: number; width: number; height: number; sides: readonly LabelSide[] }[],
  taken: readonly Box[],
  clearPx = 7,
): PlacedLabel[] {
  const standing: Box[] = [...taken];
  return points.map((point) => {
    let best: { box: PlacedLabel; covers: number } | undefined;
    for (const side of point.sides) {
      const box = { ...labelBox(point, side, clearPx), side };
      const covers = standing.reduce((sum, other) => sum + shared(box, other), 0);
      if (!best || covers < best.covers - 1e-9) best = { box, covers };
    }
    if (!best) throw new Error('Broken invariant: a label has a side to stand at');
    standing.push(best.box);
    return best.box;
  });
}

function labelBox(point: { x: number; y: number; width: number; height: number }, side: LabelSide, clear: number): Box {
  const { x, y, width, height } = point;
  const left = side.endsWith('left');
  const boxX = left ? x - clear - width : x + clear;
  if (side === 'left' || side === 'right') return { x: boxX, y: y - height / 2, width, height };
  return { x: boxX, y: side.startsWith('above') ? y - clear - height : y + clear, width, height };
}
