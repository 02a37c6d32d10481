import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import { securityHeaders } from '../host/content-security';
import { createRequestGuard } from './request-guard';
import { commandLineWords } from '#core/words/command-line';

export interface LoopbackServer {
  readonly port: number;
  /** Address to open; good for one opening. */
  readonly startAddress: string;
  close(): Promise<void>;
}

const refusal: Readonly<Record<string, string>> = {
  'wrong-host': commandLineWords('submarkAnswersOnly'),
  'cross-site': commandLineWords('submarkAnswersOnlyIts'),
  'no-token': commandLineWords('windowHasNoKey'),
};

/** Serves the app on 127.0.0.1 only, behind its guard. Port 0 takes a free one. No upgrade (websocket) is accepted. */
export async function serveLoopback(
  handler: (request: Request) => Promise<Response>,
  wantedPort: number,
): Promise<LoopbackServer> {
  let port = wantedPort;
  const guard = createRequestGuard(() => port);
  const plain = (text: string, status: number): Response =>
    new Response(text, {
      status,
      headers: { ...securityHeaders, 'Content-Type': commandLineWords('textPlainCharset') },
    });
  const guarded = async (request: Request): Promise<Response> => {
    const verdict = guard.check(request);
    const url = new URL(request.url);
    if (verdict === 'no-token' && request.method === 'GET' && url.pathname.startsWith('/open/')) {
      const cookie = guard.exchange(url.pathname.slice('/open/'.length));
      if (!cookie) return plain(refusal['no-token'] ?? '', 403);
      return new Response(null, {
        status: 303,
        headers: { ...securityHeaders, Location: '/', 'Set-Cookie': cookie },
      });
    }
    if (verdict !== 'ok') return plain(refusal[verdict] ?? '', 403);
    if (url.pathname.startsWith('/open/'))
      return new Response(null, { status: 303, headers: { ...securityHeaders, Location: '/' } });
    return handler(request);
  };
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: guarded, hostname: '127.0.0.1', port: wantedPort }, (info: AddressInfo) => {
      port = info.port;
      resolve({
        port,
        startAddress: `http://127.0.0.1:${port}/open/${guard.startCode}`,
        close: () =>
          new Promise((done, fail) => {
            server.close((error) => (error ? fail(error) : done()));
            if ('closeAllConnections' in server) server.closeAllConnections();
          }),
      });
    });
    server.on('upgrade', (_request, socket) => socket.destroy());
    server.on('error', reject);
  });
}
