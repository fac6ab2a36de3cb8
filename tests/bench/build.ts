import { join } from 'node:path';
import { build } from 'vite';

const top = join(import.meta.dirname, '../..');
/** Two levels below the top, as deep as the built program. */
export const BENCH_FOLDER = join(top, '.build/bench');

/** Builds the steps of the bench as the installed program is built: what its sources take to load is nobody's waiting. */
export async function buildBench(): Promise<void> {
  process.env.NODE_ENV = 'production';
  const input = {
    coreStep: join(import.meta.dirname, 'coreStep.ts'),
    serve: join(import.meta.dirname, 'serve.ts'),
  };
  const configFile = join(top, 'electron/vite.main.config.ts');
  await build({ configFile, logLevel: 'warn', build: { outDir: BENCH_FOLDER, rollupOptions: { input } } });
}
