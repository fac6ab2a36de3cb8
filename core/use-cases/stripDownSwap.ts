import type { stripDownSwap } from '../contract/oldSheets.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { listClasses } from '../record/classStore.ts';
import { writeEntry } from '../record/entry.ts';
import type { SizeRow } from '../record/sizeStore.ts';
import { moveSize, putSizeInPlaceOf } from '../record/sizeSwap.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import type { PointLife, Size } from '../shop/measuringPoint.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { judgeAmongOthers } from './laterDoubts.ts';
import { pointsOnMachine } from './pointsOnMachine.ts';
import { pointNow } from './seriesNow.ts';
import { sizesOfStripDown, stripDownOrRefuse } from './stripDownRead.ts';

type Place = RequestOf<typeof stripDownSwap>['pairs'][number]['one'];

/** A size that goes from its place to another; `standing`: the row that stands there, null where none does. */
type Move = { from: SizeRow; to: Place; standing: SizeRow | null };

/**
 * Sizes of a saved sheet change places. Every one is a correction of its own: the old row stays, the new one says why.
 * In its new place a size is judged anew, and kept aside where it is odd there.
 *
 * @throws RefusedError unknown-strip-down, unknown-point, place-twice, nothing-to-swap
 */
export const stripDownSwapHandler: Handler<typeof stripDownSwap, Context> = (context, request) => {
  const { stripDownId, pairs, reason, by } = request;
  const { machineId, takenOn } = stripDownOrRefuse(recordOf(context), stripDownId);
  refuseOddPlaces(pairs, pointsOnMachine(context, machineId, takenOn));
  const standing = standingRows(sizesOfStripDown(context, stripDownId));
  const moves = pairs.flatMap(({ one, other }) => [...movesOf(standing, one, other), ...movesOf(standing, other, one)]);
  if (moves.length === 0) throw new RefusedError({ code: 'nothing-to-swap', facts: { path: 'pairs' } });
  const judged = judgeMoved(context, moves);
  const filled = new Set(moves.map(({ to, from }) => placeOf(to, from.event)));
  const verdictOf = (move: Move) => {
    const judgement = judged.get(move);
    const parked = judgement?.parked === true;
    return { parked, question: parked ? (judgement.cautions[0]?.code ?? null) : null };
  };
  const entryId = writeEntry(recordOf(context), entryNow(context, 'stripDown/swap', by), (w, id) => {
    for (const move of moves) {
      const { from, to, standing: there } = move;
      if (there) putSizeInPlaceOf(w, id, there.id, from.id, verdictOf(move), reason);
      else moveSize(w, id, from.id, to, verdictOf(move), reason);
    }
    // a struck place that only gives is struck already by moveSize; one that gives and gets was put right above
    return id;
  });
  return {
    entryId,
    moved: filled.size,
    parked: moves.filter((move) => judged.get(move)?.parked).length,
  };
};

const placeOf = ({ pointId, station }: Place, event: string): string => `${pointId}|${station}|${event}`;

function refuseOddPlaces(pairs: RequestOf<typeof stripDownSwap>['pairs'], points: ReadonlyMap<number, unknown>): void {
  const seen = new Set<string>();
  for (const [i, { one, other }] of pairs.entries()) {
    for (const place of [one, other]) {
      if (!points.has(place.pointId))
        throw new RefusedError({ code: 'unknown-point', facts: { path: `pairs.${i}`, pointId: place.pointId } });
      const key = placeOf(place, '');
      if (seen.has(key)) throw new RefusedError({ code: 'place-twice', facts: { path: `pairs.${i}`, ...place } });
      seen.add(key);
    }
  }
}

/** The row that stands in each place; a struck one is none to move, and none to put right. */
const standingRows = (rows: readonly SizeRow[]): SizeRow[] =>
  rows.filter(({ superseded, struck }) => !superseded && !struck);

const movesOf = (standing: readonly SizeRow[], from: Place, to: Place): Move[] =>
  standing
    .filter(({ pointId, station }) => pointId === from.pointId && station === from.station)
    .map((row) => ({
      from: row,
      to,
      standing:
        standing.find(
          ({ pointId, station, event }) => pointId === to.pointId && station === to.station && event === row.event,
        ) ?? null,
    }));

/** Each moved size judged at its new point, among what else stands there once all have moved. */
function judgeMoved(context: Context, moves: readonly Move[]): Map<Move, SizeJudgement> {
  const tolerances = new Map(listClasses(recordOf(context)).map(({ name, newSizeTolMm }) => [name, newSizeTolMm]));
  const gone = new Set(moves.map(({ from }) => from.id));
  const judged = new Map<Move, SizeJudgement>();
  for (const [pointId, own] of Map.groupBy(moves, ({ to }) => to.pointId)) {
    const point = pointNow(context, pointId);
    if (!point) continue;
    const others: PointLife = { ...point, sizes: point.sizes.filter(({ id }) => !gone.has(id)) };
    const arrived = own.map(({ from, to }, i) => sizeAt(from, to, -1 - i));
    const withThem = { ...others, sizes: [...others.sizes, ...arrived].sort(byDay) };
    const found = judgeAmongOthers(withThem, others, tolerances.get(point.partClass) ?? null);
    own.forEach((move, i) => {
      const judgement = found.get(-1 - i);
      if (judgement) judged.set(move, judgement);
    });
  }
  return judged;
}

const sizeAt = (row: SizeRow, { station }: Place, id: number): Size => ({
  id,
  takenOn: row.takenOn,
  dialHours: null,
  station,
  sizeMm: row.sizeMm,
  event: row.event,
  gaugeErrorMm: row.gaugeErrorMm,
  gaugeStepMm: row.gaugeStepMm,
  parked: false,
});

const byDay = (a: Size, b: Size): number => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0);
