import type { Session } from 'electron';
import { appOrigin } from './app-protocol';

// Electron's security checklist: "Handle session permission requests from remote content". Our own page may put text on
// the clipboard, cleaned by Chromium, so that a report can be copied; nothing else is ever granted, and nobody else.
export function denyPermissions(session: Session): void {
  const granted = (permission: string, from: string | undefined): boolean =>
    permission === 'clipboard-sanitized-write' && isOurs(from);
  session.setPermissionRequestHandler((_contents, permission, answer, details) =>
    answer(granted(permission, details?.requestingUrl)),
  );
  session.setPermissionCheckHandler((_contents, permission, origin) => granted(permission, origin));
}

/** Whether an address, or an origin with or without a slash at its end, is of our own page. */
export const isOurs = (address: string | undefined): boolean =>
  address === appOrigin || address?.startsWith(`${appOrigin}/`) === true;
