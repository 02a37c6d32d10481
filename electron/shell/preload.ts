import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { operationChannel } from './operation-channel';

// The page gets two functions and no channel name of its own choice. Answers are checked again on its side.
contextBridge.exposeInMainWorld('submarkHost', {
  run: (name: string, input: unknown): Promise<unknown> => ipcRenderer.invoke(operationChannel, name, input),
  /**
   * Where a file lies that the coach picked or dropped; empty for one that lies nowhere, and in an Electron before 29,
   * which can't say: then the file is sent. A page can't make one up.
   */
  pathOf: (file: File): string => (webUtils as typeof webUtils | undefined)?.getPathForFile(file) ?? '',
});
