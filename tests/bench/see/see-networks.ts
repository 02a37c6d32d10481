import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import type { PoseNetworks } from '#core/see/find-swimmers';
import { openNetworks } from '../../../renderer/see/open-networks';

/** The app's networks on the app's own runtime, which is made for pages: here it is given what a page's worker has. */
export async function openNetworksHere(): Promise<PoseNetworks> {
  const require = createRequire(import.meta.url);
  const folder = path.join(path.dirname(require.resolve('@litertjs/core')), '../wasm/');
  Object.assign(globalThis, {
    self: globalThis,
    require,
    __dirname: folder,
    __filename: `${folder}litert.js`,
    importScripts: (file: string) => {
      vm.runInThisContext(readFileSync(file, 'utf8'), { filename: file });
      Object.assign(globalThis, { ModuleFactory: vm.runInThisContext('ModuleFactory') });
    },
  });
  const weights = (file: string): Uint8Array =>
    new Uint8Array(readFileSync(require.resolve(`@mediapipe/pose/${file}`)));
  const { networks } = await openNetworks({
    runtime: folder,
    landmarks: weights('pose_landmark_full.tflite'),
    detector: weights('pose_solution_packed_assets.data'),
  });
  return networks;
}
