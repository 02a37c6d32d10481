import { mkdirSync } from 'node:fs';

/** A bare app window of an installed Chromium, Chrome or Edge; else the default browser; false when there is neither. */
export async function browserWindow(address, profile, say) {
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return false;
  const open = await import('open');
  mkdirSync(profile, { recursive: true });
  // one name at a time: of several, `open` would wait for the window to be closed before it answers
  const wanted = ['chromium', 'chromium-browser', open.apps.chrome, open.apps.edge].flat();
  for (const name of wanted) {
    try {
      const child = await open.openApp(name, {
        arguments: [
          `--app=${address}`,
          `--user-data-dir=${profile}`,
          '--no-first-run',
          '--window-size=1440,900',
        ],
      });
      const failed = await new Promise((done) => {
        child.once('error', () => done(true));
        setTimeout(() => done(child.exitCode !== null && child.exitCode !== 0), 1500);
      });
      if (!failed) return true;
    } catch (error) {
      // most machines have one of these browsers and not the others
      if (error.code !== 'ENOENT') say(`${name} did not open (${error.code ?? error.message})`);
    }
  }
  try {
    await open.default(address);
    return true;
  } catch (error) {
    say(`no browser was found (${error.code ?? error.message})`);
    return false;
  }
}
