import { defineConfig } from 'vite';

const top = `${import.meta.dirname}/..`;

/**
 * Electron's main process with the core in it, the same over the loopback shell, and beside them the threads that learn classes and do long work. All files
 * land flat in one folder two levels below the top, as deep as core's own, so that what looks for migrations or fonts by
 * "../.." finds them. Left out, and loaded from node_modules: what has native parts (better-sqlite3), and the PDF library
 * with the React it runs on and the solver, which find their own files beside them.
 */
export default defineConfig({
  root: top,
  publicDir: false,
  build: {
    ssr: true,
    outDir: `${top}/.build/electron`,
    emptyOutDir: true,
    target: 'node24',
    rollupOptions: {
      input: {
        main: `${top}/electron/main.ts`,
        overLoopback: `${top}/electron/overLoopback.ts`,
        learnWorker: `${top}/core/use-cases/learning/learnWorker.ts`,
        jobWorker: `${top}/core/use-cases/jobs/jobWorker.ts`,
      },
      external: ['electron', 'better-sqlite3', '@react-pdf/renderer', 'highs', 'react', /^react\//],
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name].part.js' },
    },
  },
  ssr: { noExternal: true, external: ['better-sqlite3', '@react-pdf/renderer', 'highs', 'react'] },
});
