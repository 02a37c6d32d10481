import { type IpcMainInvokeEvent, ipcMain } from 'electron';
import { failure } from '#core/host-contract/host-error';
import type { Host } from '../host/create-host';
import { appOrigin } from './app-protocol';
import { operationChannel } from './operation-channel';

// Electron's security checklist: "Validate the sender of all IPC messages". The only place ipcMain is used.
function fromOurPage(event: Pick<IpcMainInvokeEvent, 'senderFrame'>): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && frame.url.startsWith(`${appOrigin}/`);
}

export function handleOperations(host: Host): void {
  ipcMain.handle(operationChannel, (event, name: unknown, input: unknown) => {
    if (!fromOurPage(event) || typeof name !== 'string') return failure('not-allowed', { name: 'operation' });
    return host.run(name, input);
  });
}
