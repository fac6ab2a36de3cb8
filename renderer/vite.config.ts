import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
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
  },
});
