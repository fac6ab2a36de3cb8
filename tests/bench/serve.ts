import { openProgram } from '#core/shells/openProgram.ts';
import { serveLoopback } from '#core/shells/web.ts';
import { peakMegabytes } from './measure.ts';
import { BENCH_AS_OF } from './syntheticRecord.ts';

/** The program over its loopback shell in a process of its own: prints its address, and on a line of input its peak memory. */
const program = await openProgram({
  recordPath: process.argv[2] ?? '',
  asOf: BENCH_AS_OF,
  log: ({ operation, error }) => console.error(operation, error),
});
const loopback = await serveLoopback({ ask: program.ask, pageFolder: process.argv[3] ?? '' });
console.log(loopback.address);
process.stdin.once('data', () => {
  console.log(peakMegabytes());
  process.exit(0);
});
