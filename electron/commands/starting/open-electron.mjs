import { spawn } from 'node:child_process';

/** What Chromium and the system's loader write when they can't start; seen in Electron 25 on Linux. */
function reasonOf({ code, signal }, said) {
  const library = /error while loading shared libraries: ([^:\s]+)/.exec(said)?.[1];
  if (library) return { code: 'no-library', library };
  if (/No usable sandbox|SUID sandbox helper/.test(said)) return { code: 'no-sandbox' };
  if (/Missing X server|cannot open display|Failed to connect to Wayland/i.test(said))
    return { code: 'screen-refused' };
  return { code: 'ended-at-once', how: signal ?? `code ${code}` };
}

/**
 * Opens an app's folder in Electron and waits for its end. Electron has started once the app says `ready` (the shell's
 * `tell-starter.ts`); what ends before that other than in order did not start.
 * @returns {Promise<{ ended: number, how?: string } | { reason: object }>} the exit code, or why it did not start
 */
export function openElectron({ program, folder, args = [], env = process.env, onReady }) {
  return new Promise((resolve) => {
    const electron = spawn(program, [...args, folder], {
      env: { ...env, SUBMARK_STARTER: 'waits' },
      stdio: ['inherit', 'inherit', 'pipe', 'ipc'],
    });
    let said = '';
    let ready = false;
    // Ctrl-C reaches Electron by itself: it closes in order, and this waits for that
    const waitOn = () => undefined;
    let stopped = false;
    const passOn = () => {
      stopped = true;
      electron.kill('SIGTERM');
    };
    process.on('SIGINT', waitOn);
    process.on('SIGTERM', passOn);
    const end = (answer) => {
      process.off('SIGINT', waitOn);
      process.off('SIGTERM', passOn);
      resolve(answer);
    };
    electron.stderr.on('data', (chunk) => {
      process.stderr.write(chunk);
      if (!ready) said = (said + chunk).slice(-8000);
    });
    electron.once('message', () => {
      ready = true;
      onReady?.();
    });
    electron.once('error', (error) => end({ reason: { code: 'not-started', fault: error.code } }));
    electron.once('close', (code, signal) => {
      if (code === 0 || stopped) end({ ended: 0 });
      else if (ready) end({ ended: code ?? 1, how: signal ?? `code ${code}` });
      else end({ reason: reasonOf({ code, signal }, said) });
    });
  });
}
