import { renderToBuffer } from '@react-pdf/renderer';
import type { ReactElement } from 'react';
import type { Slip } from '../contract/slip.ts';
import { assertInvariant } from '../outcome.ts';
import { forecastSlipPaper, type SlipRoom } from './forecastSlipPaper.ts';
import { registerPaperFonts } from './paperFonts.ts';

/**
 * The forecast slip as a PDF of exactly one A4 page. Long lists are shortened, longest first, until the page holds
 * everything; the paper says how much was left out. The same slip gives the same bytes.
 */
export const printSlip = async (slip: Slip): Promise<Uint8Array> => (await fitted(slip)).bytes;

/**
 * Slips as separate files and as one, a page each, in the order given.
 * @param told how many are printed so far; what it throws ends the printing
 */
export async function printSlips(
  slips: readonly [Slip, ...Slip[]],
  told: (printed: number) => void,
): Promise<{ each: Uint8Array[]; all: Uint8Array }> {
  const pages: FittedSlip[] = [];
  for (const slip of slips) {
    told(pages.length);
    pages.push({ slip, ...(await fitted(slip)) });
  }
  told(pages.length);
  const [first, ...others] = pages as [FittedSlip, ...FittedSlip[]];
  const all = await rendered(forecastSlipPaper(first, ...others));
  assertInvariant(pageCount(all) === pages.length, 'each slip is one page of the whole');
  return { each: pages.map(({ bytes }) => bytes), all };
}

type Fitted = { room: SlipRoom; bytes: Uint8Array };
type FittedSlip = Fitted & { slip: Slip };

async function fitted(slip: Slip): Promise<Fitted> {
  registerPaperFonts();
  // the drawing, which the item numbers stand on, is worth some rows of the axis, but not most of them
  const drawn = slip.sketch && (await firstThatHolds(slip, shrinking(wholeRoom(slip, true), [FAIR, SHORT])));
  const page = drawn ?? (await firstThatHolds(slip, shrinking(wholeRoom(slip, false), [FAIR, SHORT, LEAST])));
  assertInvariant(page, 'a slip with its lists cut to the least fits one page');
  return page;
}

/** The page in the first of some rooms, each smaller than the one before, that holds it; found by halving. */
async function firstThatHolds(slip: Slip, rooms: readonly SlipRoom[]): Promise<Fitted | null> {
  const whole = await pageOf(slip, rooms[0]!);
  if (whole) return whole;
  let holds = await pageOf(slip, rooms.at(-1)!);
  let [low, high] = [1, rooms.length - 1];
  while (holds && low < high) {
    const middle = Math.floor((low + high) / 2);
    const page = await pageOf(slip, rooms[middle]!);
    if (page === null) low = middle + 1;
    else [holds, high] = [page, middle];
  }
  return holds;
}

/** The page, or null when it runs over. */
async function pageOf(slip: Slip, room: SlipRoom): Promise<Fitted | null> {
  const bytes = await rendered(forecastSlipPaper({ slip, room }));
  return pageCount(bytes) === 1 ? { room, bytes } : null;
}

const rendered = (paper: ReactElement): Promise<Buffer> =>
  renderToBuffer(paper as Parameters<typeof renderToBuffer>[0]);

const pageCount = (bytes: Buffer): number => bytes.toString('latin1').match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;

type Lists = Omit<SlipRoom, 'drawing'>;

/** More than these never stand on one page beside the rest. */
const MOST = { axisRows: 18, listLines: 12, watchLines: 8 } as const;
/** What each list is worth: down to these in turn. */
const FAIR: Lists = { axisRows: 12, listLines: 5, watchLines: 5, cut: false };
const SHORT: Lists = { axisRows: 7, listLines: 2, watchLines: 3, cut: false };
const LEAST: Lists = { axisRows: 3, listLines: 1, watchLines: 1, cut: true };

function wholeRoom(slip: Slip, drawing: boolean): SlipRoom {
  // without anything done, what was found stands in two columns
  const foundLines = slip.done.length === 0 ? Math.ceil(slip.found.length / 2) : slip.found.length;
  return {
    axisRows: Math.min(MOST.axisRows, slip.axis?.rows.length ?? 0),
    listLines: Math.min(MOST.listLines, Math.max(foundLines, slip.done.length)),
    watchLines: Math.min(MOST.watchLines, slip.watch.length + slip.greaseAndWatch.length),
    drawing,
    cut: false,
  };
}

/** Rooms from the whole one down, one line less at a time, the list furthest above its worth first; texts are cut last. */
export function shrinking(whole: SlipRoom, steps: readonly Lists[]): SlipRoom[] {
  const rooms = [whole];
  for (const step of steps) {
    for (let next = shorter(rooms.at(-1)!, step); next; next = shorter(rooms.at(-1)!, step)) rooms.push(next);
    if (step.cut) rooms.push({ ...rooms.at(-1)!, cut: true });
  }
  return rooms;
}

function shorter(room: SlipRoom, step: Lists): SlipRoom | null {
  const lists = ['listLines', 'watchLines', 'axisRows'] as const;
  const longest = lists
    .filter((list) => room[list] > step[list])
    .sort((a, b) => room[b] / step[b] - room[a] / step[a])[0];
  return longest ? { ...room, [longest]: room[longest] - 1 } : null;
}
