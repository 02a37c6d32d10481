import { chromium } from '@playwright/test';
import { chromiumOptions } from '../browser/harness/chromium';
import { ClipPage } from '../browser/harness/clip-test';
import { serveHarness } from '../browser/harness/serve';
import { heldByChildren } from '../e2e/process-look';
import { mediaClips } from './media-clips';
import { type MediaUnderFire, mediaUnderFire } from './media-targets';

export interface WindowUnderFire extends MediaUnderFire {
  /** Most memory the browser's processes held together since the start, in MB; 0 where the system does not tell. */
  peakMb(): number;
}

/** Mangled film for a window of a real Chromium, and for the host's tools. */
export async function windowUnderFire(): Promise<WindowUnderFire> {
  const clips = await mediaClips();
  const server = await serveHarness();
  const browser = await chromium.launch(chromiumOptions());
  const page = await browser.newPage();
  await page.goto(server.address);
  await page.waitForFunction(() => 'harness' in window);
  const tool = new ClipPage(page, server);
  let peak = 0;
  const watch = setInterval(() => {
    peak = Math.max(peak, heldByChildren(process.pid) / 1e6);
  }, 250);
  const media = mediaUnderFire(clips, (file) => tool.taste(file));
  return {
    targets: media.targets,
    peakMb: () => peak,
    async close() {
      clearInterval(watch);
      await browser.close();
      await server.close();
      await media.close();
    },
  };
}
