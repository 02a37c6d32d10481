import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Plugin } from 'vite';

const name = 'virtual:see-files';

const licenceOf =
  'network-runtime: @litertjs/core. pose-landmarks, pose-detector: @mediapipe/pose. Both unchanged, by their authors (Google LLC), under the licence below.';

/**
 * Puts what seeing runs on and the networks' weights beside the app's own files, under names that say what they are, and gives
 * their addresses to whoever imports `virtual:see-files`: they are read when a coach first asks to see a swimmer.
 */
export function seeFiles(): Plugin {
  return {
    name: 'see-files',
    resolveId: (id) => (id === name ? `\0${name}` : null),
    load(id) {
      if (id !== `\0${name}`) return null;
      const require = createRequire(import.meta.url);
      const runtime = path.join(path.dirname(require.resolve('@litertjs/core')), '../wasm');
      const pose = path.dirname(require.resolve('@mediapipe/pose/package.json'));
      const files = {
        runtime: [path.join(runtime, 'litert_wasm_internal.js'), 'network-runtime.js'],
        program: [path.join(runtime, 'litert_wasm_internal.wasm'), 'network-runtime.wasm'],
        landmarks: [path.join(pose, 'pose_landmark_full.tflite'), 'pose-landmarks.tflite'],
        // the package's one packed file holds nothing but the detector
        detector: [path.join(pose, 'pose_solution_packed_assets.data'), 'pose-detector.tflite'],
      } as const;
      const entries = Object.entries(files).map(([key, [file, as]]) => {
        const reference = this.emitFile({ type: 'asset', name: as, source: readFileSync(file) });
        return `${key}: import.meta.ROLLUP_FILE_URL_${reference}`;
      });
      // neither package brings the text of its licence (Apache-2.0): the same text as another package of that licence has
      const licence = readFileSync(
        path.join(path.dirname(require.resolve('@techstark/opencv-js/package.json')), 'LICENSE'),
        'utf8',
      );
      this.emitFile({ type: 'asset', name: 'network-licence.txt', source: `${licenceOf}\n\n${licence}` });
      return `export default { ${entries.join(', ')} };`;
    },
  };
}
