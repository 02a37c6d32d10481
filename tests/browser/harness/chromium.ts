import { existsSync } from 'node:fs';
import type { LaunchOptions } from '@playwright/test';

/** Where Chromium is: what SUBMARK_CHROMIUM names, else the system's, else the one Playwright installed. */
export function chromiumOptions(): LaunchOptions {
  const named = process.env.SUBMARK_CHROMIUM;
  const system = '/usr/bin/chromium';
  const path = named || (existsSync(system) ? system : undefined);
  // Chromium refuses to run as root with its sandbox
  const root = process.getuid?.() === 0;
  return {
    headless: true,
    args: ['--disable-gpu', '--disable-background-networking', ...(root ? ['--no-sandbox'] : [])],
    ...(path ? { executablePath: path } : {}),
  };
}
