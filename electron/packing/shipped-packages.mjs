import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../commands/set-up.mjs';

/**
 * Folders of the npm packages of which something is shipped: in the window's or the host's bundles, or beside them. All that
 * are not for development only, as far as they are here: an optional one for another system isn't.
 */
export function shippedPackages() {
  const { packages } = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8'));
  return Object.entries(packages)
    .filter(([folder, facts]) => folder !== '' && !facts.dev && !facts.devOptional)
    .map(([folder]) => folder)
    .filter((folder) => existsSync(path.join(root, folder)));
}
