export type Place = { positionId: number; item: number; position: string };

/** Places of a machine's points, each once. */
export const placesOf = (points: readonly Place[]): Place[] => [
  ...new Map(points.map(({ positionId, item, position }) => [positionId, { positionId, item, position }])).values(),
];
