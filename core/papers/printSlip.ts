import { renderToBuffer } from '@react-pdf/renderer';
import type { Slip } from '../contract/slip.ts';
import { assertInvariant } from '../outcome.ts';
import { forecastSlipPaper, type SlipRoom } from './forecastSlipPaper.ts';
import { registerPaperFonts } from './paperFonts.ts';

/**
 * The forecast slip as a PDF of exactly one A4 page. Long lists are shortened, longest first, until the page holds
 * everything; the paper says how much was left out. The same slip gives the same bytes.
 */
export async function printSlip(slip: Slip): Promise<Uint8Array> {
  registerPaperFonts();
  const rooms = roomsOf(slip);
  const whole = await pageOf(slip, rooms[0]!);
  if (whole) return whole;
  // rooms shrink from first to last: the first that holds is found by halving
  let fits = await pageOf(slip, rooms.at(-1)!);
  let [low, high] = [1, rooms.length - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const page = await pageOf(slip, rooms[middle]!);
    if (page === null) low = middle + 1;
    else [fits, high] = [page, middle];
  }
  assertInvariant(fits, 'a slip with its lists cut to the least fits one page');
  return fits;
}

/** The page, or null when it runs over. */
async function pageOf(slip: Slip, room: SlipRoom): Promise<Uint8Array | null> {
  const bytes = await renderToBuffer(forecastSlipPaper(slip, room) as Parameters<typeof renderToBuffer>[0]);
  return pageCount(bytes) === 1 ? bytes : null;
}

const pageCount = (bytes: Buffer): number => bytes.toString('latin1').match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;

/** What each list is worth: down to these in turn, the drawing goes between the first and the second. */
const FAIR: SlipRoom = { axisRows: 12, listLines: 5, watchLines: 5, drawing: true, cut: false };
const SHORT: SlipRoom = { axisRows: 8, listLines: 3, watchLines: 3, drawing: false, cut: false };
const LEAST: SlipRoom = { axisRows: 3, listLines: 1, watchLines: 1, drawing: false, cut: true };

/** More than these never stand on one page beside the rest. */
const MOST = { axisRows: 18, listLines: 12, watchLines: 8 } as const;

/** Rooms from the whole slip down to the least, one line less at a time, the list furthest above its worth first. */
export function roomsOf(slip: Slip): SlipRoom[] {
  // without anything done, what was found stands in two columns
  const foundLines = slip.done.length === 0 ? Math.ceil(slip.found.length / 2) : slip.found.length;
  let room: SlipRoom = {
    axisRows: Math.min(MOST.axisRows, slip.axis?.rows.length ?? 0),
    listLines: Math.min(MOST.listLines, Math.max(foundLines, slip.done.length)),
    watchLines: Math.min(MOST.watchLines, slip.watch.length + slip.greaseAndWatch.length),
    drawing: true,
    cut: false,
  };
  const rooms = [room];
  for (let next = smaller(room); next !== null; next = smaller(room)) {
    room = next;
    rooms.push(room);
  }
  return rooms;
}

function smaller(room: SlipRoom): SlipRoom | null {
  const lists = ['listLines', 'watchLines', 'axisRows'] as const;
  for (const step of [FAIR, SHORT, LEAST]) {
    if (room.drawing && !step.drawing) return { ...room, drawing: false };
    const longest = lists
      .filter((list) => room[list] > step[list])
      .sort((a, b) => room[b] / step[b] - room[a] / step[a])[0];
    if (longest) return { ...room, [longest]: room[longest] - 1 };
    if (step.cut && !room.cut) return { ...room, cut: true };
  }
  return null;
}
