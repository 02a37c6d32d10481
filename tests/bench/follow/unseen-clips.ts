import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeClip } from '../../../sample-clips/make-clip';
import { makeTruth } from '../../../sample-clips/make-truth';
import { type Scenario, scenarios } from '../../../sample-clips/scenario';
import { juno } from '../../../sample-clips/squad-looks';
import { type Truth, truthSchema } from '../../../sample-clips/truth-schema';
import type { Film } from './follow-coach';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** A clip on which nothing of following or proposing was ever set. */
export interface UnseenClip {
  readonly name: string;
  readonly swim: 'butterfly' | 'kick';
  readonly scenario: Scenario;
  /** Every so many pictures are taken. */
  readonly every: number;
  readonly file: string;
  readonly truth: Truth;
}

const named = (id: string): Scenario => {
  const found = scenarios.find((each) => each.id === id);
  if (!found) throw new Error(`no sample ${id}`);
  return found;
};
const readTruth = (file: string): Truth => truthSchema.parse(JSON.parse(readFileSync(file, 'utf8')));

/** A sample clip as it is, or with only every second of its pictures. */
function sample(id: string, swim: UnseenClip['swim'], every: number): UnseenClip {
  const scenario = named(id);
  const truth = readTruth(`${root}sample-clips/truth/${id}.json`);
  return {
    name: `${id.replace('sample-', '')}-${scenario.captureRate / every}`,
    swim,
    scenario,
    every,
    file: `${root}sample-clips/library/swims/${id}/${scenario.file}`,
    truth: every === 1 ? truth : thinned(truth, every),
  };
}

function thinned(truth: Truth, every: number): Truth {
  const kept = <T>(all: readonly T[]): T[] => all.filter((_, i) => i % every === 0);
  return {
    ...truth,
    frameTimes: { ...truth.frameTimes, starts: kept(truth.frameTimes.starts) },
    realTimes: kept(truth.realTimes),
    points: kept(truth.points),
  };
}

export const thinnedFilm = (film: Film, every: number): Film => ({
  ...film,
  pictures: film.pictures.filter((_, i) => i % every === 0),
});

/** A clip drawn for this alone, kept beside the others. */
async function drawn(name: string, scenario: Scenario): Promise<UnseenClip> {
  const folder = `${root}.cache/follow/${name}`;
  const truthFile = `${folder}/truth.json`;
  if (!existsSync(truthFile)) {
    mkdirSync(folder, { recursive: true });
    const made = await makeClip(scenario, folder);
    writeFileSync(truthFile, JSON.stringify(makeTruth(scenario, made)));
  }
  const file = `${folder}/${scenario.file}`;
  return { name, swim: 'butterfly', scenario, every: 1, file, truth: readTruth(truthFile) };
}

/** Samples other than the two that following was set on, and another swimmer's butterfly at 25 and at 240 a second. */
export async function unseenClips(): Promise<readonly UnseenClip[]> {
  const late = named('sample-butterfly-late-kick');
  const other: Scenario = {
    ...late,
    looks: juno,
    shape: 'plain',
    technique: { ...late.technique, period: 1.21, startTime: 0.07, toeSwing: 0.21, speed: 1.31, size: 2.05 },
    camera: {
      ...late.camera,
      width: 960,
      height: 540,
      metresPerPixel: (late.camera.metresPerPixel * 4) / 3,
      surfaceRow: Math.round(0.75 * late.camera.surfaceRow),
    },
  };
  const at = (rate: number, seconds: number): Promise<UnseenClip> =>
    drawn(`unseen-butterfly-${rate}`, {
      ...other,
      id: `unseen-butterfly-${rate}`,
      file: `unseen-butterfly-${rate}.mp4`,
      captureRate: rate,
      storedRate: rate,
      pictures: Math.round(rate * seconds),
    });
  return [
    sample('sample-butterfly-late-kick', 'butterfly', 1),
    sample('sample-butterfly-late-kick', 'butterfly', 2),
    await at(25, 3.2),
    await at(240, 1.7),
    sample('sample-kick-on-back', 'kick', 1),
    sample('sample-kick-on-back', 'kick', 2),
    sample('sample-fins-slow-motion', 'kick', 1),
  ];
}
