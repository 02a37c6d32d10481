import type { HostClient } from './host-client';
import { createIpcClient, type HostBridge } from './ipc-client';
import { createLoopbackClient } from './loopback-client';

/** The transport this window has: the preload's bridge in Electron, else HTTP to the server the page came from. */
export function chooseClient(): HostClient {
  const bridge = (window as { submarkHost?: HostBridge }).submarkHost;
  return bridge ? createIpcClient(bridge) : createLoopbackClient();
}
