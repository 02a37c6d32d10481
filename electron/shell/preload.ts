import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { operationChannel } from './operation-channel';

// The page gets two functions and no channel name of its own choice. Answers are checked again on its side.
contextBridge.exposeInMainWorld('submarkHost', {
  run: (name: string, input: unknown): Promise<unknown> => ipcRenderer.invoke(operationChannel, name, input),
  /** Where a file lies that the coach picked or dropped; empty for one that lies nowhere. A page can't make one up. */
  pathOf: (file: File): string => webUtils.getPathForFile(file),
});
