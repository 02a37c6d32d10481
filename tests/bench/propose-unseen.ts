import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { EventKind } from '#core/marks/event-kind';
import type { FollowedRun, Posture } from '#core/swim-file/swim-schema';
import { drawnCoach, evenLines, followAsCoach, readFilm, wholeFrames } from './follow-coach';
import { proposalScores } from './follow-scores';
import { openVision } from './open-vision';
import { proposalLine } from './proposal-line';
import { thinnedFilm, type UnseenClip, unseenClips } from './unseen-clips';
import { writeSection } from './write-section';

/**
 * Proposals held against the drawn moments on film that nothing was set on: other swims, other swimmers, 25, 30 and 240
 * pictures a second. As propose.ts: a careful coach, three body lines and four clicks a landmark a stroke. What is followed is kept
 * in .cache/follow; `again` follows anew, a name alone only that clip. Run with tsx.
 */
const [only, again] = [process.argv[2], process.argv.includes('again')];
/** As large beside the body as a pixel and a half are at 1080p. */
const coachShare = 1.5 / 1080;

interface Kept {
  readonly postures: readonly Posture[];
  readonly followed: readonly FollowedRun[];
}

async function followedClip({ name, scenario, swim, every, file, truth }: UnseenClip): Promise<Kept> {
  const kept = new URL(`../../.cache/follow/${name}/followed.json`, import.meta.url);
  if (!again && existsSync(kept)) return JSON.parse(readFileSync(kept, 'utf8')) as Kept;
  const { width, height } = scenario.camera;
  const film = thinnedFilm(await readFilm(file, width, height), every);
  const { first, last } = wholeFrames(truth, film);
  const { period, kicks } = scenario.technique;
  const stroke = swim === 'butterfly' ? period : (2 * period) / kicks.length;
  const strokes = ((truth.realTimes[last] ?? 0) - (truth.realTimes[first] ?? 0)) / stroke;
  const coach = drawnCoach(truth, coachShare * height, 7);
  const lines = evenLines(first, last, (last - first) / (3 * strokes));
  const { vision } = await openVision();
  const { postures, followed } = followAsCoach(vision, film, truth, coach, lines, Math.round(4 * strokes));
  mkdirSync(new URL('.', kept), { recursive: true });
  writeFileSync(kept, JSON.stringify({ postures, followed }));
  return { postures, followed };
}

const kinds: readonly EventKind[] = [
  'kick-top',
  'kick-bottom',
  'entry',
  'catch',
  'shoulder',
  'navel',
  'exit',
];
const rows: string[] = [];
const all = new Map<EventKind, ReturnType<typeof proposalScores>>();
const clips = await unseenClips();
for (const clip of clips.filter(({ name }) => !only || only === 'again' || only === name)) {
  const { postures, followed } = await followedClip(clip);
  const { width, height } = clip.scenario.camera;
  const arms = clip.swim === 'butterfly' ? 'stroking' : 'stretched';
  const scores = proposalScores(clip.truth, width, height, arms, postures, followed);
  for (const kind of kinds) {
    const own = scores.filter((each) => each.kind === kind);
    all.set(kind, [...(all.get(kind) ?? []), ...own]);
    const line = proposalLine(`| ${kind} | ${clip.name}`, own);
    if (line) rows.push(line);
  }
}
const together = kinds
  .map((kind) => proposalLine(`| **${kind}** | all of these`, all.get(kind) ?? []))
  .filter((row) => row !== null);
const table = [
  '| moment | clip, pictures a second | found | missed | of nothing | mean, ms | RMS, ms | stated, ms | inside 95 % |',
  '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
  ...rows,
  ...together,
];
console.log(table.join('\n'));
if (!only || only === 'again')
  writeSection('proposals-unseen', 'propose-unseen.ts', [
    '## Proposed moments on film that nothing was set on',
    '',
    'Other sample swims as they are (`30`: every second picture of 60), and another swimmer’s butterfly drawn for this alone at 25 and at 240 pictures a second; columns as above.',
    '',
    ...table,
  ]);
