type Named = { assembly: string; position: string; point: string };

/**
 * What a part is called on a slip: its position; with the measuring point where a position has several, with its assembly
 * where that is not the one the slip is about.
 *
 * @param about the assembly the headline names
 */
export function slipLabels(points: readonly Named[], about: string): (point: Named) => string {
  const atPosition = Map.groupBy(points, (point) => `${point.assembly}\n${point.position}`);
  return (point) => {
    const several = (atPosition.get(`${point.assembly}\n${point.position}`)?.length ?? 0) > 1;
    const name = several ? `${point.position}, ${point.point}` : point.position;
    return point.assembly === about ? name : `${point.assembly}: ${name}`;
  };
}
