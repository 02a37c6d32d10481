import { type CompiledModel, isWebGPUSupported, loadAndCompile, loadLiteRt, Tensor } from '@litertjs/core';
import { detectSize } from '#core/see/detect-output';
import type { PoseNetworks } from '#core/see/find-swimmers';
import { poseSize } from '#core/see/pose-output';
import type { RunsOn } from '../open-swim/see-store';

export interface NetworkFiles {
  /** Address of the folder (ending in a slash) or of the script of the runtime. */
  readonly runtime: string;
  readonly landmarks: Uint8Array;
  readonly detector: Uint8Array;
}

export interface OpenedNetworks {
  readonly networks: PoseNetworks;
  readonly runsOn: RunsOn;
}

/**
 * Loads the runtime and both networks, once in a worker: the runtime allows no second. They run through WebGPU where there is
 * one that takes all of them, else on the processor.
 */
export async function openNetworks(files: NetworkFiles): Promise<OpenedNetworks> {
  const runtime = await loadLiteRt(files.runtime);
  const graphics = isWebGPUSupported() && runtime.getWebGpuDevice() !== null;
  const open = async (weights: Uint8Array): Promise<readonly [CompiledModel, RunsOn]> => {
    if (graphics) {
      const model = await loadAndCompile(weights, { accelerator: 'webgpu' });
      if (model.isFullyAccelerated) return [model, 'graphics'];
      model.delete();
    }
    return [await loadAndCompile(weights, { accelerator: 'wasm' }), 'processor'];
  };
  const [landmarks, runsOn] = await open(files.landmarks);
  const [detector] = await open(files.detector);
  return {
    runsOn,
    networks: {
      async landmarks(input) {
        const [values, sure, mask] = await run(landmarks, input, poseSize, 3);
        if (!values || !sure || !mask) throw new Error('the landmark network gave too little');
        return { values, sure: sure[0] ?? 0, mask };
      },
      async detect(input) {
        const [boxes, scores] = await run(detector, input, detectSize, 2);
        if (!boxes || !scores) throw new Error('the detector gave too little');
        return { boxes, scores };
      },
    },
  };
}

/** Copies of the first outputs; everything of the runtime's own is given back. */
async function run(
  model: CompiledModel,
  input: Float32Array,
  size: number,
  outputs: number,
): Promise<readonly Float32Array[]> {
  const given = new Tensor(input, [1, size, size, 3]);
  try {
    const made = await model.run(given);
    const copies: Float32Array[] = [];
    for (const [i, tensor] of made.entries()) {
      if (i < outputs) copies.push(Float32Array.from(await tensor.data()));
      tensor.delete();
    }
    return copies;
  } finally {
    given.delete();
  }
}
