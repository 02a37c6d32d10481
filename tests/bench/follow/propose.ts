import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { execa } from 'execa';
import type { EventKind } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { CameraRun } from '#core/swim-file/swim-schema';
import { findMediaTool } from '#electron/media/find-media-tool';
import { cameraMoves } from '../../../shared-core/follow/camera-moves';
import type { WholePicture } from '#core/follow/whole-picture';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import type { Truth } from '../../../sample-clips/truth-schema';
import { type FollowClip, followClips, keptFile, madeFollowClip } from './follow-clips';
import { readFilm, trueAt } from './follow-coach';
import {
  carriedPixels,
  type ProposalScore,
  proposalScores,
  proposedKinds,
  type ReadingErrors,
  readingErrors,
} from './follow-scores';
import type { SeenCamera } from './followed-swim';
import { coachPixels, type KeptFollowed, keptFollowed } from './kept-followed';
import { openVision } from './open-vision';
import { proposalLine } from './proposal-line';
import { writeSection } from '../write-section';

/**
 * Proposes moments from followed points on the eighteen drawn clips and holds them against the drawn moments: found,
 * missed, of nothing, how far off, how honest the spread. What is followed is kept in .cache/follow beside the clip;
 * `again` as an argument follows anew (minutes each). Run with tsx.
 */
const again = process.argv.includes('again');

const followedClip = (clip: FollowClip): Promise<KeptFollowed> =>
  keptFollowed(clip.name, again, clip.scenario, clip.swim, async () => {
    const { file, truth } = await madeFollowClip(clip);
    const { width, height } = clip.scenario.camera;
    return { film: await readFilm(file, width, height), truth };
  });

/** Every so many seconds the background is looked at, on pictures half as large, as in the app. */
const lookSeconds = 0.05;

/** What the app's own code sees of the camera on a clip, and one still thing that a drawn coach marks on two frames. */
async function seenCamera(clip: FollowClip, { postures }: KeptFollowed): Promise<SeenCamera> {
  const file = keptFile(clip.name, 'camera.json');
  const { truth, file: film } = await madeFollowClip(clip);
  const ends = [postures[0]?.frame ?? 0, postures.at(-1)?.frame ?? 0] as const;
  const run =
    !again && existsSync(file)
      ? (JSON.parse(readFileSync(file, 'utf8')) as CameraRun | null)
      : await lookedAt(clip, film, truth);
  writeFileSync(file, JSON.stringify(run));
  const random = seeded(11);
  const [early, late] = [ends[0] + 10, ends[1] - 10];
  const at = 0.5 * (clip.scenario.camera.width + carriedPixels(truth, early) + carriedPixels(truth, late));
  const marks = [early, late].map((frame) => ({
    frame,
    x: at - carriedPixels(truth, frame) + coachPixels * normal(random),
    y: 780 + coachPixels * normal(random),
  }));
  return { path: run ? [run] : [], still: [marks] };
}

async function lookedAt(clip: FollowClip, film: string, truth: Truth): Promise<CameraRun | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const [width, height] = [clip.scenario.camera.width / 2, clip.scenario.camera.height / 2];
  const { stdout } = await execa(
    tool.path,
    [
      '-v',
      'error',
      '-i',
      film,
      '-vf',
      `scale=${width}:${height}:flags=area`,
      '-f',
      'rawvideo',
      '-pix_fmt',
      'gray',
      '-',
    ],
    { encoding: 'buffer', maxBuffer: 4e9 },
  );
  const apart = Math.max(
    1,
    Math.round(lookSeconds / ((truth.realTimes[1] ?? 1) - (truth.realTimes[0] ?? 0))),
  );
  const wholes = truth.realTimes.flatMap((_, frame): WholePicture[] => {
    if (frame % apart !== 0 && frame !== truth.realTimes.length - 1) return [];
    const grey = new Uint8Array(stdout.subarray(frame * width * height, (frame + 1) * width * height));
    return [{ frame, step: 2, width, height, grey }];
  });
  const bodyOn = (frame: number) => landmarkNames.map((name) => trueAt(truth, frame, name));
  return cameraMoves(await openVision(), wholes, bodyOn, truth.bodyLengthMetres / truth.metresPerPixel);
}

interface Row {
  readonly clip: FollowClip;
  readonly scores: readonly ProposalScore[];
  readonly readings: ReadingErrors;
}
const rows: Row[] = [];
for (const clip of followClips()) {
  const { truth } = await madeFollowClip(clip);
  const { width, height } = clip.scenario.camera;
  const kept = await followedClip(clip);
  const { postures, followed } = kept;
  const isLookedAt = clip.hardship === 'camera-pan';
  const camera = isLookedAt ? await seenCamera(clip, kept) : undefined;
  const arms = clip.swim === 'butterfly' ? 'stroking' : 'stretched';
  rows.push({
    clip,
    scores: proposalScores(truth, width, height, arms, postures, followed, camera),
    readings: readingErrors(truth, width, height, arms, postures, followed, camera),
  });
}

function line(kind: EventKind, swim: FollowClip['swim'], coarse: boolean): readonly string[] {
  const own = rows
    .filter(({ clip }) => clip.swim === swim && (clip.hardship === 'twenty-five-a-second') === coarse)
    .flatMap(({ scores }) => scores.filter((each) => each.kind === kind));
  const row = proposalLine(`| ${kind} | ${swim} | ${coarse ? 25 : 60}`, own);
  return row ? [row] : [];
}

const table = [false, true].flatMap((coarse) =>
  (['butterfly', 'kick'] as const).flatMap((swim) =>
    proposedKinds.flatMap((kind) => line(kind, swim, coarse)),
  ),
);
const off = (value: number | null): string => (value === null ? '–' : value.toFixed(2));
writeSection('proposals', 'follow/propose.ts', [
  '## Proposed moments',
  '',
  'From the followed points of the eighteen drawn clips above, with nothing marked but what was asked; the surface line and the way of travel are set. A moment counts as found within 100 ms; later is positive. “Stated” is the root mean square of the standard deviations the proposals carry; the last column counts the moments inside ± 1.96 of it. Spreads and reaches were chosen on these same clips, so other film has to confirm them.',
  '',
  '| moment | swim | pictures a second | found | missed | of nothing | mean, ms | RMS, ms | stated, ms | inside 95 % |',
  '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
  ...table,
  '',
  'With every proposed kick accepted, and nothing else:',
  '',
  'Speed of the hips is held against what the drawn points of the same frames say in the pool. In the camera-pan clips the camera is carried along with the swimmer at nearly half the swimmer’s speed, swaying; there the background is looked at by the app’s own code (the swimmer left out where it was drawn), and one thing that stands still is marked on two frames, within 1.5 px.',
  '',
  '| clip | kick frequency off % | toe amplitude off % | speed of the hips, m/s (95 %) | drawn |',
  '| --- | --- | --- | --- | --- |',
  ...rows.map(
    ({ clip, readings: { frequency, amplitude, speed } }) =>
      `| ${clip.name} | ${off(frequency)} | ${off(amplitude)} | ${speed ? `${off(speed.value)} (${off(speed.low)} to ${off(speed.high)})` : '–'} | ${off(speed?.drawn ?? null)} |`,
  ),
]);
console.log(table.join('\n'));
