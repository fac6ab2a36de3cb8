import { defineConfig } from 'vite';

const top = `${import.meta.dirname}/..`;

/** The preload of a sandboxed window: one CommonJS file that may require electron and nothing else. */
export default defineConfig({
  root: top,
  publicDir: false,
  build: {
    ssr: `${top}/electron/preload.ts`,
    outDir: `${top}/.build/electron`,
    emptyOutDir: false,
    target: 'node24',
    rollupOptions: {
      external: ['electron'],
      output: { format: 'cjs', entryFileNames: 'preload.cjs', codeSplitting: false },
    },
  },
  ssr: { noExternal: true },
});
