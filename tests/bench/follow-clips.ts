import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { enlarged, type Hardship, hardships, hardVariant } from '../../sample-clips/hard-variant';
import { makeClip } from '../../sample-clips/make-clip';
import { makeTruth } from '../../sample-clips/make-truth';
import { type Scenario, scenarios } from '../../sample-clips/scenario';
import { type Truth, truthSchema } from '../../sample-clips/truth-schema';

const cache = fileURLToPath(new URL('../../.cache/follow/', import.meta.url));

export interface FollowClip {
  readonly name: string;
  readonly swim: 'butterfly' | 'kick';
  readonly hardship: Hardship | 'clean';
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
  return swims.flatMap(([swim, scenario]) =>
    (['clean', ...hardships] as const).map((hardship) => ({
      name: `${swim}-${hardship}`,
      swim,
      hardship,
      scenario: hardship === 'clean' ? scenario : hardVariant(scenario, hardship),
    })),
  );
}

/** Draws a clip with its truth, or finds it drawn before. Takes minutes each. */
export async function madeFollowClip(
  clip: FollowClip,
): Promise<{ readonly file: string; readonly truth: Truth }> {
  const folder = `${cache}${clip.name}/`;
  const truthFile = `${folder}truth.json`;
  const file = `${folder}${clip.scenario.file}`;
  if (!existsSync(truthFile)) {
    mkdirSync(folder, { recursive: true });
    const made = await makeClip(clip.scenario, folder.slice(0, -1));
    writeFileSync(`${truthFile}.draft`, JSON.stringify(makeTruth(clip.scenario, made)));
    renameSync(`${truthFile}.draft`, truthFile);
  }
  return { file, truth: truthSchema.parse(JSON.parse(readFileSync(truthFile, 'utf8'))) };
}
