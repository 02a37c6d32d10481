import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fetchElectron } from './fetch-electron.mjs';
import { findElectron } from './find-electron.mjs';
import { openElectron } from './open-electron.mjs';
import { isFetchFailure, whyNoElectron } from './why-no-electron.mjs';

/** Whether version a is b or newer, part by part. */
function atLeast(a, b) {
  const [have, need] = [a, b].map((each) => each.split('.').map(Number));
  const at = need.findIndex((part, i) => part !== (have[i] ?? 0));
  return at < 0 || (have[at] ?? 0) > need[at];
}

/** What makes a window of Electron's pointless here, whether or not its program is there. */
function noWindowHere({ platform, uid, env }) {
  if (platform !== 'linux') return null;
  if (!env.DISPLAY && !env.WAYLAND_DISPLAY) return { code: 'no-screen' };
  // Chromium's sandbox does not hold root; running it without would let a crafted film have the whole machine
  return uid === 0 ? { code: 'root' } : null;
}

/** What makes fetching Electron's program pointless here. */
function noFetchHere({ electronPackage, env, nodeVersion }) {
  if (env.ELECTRON_SKIP_BINARY_DOWNLOAD) return { code: 'not-wanted' };
  const { engines } = JSON.parse(readFileSync(path.join(electronPackage, 'package.json'), 'utf8'));
  const needed = /(\d+(?:\.\d+)*)/.exec(engines?.node ?? '')?.[1];
  return needed && !atLeast(nodeVersion, needed) ? { code: 'old-node', needed, node: nodeVersion } : null;
}

/**
 * Opens an app's folder in Electron, with its program fetched once when it is not there. A download that failed is
 * remembered for this version of Electron, and tried again only when asked for.
 * @param memory `read()` gives what was kept, `write(value)` keeps; undefined forgets
 * @returns {Promise<{ ended: number } | { instead: string }>} its exit code, or the sentence that says why a browser is opened
 */
export async function electronWindow({
  electronPackage,
  folder,
  memory,
  say,
  getAgain = false,
  progress,
  platform = process.platform,
  uid = process.getuid?.(),
  env = process.env,
  nodeVersion = process.versions.node,
  fetch = fetchElectron,
  open = openElectron,
}) {
  const instead = (reason, how) => ({ instead: whyNoElectron(reason, how) });
  if (!existsSync(path.join(electronPackage, 'package.json')))
    return instead({ code: 'not-installed', said: 'its npm package is missing' });
  const none = noWindowHere({ platform, uid, env });
  if (none) return instead(none);

  let found = findElectron({ electronPackage, env, platform });
  if (found.missing === 'not-in-folder')
    return instead({ code: 'not-in-folder', folder: env.ELECTRON_OVERRIDE_DIST_PATH });
  if (found.missing) {
    const noFetch = noFetchHere({ electronPackage, env, nodeVersion });
    if (noFetch) return instead(noFetch);
    const { version } = JSON.parse(readFileSync(path.join(electronPackage, 'package.json'), 'utf8'));
    const failed = memory.read();
    if (!getAgain && failed?.version === version && isFetchFailure(failed.reason))
      return instead(failed.reason, { earlier: true });
    say('fetching Electron’s program, once …');
    const reason = await fetch({ electronPackage, env, onProgress: progress?.told });
    progress?.end();
    found = findElectron({ electronPackage, env, platform });
    const failure = reason ?? (found.program ? null : { code: 'not-installed', said: '' });
    memory.write(failure ? { version, reason: failure } : undefined);
    if (failure) return instead(failure);
  }
  say('opening Submark in Electron');
  const { reason, ended, how } = await open({ program: found.program, folder, env });
  if (reason) return instead(reason);
  if (ended !== 0) say(`Electron ended in mid-work (${how})`);
  return { ended };
}
