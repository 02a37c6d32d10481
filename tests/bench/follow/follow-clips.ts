import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { enlarged, type Hardship, hardships, hardVariant } from '../../../sample-clips/hard-variant';
import { makeClip } from '../../../sample-clips/make-clip';
import { makeTruth } from '../../../sample-clips/make-truth';
import { type Scenario, scenarios } from '../../../sample-clips/scenario';
import { juno } from '../../../sample-clips/squad-looks';
import { type Truth, truthSchema } from '../../../sample-clips/truth-schema';

const cache = fileURLToPath(new URL('../../../.cache/follow/', import.meta.url));

/** The path of what is kept of a clip under a name: what was followed, measured or seen of its camera. */
export const keptFile = (clip: string, file: string): string => path.join(cache, clip, file);

export interface FollowClip {
  readonly name: string;
  readonly swim: 'butterfly' | 'kick';
  readonly hardship: Hardship | 'clean' | 'held-out';
  readonly scenario: Scenario;
}

/** Seconds of each clip: two whole strokes, or five kicks, and a bit. */
const seconds = 2.6;

/** The two swims that matter, at 1080p and 60 a second, clean and made hard to see. */
export function followClips(): readonly FollowClip[] {
  const named = (id: string): Scenario => {
    const found = scenarios.find((each) => each.id === id);
    if (!found) throw new Error(`no sample ${id}`);
    const big = enlarged(found, 1.5);
    return { ...big, captureRate: 60, storedRate: 60, pictures: Math.round(60 * seconds), shape: 'plain' };
  };
  const swims = [
    ['butterfly', named('sample-butterfly-together')],
    ['kick', named('sample-streamline-kick')],
  ] as const;
  const measured = swims.flatMap(([swim, scenario]) =>
    (['clean', ...hardships] as const).map((hardship) => ({
      name: `${swim}-${hardship}`,
      swim,
      hardship,
      scenario: hardship === 'clean' ? scenario : hardVariant(scenario, hardship),
    })),
  );
  return [...measured, heldOut(named('sample-butterfly-together'))];
}

/**
 * A butterfly on which nothing was ever set: another swimmer, rhythm and course, seen smaller, from the other side,
 * every stroke with a breath, with more bubbles.
 */
function heldOut(scenario: Scenario): FollowClip {
  const { technique, camera } = scenario;
  const file = 'held-out-butterfly.mp4';
  return {
    name: 'held-out-butterfly',
    swim: 'butterfly',
    hardship: 'held-out',
    scenario: {
      ...scenario,
      id: 'held-out-butterfly',
      file,
      looks: juno,
      technique: {
        ...technique,
        period: 1.27,
        startTime: 0.11,
        kicks: [
          { top: 0, bottom: 0.22, size: 0.92 },
          { top: 0.46, bottom: 0.67, size: 1.08 },
        ],
        toeSwing: 0.2,
        waveSpeed: 4.6,
        speed: 1.22,
        depth: -0.21,
        size: 2.12,
        breathEvery: 1,
      },
      camera: {
        ...camera,
        travel: 'left',
        metresPerPixel: 1.1 * camera.metresPerPixel,
        surfaceRow: camera.surfaceRow + 70,
      },
      trouble: { bubbles: 4 },
    },
  };
}

/**
 * Where only a filter or a coarser coding makes a clip hard, the clean clip is coded again: the same swim at the same
 * instants, without drawing it for minutes.
 */
async function codedAgain(clean: string, clip: FollowClip, file: string): Promise<void> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const { filter, crf } = clip.scenario.trouble ?? {};
  await execa(tool.path, [
    ...['-y', '-v', 'error', '-i', clean, ...(filter ? ['-vf', filter] : [])],
    ...['-c:v', 'libx264', '-preset', 'medium', '-crf', String(crf ?? 21), '-bf', '3', '-g', '120'],
    ...['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709', '-color_range', 'tv'],
    ...['-pix_fmt', 'yuv420p', '-threads', '1', file],
  ]);
}

const onlyCoded: ReadonlySet<FollowClip['hardship']> = new Set(['blur', 'low-contrast', 'compression']);

/** Draws a clip with its truth, or finds it drawn before. Takes minutes each. */
export async function madeFollowClip(
  clip: FollowClip,
): Promise<{ readonly file: string; readonly truth: Truth }> {
  const folder = `${cache}${clip.name}/`;
  const truthFile = `${folder}truth.json`;
  const file = `${folder}${clip.scenario.file}`;
  if (!existsSync(truthFile)) {
    mkdirSync(folder, { recursive: true });
    if (onlyCoded.has(clip.hardship)) {
      const plain = followClips().find(({ swim, hardship }) => swim === clip.swim && hardship === 'clean');
      if (!plain) throw new Error('no clean clip');
      const clean = await madeFollowClip(plain);
      await codedAgain(clean.file, clip, file);
      writeFileSync(truthFile, JSON.stringify({ ...clean.truth, clip: clip.scenario.file }));
      return { file, truth: truthSchema.parse(JSON.parse(readFileSync(truthFile, 'utf8'))) };
    }
    const made = await makeClip(clip.scenario, folder.slice(0, -1));
    writeFileSync(`${truthFile}.draft`, JSON.stringify(makeTruth(clip.scenario, made)));
    renameSync(`${truthFile}.draft`, truthFile);
  }
  return { file, truth: truthSchema.parse(JSON.parse(readFileSync(truthFile, 'utf8'))) };
}
