import react from '@vitejs/plugin-react';
import { defineConfig, normalizePath } from 'vite';
import { NONCE_PLACE } from '../core/shells/page.ts';

const here = import.meta.dirname;

/** Builds the window into .build/renderer; both shells serve it from there. */
export default defineConfig({
  root: here,
  base: '/',
  plugins: [react()],
  resolve: {
    alias: [{ find: /^zod$/, replacement: `${here}/strictZod.ts` }],
  },
  html: { cspNonce: NONCE_PLACE },
  build: {
    outDir: `${here}/../.build/renderer`,
    emptyOutDir: true,
    target: 'es2023',
    // fonts and pictures stay files: the policy then names no inline source for scripts or styles
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
    reportCompressedSize: false,
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [{ debugName: 'beginnings', name: beginningOf }],
        },
      },
    },
  },
});

type Known = {
  getModuleInfo(id: string): { importedIds: string[]; dynamicallyImportedIds: string[] } | null;
};

/** By module: which of the imports of main.tsx brings it along. */
let beginnings: Map<string, string> | null = null;

/**
 * What every window begins with lies in one file for each import of main.tsx. By itself it is parted by who else uses which
 * module, and a window asks for ninety files before it draws its first list: twice as many as with these.
 */
function beginningOf(id: string, known: Known): string | null {
  beginnings ??= allBeginnings(known);
  return beginnings.get(id) ?? null;
}

const nameOf = (id: string): string => /([^/.]+)[^/]*$/.exec(id)?.[1] ?? id;

function allBeginnings(known: Known): Map<string, string> {
  const main = known.getModuleInfo(normalizePath(`${here}/main.tsx`));
  if (!main) return new Map(); // a page of a test
  const beginnings = new Map<string, string>();
  const add = (id: string, name: string): void => {
    if (beginnings.has(id)) return;
    beginnings.set(id, name);
    for (const imported of known.getModuleInfo(id)?.importedIds ?? []) add(imported, name);
  };
  // in their order: what one of them brings along the later find there
  for (const id of [...main.importedIds, ...main.dynamicallyImportedIds]) add(id, nameOf(id));
  return beginnings;
}
