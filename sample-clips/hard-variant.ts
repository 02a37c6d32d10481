import { type MadeClip, makeClip } from './make-clip';
import { makeTruth } from './make-truth';
import type { Scenario } from './scenario';
import type { Truth } from './truth-schema';

/** What makes a clip hard to follow. */
export const hardships = [
  'bubbles',
  'glare',
  'blur',
  'low-contrast',
  'twenty-five-a-second',
  'compression',
  'crossing-limbs',
  'camera-pan',
] as const;
export type Hardship = (typeof hardships)[number];

/** The same swim, harder to see; its truth still follows from the scenario alone. Strengths are our own choice. */
export function hardVariant(scenario: Scenario, hardship: Hardship): Scenario {
  const named = { ...scenario, id: `${scenario.id}-${hardship}`, file: `${scenario.id}-${hardship}.mp4` };
  const { camera } = scenario;
  switch (hardship) {
    case 'bubbles':
      return { ...named, trouble: { bubbles: 9 } };
    case 'glare':
      return { ...named, trouble: { glare: 0.75 } };
    case 'blur':
      return { ...named, trouble: { filter: `gblur=sigma=${camera.width / 480}` } };
    case 'low-contrast':
      return { ...named, trouble: { filter: 'eq=contrast=0.42:saturation=0.5' } };
    case 'compression':
      return { ...named, trouble: { crf: 38 } };
    case 'crossing-limbs': {
      const { kicks, period } = scenario.technique;
      // half a kick: near and far leg pass each other in every half kick
      return { ...named, trouble: { farLag: period / kicks.length / 2 } };
    }
    case 'twenty-five-a-second': {
      const pictures = Math.floor((scenario.pictures / scenario.captureRate) * 25);
      return { ...named, captureRate: 25, storedRate: 25, pictures };
    }
    case 'camera-pan': {
      const speed = 0.45 * scenario.technique.speed;
      const startX = scenario.technique.startX;
      return {
        ...named,
        technique: { ...scenario.technique, startX },
        camera: { ...camera, carried: { speed, sway: 0.06 } },
      };
    }
  }
}

/** The same view in a picture `times` as wide and high: 1.5 makes 1280 × 720 into 1920 × 1080. */
export function enlarged(scenario: Scenario, times: number): Scenario {
  const { camera } = scenario;
  return {
    ...scenario,
    camera: {
      ...camera,
      width: Math.round(camera.width * times),
      height: Math.round(camera.height * times),
      surfaceRow: camera.surfaceRow * times,
      metresPerPixel: camera.metresPerPixel / times,
    },
  };
}

/** Draws and encodes a hard variant into an existing folder, with its truth. Needs ffmpeg and ffprobe. */
export async function makeHardVariant(
  scenario: Scenario,
  hardship: Hardship,
  folder: string,
): Promise<{ readonly scenario: Scenario; readonly clip: MadeClip; readonly truth: Truth }> {
  const variant = hardVariant({ ...scenario, shape: 'plain' }, hardship);
  const clip = await makeClip(variant, folder);
  return { scenario: variant, clip, truth: makeTruth(variant, clip) };
}
