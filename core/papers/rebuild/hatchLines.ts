/**
 * Section hatching of a rectangle at 45 degrees, cut off at its edges, as one path.
 * @param apartPx distance of the lines, along the edge
 * @source own derivation: where the lines x + y = c meet the four edges
 */
export function hatchLines(x: number, y: number, width: number, height: number, apartPx: number): string {
  const lines: string[] = [];
  for (let along = apartPx; along < width + height; along += apartPx) {
    const fromX = x + Math.min(along, width);
    const fromY = y + Math.max(0, along - width);
    const toX = x + Math.max(0, along - height);
    const toY = y + Math.min(along, height);
    lines.push(`M${fromX} ${fromY}L${toX} ${toY}`);
  }
  return lines.join('');
}
