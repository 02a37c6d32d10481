import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { FollowedRun, Posture } from '#core/swim-file/swim-schema';
import type { Scenario } from '../../../sample-clips/scenario';
import type { Truth } from '../../../sample-clips/truth-schema';
import { keptFile } from './follow-clips';
import { drawnCoach, evenLines, type Film, followAsCoach, wholeFrames } from './follow-coach';
import { openVision } from './open-vision';

/** A careful coach, pixels at 1080 lines, four clicks a landmark a stroke, three body lines a stroke to begin with; as in follow.ts. */
export const coachPixels = 1.5;
const clicksAStroke = 4;
const linesAStroke = 3;

export interface KeptFollowed {
  readonly postures: readonly Posture[];
  readonly followed: readonly FollowedRun[];
}

/** Kept under this name beside the clip; follow.ts keeps what its first coach had there too. */
export const followedName = 'followed.json';

/** What a careful coach has followed on a clip, kept in .cache/follow; anew when `again`. Takes minutes then. */
export async function keptFollowed(
  name: string,
  again: boolean,
  { technique, camera }: Pick<Scenario, 'technique' | 'camera'>,
  swim: 'butterfly' | 'kick',
  open: () => Promise<{ readonly film: Film; readonly truth: Truth }>,
): Promise<KeptFollowed> {
  const file = keptFile(name, followedName);
  if (!again && existsSync(file)) return JSON.parse(readFileSync(file, 'utf8')) as KeptFollowed;
  const { film, truth } = await open();
  const { first, last } = wholeFrames(truth, film);
  const stroke = swim === 'butterfly' ? technique.period : (2 * technique.period) / technique.kicks.length;
  const strokes = ((truth.realTimes[last] ?? 0) - (truth.realTimes[first] ?? 0)) / stroke;
  const coach = drawnCoach(truth, (coachPixels * camera.height) / 1080, 7);
  const lines = evenLines(first, last, (last - first) / (linesAStroke * strokes));
  const cap = Math.round(clicksAStroke * strokes);
  const { postures, followed } = followAsCoach(await openVision(), film, truth, coach, lines, cap);
  const kept: KeptFollowed = { postures, followed };
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, JSON.stringify(kept));
  return kept;
}
