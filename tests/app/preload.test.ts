import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import vm from 'node:vm';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { WindowBridge } from '#core/contract/windowBridge.ts';

const folder = mkdtempSync(join(tmpdir(), 'preload-'));

beforeAll(() =>
  build({
    configFile: join(import.meta.dirname, '../../electron/vite.preload.config.ts'),
    build: { outDir: folder },
    logLevel: 'error',
  }),
);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the built preload as a sandboxed window does: as one script that may require "electron" and nothing else. */
function runPreload() {
  const exposed = new Map<string, WindowBridge>();
  const electron = {
    contextBridge: { exposeInMainWorld: (name: string, bridge: WindowBridge) => exposed.set(name, bridge) },
    ipcRenderer: { invoke: vi.fn(async () => ({ ok: true, value: 1 })) },
    webUtils: { getPathForFile: (file: { name: string }) => `/shop/${file.name}` },
  };
  const required: string[] = [];
  const require = (name: string) => {
    required.push(name);
    if (name !== 'electron') throw new Error(`module not found: ${name}`);
    return electron;
  };
  vm.runInNewContext(readFileSync(join(folder, 'preload.cjs'), 'utf8'), {
    require,
    module: { exports: {} },
    exports: {},
  });
  return { exposed, electron, required };
}

test('the preload is one small file that the sandbox can run', () => {
  expect(readdirSync(folder)).toEqual(['preload.cjs']);
  expect(readFileSync(join(folder, 'preload.cjs')).length).toBeLessThan(2_000);
  expect(new Set(runPreload().required)).toEqual(new Set(['electron']));
});

test('the window is given two functions and nothing of Electron itself', async () => {
  const { exposed, electron } = runPreload();
  expect([...exposed.keys()]).toEqual(['hoursAndWear']);
  const bridge = exposed.get('hoursAndWear');
  expect(Object.keys(bridge ?? {}).sort()).toEqual(['ask', 'pathOfFile']);
  expect(await bridge?.ask('hours/add', { dialHours: 812 }, 'this one')).toEqual({ ok: true, value: 1 });
  expect(electron.ipcRenderer.invoke).toHaveBeenCalledExactlyOnceWith(
    ...['ask', 'hours/add', { dialHours: 812 }, 'this one'],
  );
  expect(bridge?.pathOfFile(new File([], 'sizes.csv'))).toBe('/shop/sizes.csv');
});
