import type { Protocol } from 'electron';

// Electron's security checklist: "Avoid usage of the file:// protocol and prefer usage of custom protocols".
const appScheme = 'submark';
export const appOrigin = `${appScheme}://app`;

/** Must run before the app is ready. */
export function registerAppScheme(protocol: Protocol): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: appScheme, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
}

/** Serves the app's own origin, and nothing of any other host name under the scheme. */
export function serveAppScheme(protocol: Protocol, handler: (request: Request) => Promise<Response>): void {
  protocol.handle(appScheme, async (request) => {
    if (new URL(request.url).host !== 'app') return new Response('not there', { status: 404 });
    return handler(request as unknown as Request);
  });
}
