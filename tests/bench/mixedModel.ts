import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { allParts } from '#core/way/shopSeries.ts';
import { seriesOfShop } from '#core/way.ts';
import { BENCH_AS_OF } from './syntheticRecord.ts';

/**
 * R's lme4 on the same parts: node tests/bench/mixedModel.ts RECORD. Prints the seconds of the processor its fits took, or a word
 * where R or lme4 is not installed. Of each class: wear by hours, rates scattered by machine and by part. It gives a mean
 * rate and two scatters: no bent wear, no visit errors, no forecast of any point.
 */
const folder = mkdtempSync(join(tmpdir(), 'mixed-model-'));
const file = join(folder, 'parts.csv');
writeFileSync(file, ['class,machine,part,hours,wear', ...rowsOf(process.argv[2] ?? '')].join('\n'));
const script = `suppressMessages(library(lme4)); d <- read.csv("${file}"); s <- 0
  for (one in split(d, d$class)) { t <- system.time(lmer(wear ~ 0 + hours + (0 + hours | machine) + (0 + hours | part), one,
    control = lmerControl(calc.derivs = FALSE))); s <- s + t[["user.self"]] + t[["sys.self"]] }
  cat(s)`;
const run = spawnSync('Rscript', ['-e', script], { encoding: 'utf8' });
rmSync(folder, { recursive: true, force: true });
console.log(JSON.stringify(run.status === 0 ? Number(run.stdout) : 'no lme4'));

function rowsOf(path: string): string[] {
  const record = openRecord(path);
  const life = loadShopLife(record, { asOf: BENCH_AS_OF });
  record.close();
  return allParts(seriesOfShop(life, BENCH_AS_OF)).flatMap(({ partClass, machineId, pointId, ordinal, readings }) =>
    readings.map(
      ({ workedHours, wearMm }) => `${partClass},${machineId},${pointId}-${ordinal},${workedHours / 1000},${wearMm}`,
    ),
  );
}
