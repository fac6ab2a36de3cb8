/** A circle in the plane; of radius 0: a point. */
export type Circle = { x: number; y: number; radius: number };

/** How far a circle reaches from a place: to its far side. */
export const reachFrom = (place: { x: number; y: number }, of: Circle): number =>
  Math.hypot(of.x - place.x, of.y - place.y) + of.radius;

/** What counts as inside, as a share of the largest figure at hand: a few units in the last place. */
const DUST = 1e-11;

/**
 * The smallest circle that encloses all the given circles.
 * It rests on one, two or three of them. Begin with the largest; while one sticks out, take the smallest circle about those it
 * rests on and the one that sticks out furthest. Every step makes it larger, so no set is met twice and the last is the answer,
 * not an approximation.
 *
 * @param circles at least one
 * @returns centre and radius; the same for the same circles in the same order
 * @source own derivation after J. Elzinga and D. W. Hearn, Geometrical solutions for some minimax location problems,
 *   Transportation Science 6 (1972), pp. 379-394, carried from points to circles
 * @checked core/maths/enclosingCircle.test.ts
 * @example enclosingCircle([{ x: 0, y: 0, radius: 25 }, { x: 1.2, y: 0, radius: 25 }]) // { x: 0.6, y: 0, radius: 25.6 }
 */
export function enclosingCircle(circles: readonly Circle[]): Circle {
  const largest = circles.reduce((one, other) => (other.radius > one.radius ? other : one));
  const dust = DUST * Math.max(...circles.map((circle) => reachFrom({ x: 0, y: 0 }, circle)));
  let restsOn: readonly Circle[] = [largest];
  let around = largest;
  for (;;) {
    const far = furthest(around, circles);
    if (reachFrom(around, far) <= around.radius + dust) return around;
    const next = smallestAbout([...restsOn, far], dust);
    // none, or no larger than before: what sticks out is about what the arithmetic can tell
    if (!next || !(next.around.radius > around.radius)) return { ...around, radius: reachFrom(around, far) };
    ({ around, restsOn } = next);
  }
}

const furthest = (from: Circle, circles: readonly Circle[]): Circle =>
  circles.reduce((one, other) => (reachFrom(from, other) > reachFrom(from, one) ? other : one));

/** Of at most four circles: the smallest about them all, and the one, two or three it rests on. */
function smallestAbout(
  circles: readonly Circle[],
  dust: number,
): { around: Circle; restsOn: readonly Circle[] } | null {
  const tries = subsets(circles).flatMap((restsOn) => touching(restsOn).map((around) => ({ around, restsOn })));
  const sound = tries.filter(({ around }) =>
    circles.every((circle) => reachFrom(around, circle) <= around.radius + dust),
  );
  const least = Math.min(...sound.map(({ around }) => around.radius));
  return sound.find(({ around }) => around.radius === least) ?? null;
}

/** One, two and three of them, the few first. */
function subsets(of: readonly Circle[]): Circle[][] {
  const found = of.map((one) => [one]);
  for (const [i, a] of of.entries()) for (const b of of.slice(i + 1)) found.push([a, b]);
  for (const [i, a] of of.entries())
    for (const [j, b] of of.entries()) if (j > i) for (const c of of.slice(j + 1)) found.push([a, b, c]);
  return found;
}

/** Circles that hold the given one, two or three and touch each of them from inside. */
function touching([a, b, c]: readonly Circle[]): Circle[] {
  if (!a) return [];
  if (!b) return [a];
  return c ? touchingThree(a, b, c) : touchingTwo(a, b);
}

/** About two, on the line through their centres: none when one lies in the other. */
function touchingTwo(a: Circle, b: Circle): Circle[] {
  const apart = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(apart > Math.abs(a.radius - b.radius))) return [];
  const radius = (apart + a.radius + b.radius) / 2;
  const share = (radius - a.radius) / apart;
  return [{ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), radius }];
}

/**
 * Apollonius' circles about three, all inside: |centre - c_i| = R - r_i. Taken from one another the squares are straight in
 * x, y and R, which leaves one quadratic in R. Centres on one line: two of them decide, so none is given.
 */
function touchingThree(a: Circle, b: Circle, c: Circle): Circle[] {
  const rows = [b, c].map((other) => {
    const [dx, dy] = [other.x - a.x, other.y - a.y];
    const dr = other.radius - a.radius;
    return { dx, dy, dr, half: (dx * dx + dy * dy - dr * dr) / 2 };
  });
  const [p, q] = [rows[0]!, rows[1]!];
  const cross = p.dx * q.dy - q.dx * p.dy;
  if (Math.abs(cross) <= DUST * (Math.hypot(p.dx, p.dy) * Math.hypot(q.dx, q.dy))) return [];
  // centre from a: x = x0 + x1 S, y = y0 + y1 S, with S = R - ra
  const [x0, y0] = [(p.half * q.dy - q.half * p.dy) / cross, (p.dx * q.half - q.dx * p.half) / cross];
  const [x1, y1] = [(p.dr * q.dy - q.dr * p.dy) / cross, (p.dx * q.dr - q.dx * p.dr) / cross];
  return roots(x1 * x1 + y1 * y1 - 1, 2 * (x0 * x1 + y0 * y1), x0 * x0 + y0 * y0)
    .filter((s) => s >= 0)
    .map((s) => ({ x: a.x + x0 + x1 * s, y: a.y + y0 + y1 * s, radius: a.radius + s }));
}

/** Real roots of a s^2 + b s + c. */
function roots(a: number, b: number, c: number): number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  // the root without cancellation first, the other from their product
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(under)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}
