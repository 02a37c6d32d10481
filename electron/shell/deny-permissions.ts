import type { Session } from 'electron';

// Electron's security checklist: "Handle session permission requests from remote content". Nothing is ever granted.
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
}
