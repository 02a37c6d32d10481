import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Plugin } from 'vite';
import { opencvWithoutEval } from './opencv-without-eval';

const name = 'virtual:opencv-address';

/**
 * Puts OpenCV's script, without its code made from text, beside the app's own files, and gives its address to whoever
 * imports `virtual:opencv-address`. It is a file of its own because a classic worker loads it as one.
 */
export function opencvScript(): Plugin {
  return {
    name: 'opencv-script',
    resolveId: (id) => (id === name ? `\0${name}` : null),
    load(id) {
      if (id !== `\0${name}`) return null;
      const file = createRequire(import.meta.url).resolve('@techstark/opencv-js');
      const source = opencvWithoutEval(readFileSync(file, 'utf8'));
      const reference = this.emitFile({ type: 'asset', name: 'opencv.js', source });
      return `export default import.meta.ROLLUP_FILE_URL_${reference};`;
    },
  };
}
