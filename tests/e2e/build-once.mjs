import { ensureBuild, ensurePackages } from '../../electron/commands/set-up.mjs';

/** Installs and builds what is missing before the first story, so that no story waits for it or does it twice at once. */
export default function buildOnce() {
  ensurePackages();
  ensureBuild();
}
