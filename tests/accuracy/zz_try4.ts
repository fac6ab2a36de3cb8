import { classEvidence } from '#core/fit/classEvidence.ts';
import { figureCoordinates, figuresAt } from '#core/fit/classFigures.ts';
import { clearBlock, machineBlock } from '#core/fit/machineBlock.ts';
import { defaultModelSettings as s } from '#core/fit/modelSettings.ts';
import * as L from './lastReadingOut.ts';

const set = L.lasers([500], 2000);
const blocks = set.series.map((x) => machineBlock(x.machineId, [x], true));
const pool = { prior: set.prior, blocks };
const co = figureCoordinates({ machines: false, visits: false, power: true }, [0.1]);
for (const x of [
  [0, 0, 0],
  [0, 0, 0.05],
  [0, -1, 0],
  [0, -1.5, 0.05],
  [-0.05, -1.01, 0.05],
  [0, -1, 1],
  [-2, 0, 0],
  [-3, 0, 0],
]) {
  for (const rounds of [1, 2, 3, 4, 6]) {
    blocks.forEach(clearBlock);
    const e = classEvidence(
      pool,
      figuresAt(x, co, s),
      blocks.map(() => undefined),
      s,
      rounds,
    );
    process.stdout.write(rounds + ': ' + e.lnZ.toFixed(4) + ' ');
  }
  console.log(x, JSON.stringify(figuresAt(x, co, s)));
}
