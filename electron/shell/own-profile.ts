import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { App } from 'electron';
import type { WantedLibrary } from '../host/chosen-library';

/**
 * Gives the program a profile of its own, apart from the library, from the settings and from a browser window's profile.
 * The lock that keeps a second program out lies in it. Must run before the lock is asked for; a profile named on the
 * command line is left alone.
 */
export function takeOwnProfile(app: Pick<App, 'setPath' | 'commandLine'>, wanted: WantedLibrary): void {
  if (app.commandLine.hasSwitch('user-data-dir')) return;
  const folder = path.join(path.dirname(wanted.windowFolder), 'desktop');
  mkdirSync(folder, { recursive: true });
  app.setPath('userData', folder);
}
