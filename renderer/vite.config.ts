import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { seeFiles } from './see/see-files';
import { opencvScript } from './vision/opencv-script';

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react(), opencvScript(), seeFiles()],
  build: {
    outDir: '../.build/renderer',
    emptyOutDir: true,
    // the page's policy allows no inline script, and small files must not become one
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
  },
});
