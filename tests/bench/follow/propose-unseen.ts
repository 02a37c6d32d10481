import type { EventKind } from '#core/marks/event-kind';
import { readFilm } from './follow-coach';
import { proposalScores, proposedKinds } from './follow-scores';
import { type KeptFollowed, keptFollowed } from './kept-followed';
import { proposalLine } from './proposal-line';
import { thinnedFilm, type UnseenClip, unseenClips } from './unseen-clips';
import { writeSection } from '../write-section';

/**
 * Proposals held against the drawn moments on film that nothing was set on: other swims, other swimmers, 25, 30 and 240
 * pictures a second. As propose.ts: a careful coach, three body lines and four clicks a landmark a stroke. What is followed is kept
 * in .cache/follow; `again` follows anew, a name alone only that clip. Run with tsx.
 */
const [only, again] = [process.argv[2], process.argv.includes('again')];

const followedClip = ({ name, scenario, swim, every, file, truth }: UnseenClip): Promise<KeptFollowed> =>
  keptFollowed(name, again, scenario, swim, async () => {
    const { width, height } = scenario.camera;
    return { film: thinnedFilm(await readFilm(file, width, height), every), truth };
  });

const rows: string[] = [];
const all = new Map<EventKind, ReturnType<typeof proposalScores>>();
const clips = await unseenClips();
for (const clip of clips.filter(({ name }) => !only || only === 'again' || only === name)) {
  const { postures, followed } = await followedClip(clip);
  const { width, height } = clip.scenario.camera;
  const arms = clip.swim === 'butterfly' ? 'stroking' : 'stretched';
  const scores = proposalScores(clip.truth, width, height, arms, postures, followed);
  for (const kind of proposedKinds) {
    const own = scores.filter((each) => each.kind === kind);
    all.set(kind, [...(all.get(kind) ?? []), ...own]);
    const line = proposalLine(`| ${kind} | ${clip.name}`, own);
    if (line) rows.push(line);
  }
}
const together = proposedKinds
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
  writeSection('proposals-unseen', 'follow/propose-unseen.ts', [
    '## Proposed moments on film that nothing was set on',
    '',
    'Other sample swims as they are (`30`: every second picture of 60), and another swimmer’s butterfly drawn for this alone at 25 and at 240 pictures a second; columns as above.',
    '',
    ...table,
  ]);
