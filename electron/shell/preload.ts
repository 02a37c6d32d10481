import { contextBridge, ipcRenderer } from 'electron';
import { operationChannel } from './operation-channel';

// The page gets one function and no channel name of its own choice. Answers are checked again on its side.
contextBridge.exposeInMainWorld('submarkHost', {
  run: (name: string, input: unknown): Promise<unknown> => ipcRenderer.invoke(operationChannel, name, input),
});
