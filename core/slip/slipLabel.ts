type Named = { assembly: string; position: string; point: string };

/**
 * What a part is called on a slip: its position; with the measuring point where a position has several, with the
 * assembly where the machine carries several.
 */
export function slipLabels(points: readonly Named[]): (point: Named) => string {
  const assemblies = new Set(points.map((point) => point.assembly));
  const atPosition = Map.groupBy(points, (point) => `${point.assembly}\n${point.position}`);
  return (point) => {
    const several = (atPosition.get(`${point.assembly}\n${point.position}`)?.length ?? 0) > 1;
    const name = several ? `${point.position}, ${point.point}` : point.position;
    return assemblies.size > 1 ? `${point.assembly}: ${name}` : name;
  };
}
