import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { WindowBridge } from '#core/contract/windowBridge.ts';

/** The whole of what the window is given. It runs in the sandbox: no Node, no files, no Electron beyond these. */
const bridge: WindowBridge = {
  ask: (name, request, meantFor) => ipcRenderer.invoke('ask', name, request, meantFor),
  pathOfFile: (file) => webUtils.getPathForFile(file),
};

contextBridge.exposeInMainWorld('hoursAndWear', bridge);
