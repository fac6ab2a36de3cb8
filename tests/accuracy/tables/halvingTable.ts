import { halvings } from '../halving.ts';
import { places, printTable } from '../printTable.ts';

/** The plain model against itself with the steps of one axis halved. */
export function halvingTable(full: boolean): void {
  const names = { mu: 'mu', omega: 'omega', c: 'c', x: 'power g' };
  printTable(
    'Plain model, steps of one figure halved: how far any hours of 20 parts move; asked: less than 0.1 %',
    ['class of', 'figure', 'nodes', 'step in sd (asked: 0.5)', 'most moved %'],
    (full ? [3, 30, 300, 5000] : [3, 30]).flatMap((parts) =>
      halvings(parts).map(({ axis, nodes, stepOfSd, most }) => [
        parts,
        names[axis],
        nodes,
        places(stepOfSd, 3),
        places(100 * most, 5),
      ]),
    ),
  );
}
