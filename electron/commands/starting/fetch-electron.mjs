import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** So long may pass without a byte. */
export const silenceMs = 15_000;
/** So long may checking and unpacking take, on a slow disk that is watched by a virus scanner. Our own limit. */
const unpackingMs = 300_000;

const later = (ms, act) => {
  const timer = setTimeout(act, ms);
  return () => clearTimeout(timer);
};

/** The installer's variables as given; a proxy that is named is used, which Node's own fetch does only when told to. */
function installerEnv(env, temporary) {
  const proxied = Object.keys(env).some((name) => /^https?_proxy$/i.test(name) && env[name]);
  return {
    ...(proxied ? { ELECTRON_GET_USE_PROXY: '1', NODE_USE_ENV_PROXY: '1' } : {}),
    ...env,
    // a download that is given up leaves nothing behind
    ...{ TMPDIR: temporary, TMP: temporary, TEMP: temporary },
    ELECTRON_GET_NO_PROGRESS: '1',
  };
}

/** Why an installer that failed has failed: by what its download told, else by its own words. */
function reasonOf(download, said) {
  if (/ENOSPC|EDQUOT/.test(said)) return { code: 'disk-full' };
  if (/checksum/i.test(said)) return { code: 'wrong-checksum' };
  if (['unreachable', 'refused', 'cut'].includes(download?.doing)) {
    const { doing, ...facts } = download;
    return { code: doing, ...facts };
  }
  const line = said.split('\n').find((each) => each.trim() !== '');
  return { code: 'not-installed', said: line?.trim().slice(0, 120) ?? '' };
}

/**
 * Runs Electron's own installer, which fetches Electron's program, checks its checksum and unpacks it. Gives up after 15 s
 * without a byte. Resolves with null when it is there, else with the reason.
 */
export async function fetchElectron({ electronPackage, env = process.env, onProgress, wait = later }) {
  const temporary = mkdtempSync(path.join(tmpdir(), 'submark-electron-'));
  const installer = spawn(
    process.execPath,
    [
      '--import',
      new URL('./watch-fetch.mjs', import.meta.url).href,
      path.join(electronPackage, 'install.js'),
    ],
    { env: installerEnv(env, temporary), stdio: ['ignore', 'ignore', 'pipe', 'ipc'] },
  );
  let said = '';
  let download = null;
  let givenUp = null;
  let stopWaiting = () => undefined;
  const giveUpAfter = (ms, reason) => {
    stopWaiting();
    stopWaiting = wait(ms, () => {
      givenUp = reason;
      installer.kill('SIGKILL');
    });
  };
  const interrupted = () => {
    installer.kill('SIGKILL');
    rmSync(temporary, { recursive: true, force: true });
    process.exit(130);
  };
  process.once('SIGINT', interrupted);
  installer.stderr.on('data', (chunk) => {
    said = (said + chunk).slice(0, 4000);
  });
  installer.on('message', (message) => {
    download = message;
    const fetching = message.doing === 'asked' || message.doing === 'receiving';
    giveUpAfter(
      ...(fetching
        ? [silenceMs, { code: 'silent', seconds: silenceMs / 1000 }]
        : [unpackingMs, { code: 'not-unpacked' }]),
    );
    onProgress?.(message);
  });
  // a program that is in the cache already is never asked for
  giveUpAfter(unpackingMs, { code: 'not-unpacked' });
  try {
    const ended = await new Promise((resolve) => {
      installer.once('error', (error) => resolve({ error }));
      installer.once('close', (code) => resolve({ code }));
    });
    if (givenUp) return givenUp;
    if (ended.error) return { code: 'not-installed', said: ended.error.code };
    return ended.code === 0 ? null : reasonOf(download, said);
  } finally {
    stopWaiting();
    process.off('SIGINT', interrupted);
    rmSync(temporary, { recursive: true, force: true });
  }
}
