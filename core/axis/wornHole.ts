import { px } from './scale.ts';

/** A circle about the old centre of a hole: right and up are positive; radius 0 is a point that was measured [mm]. */
export type HoleCircle = { x: number; y: number; radius: number };

/** A worn hole in its boss, as it is to be drawn; lengths in mm. */
export type HoleInBoss = {
  circles: readonly HoleCircle[];
  newBoreMm: number;
  bossOutsideMm: number;
  cleanUp: { boreMm: number; shift: { xMm: number; yMm: number } };
};

/** The same in px: the old centre at `x`, `y`; down the page is positive. */
export type HoleDrawn = {
  x: number;
  y: number;
  pxPerMm: number;
  bossRadius: number;
  newRadius: number;
  /** closed path of the worn outline */
  outline: string;
  points: { x: number; y: number }[];
  cleanUp: { x: number; y: number; radius: number };
  /** furthest the outline reaches past the new hole, and where [px] */
  worst: { x: number; y: number; mm: number; turn: number };
};

/** Places on the outline: every two degrees. */
const PLACES = 180;

/**
 * How far an outline of circles reaches from the old centre in one direction.
 *   reach = max of u . c + sqrt((u . c)^2 - |c|^2 + r^2)
 * @param turn from the right hand, to the left [rad]
 * @returns [mm]; 0 where no circle lies
 * @source own derivation: where a ray leaves a circle
 */
export function reachMm(circles: readonly HoleCircle[], turn: number): number {
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
  return circles.reduce((most, { x, y, radius }) => {
    const along = ux * x + uy * y;
    const under = along * along - (x * x + y * y) + radius * radius;
    return radius > 0 && under >= 0 ? Math.max(most, along + Math.sqrt(under)) : most;
  }, 0);
}

/** Lays a worn hole into a square of room, its boss as large as it goes. */
export function wornHole(hole: HoleInBoss, room: { x: number; y: number; radius: number }): HoleDrawn {
  const pxPerMm = room.radius / (hole.bossOutsideMm / 2);
  const at = (mm: { x: number; y: number }) => ({ x: room.x + mm.x * pxPerMm, y: room.y - mm.y * pxPerMm });
  const round = Array.from({ length: PLACES }, (_, i) => (i * 2 * Math.PI) / PLACES).map((turn) => {
    const reach = reachMm(hole.circles, turn);
    return { turn, reach, ...at({ x: reach * Math.cos(turn), y: reach * Math.sin(turn) }) };
  });
  const worst = round.reduce((most, place) => (place.reach > most.reach ? place : most));
  const { boreMm, shift } = hole.cleanUp;
  return {
    ...{ x: room.x, y: room.y, pxPerMm },
    ...{ bossRadius: room.radius, newRadius: (hole.newBoreMm / 2) * pxPerMm },
    outline: `${round.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('')}Z`,
    points: hole.circles.filter(({ radius }) => radius === 0).map(at),
    cleanUp: { ...at({ x: shift.xMm, y: shift.yMm }), radius: (boreMm / 2) * pxPerMm },
    worst: { x: worst.x, y: worst.y, mm: worst.reach - hole.newBoreMm / 2, turn: worst.turn },
  };
}

/** Path of a circle, for outlines with a hole in them. */
export const circlePath = (x: number, y: number, radius: number): string =>
  `M${px(x + radius)} ${px(y)}A${px(radius)} ${px(radius)} 0 1 1 ${px(x - radius)} ${px(y)}A${px(radius)} ${px(radius)} 0 1 1 ${px(x + radius)} ${px(y)}Z`;
