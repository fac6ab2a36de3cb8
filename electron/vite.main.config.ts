import { defineConfig } from 'vite';

const top = `${import.meta.dirname}/..`;

/**
 * Electron's main process with the core in it, one file. Left out of it, and loaded from node_modules: what has native
 * parts (better-sqlite3), and the PDF library with the React it runs on, which finds its own files beside it.
 */
export default defineConfig({
  root: top,
  publicDir: false,
  build: {
    ssr: `${top}/electron/main.ts`,
    outDir: `${top}/.build/electron`,
    emptyOutDir: false,
    target: 'node24',
    rollupOptions: {
      external: ['electron', 'better-sqlite3', '@react-pdf/renderer', 'react', /^react\//],
      output: { format: 'es', entryFileNames: 'main.js', codeSplitting: false },
    },
  },
  ssr: { noExternal: true, external: ['better-sqlite3', '@react-pdf/renderer', 'react'] },
});
