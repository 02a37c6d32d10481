import { test as base } from '@playwright/test';
import { makeLibrary, type StartedApp, startApp } from './started-app';

interface Options {
  /** Whether the fresh library holds the sample swims (as on a first run) or nothing. */
  readonly samples: boolean;
  /** Changes the library's folder before the app starts on it: damaged files, a newer version. */
  readonly arrange: ((library: string) => Promise<void>) | null;
}

interface Given {
  readonly libraryFolder: string;
  /** The app, started on a library of its own and opened in `page`; any bug that surfaces fails the test. */
  readonly app: StartedApp;
}

/** Every test gets a fresh library, its own host and the app open in `page`. */
export const test = base.extend<Options & Given>({
  samples: [true, { option: true }],
  arrange: [null, { option: true }],
  libraryFolder: async ({ samples, arrange }, use) => {
    const { library, remove } = await makeLibrary(samples);
    await arrange?.(library);
    await use(library);
    await remove();
  },
  app: async ({ page, libraryFolder }, use) => {
    const app = await startApp(libraryFolder);
    const bugs: string[] = [];
    page.on('pageerror', (error) => bugs.push(error.message));
    page.on('console', (message) => {
      // a page that breaks the content policy says so only here
      if (message.type() === 'error' && /Content Security Policy/i.test(message.text()))
        bugs.push(message.text());
    });
    await page.goto(app.address);
    await use(app);
    await app.stop();
    base.expect(bugs).toEqual([]);
  },
});
export { expect } from '@playwright/test';
