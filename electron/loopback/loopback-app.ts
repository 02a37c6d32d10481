import { errorWords } from '#core/host-contract/error-words';
import { type WantedLibrary, wantedLibrary } from '../host/chosen-library';
import { openAppHost } from '../host/open-app-host';
import { type LoopbackServer, serveLoopback } from './serve-loopback';

/** Starts the host on a library and serves the built app over it. Throws with words for the coach when it can't. */
export async function startLoopbackApp(options: {
  readonly library: WantedLibrary;
  readonly port: number;
}): Promise<LoopbackServer> {
  const opened = await openAppHost(options.library);
  if (!opened.ok) {
    const { what } = errorWords(opened.error);
    const where = options.library.path;
    throw new Error(
      `${what} (${where}) Check that its disk is connected and that you may read and write there, or name another folder with --library.`,
    );
  }
  const { host, handler } = opened.value;
  const server = await serveLoopback(handler, options.port);
  return {
    ...server,
    close: async () => {
      await host.close();
      await server.close();
    },
  };
}

// the start command loads one bundle and asks it for both
export { wantedLibrary };
