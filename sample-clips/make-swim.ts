import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { noTags } from '#core/swim-file/condition-tags';
import { type Squad, squadFileVersion, type Swimmer } from '#core/swim-file/squad-schema';
import { serialiseSwim } from '#core/swim-file/swim-file';
import {
  emptyScene,
  type EventMark,
  plainMark,
  type Posture,
  type Scene,
  type Swim,
  swimFileVersion,
} from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { MadeClip } from './make-clip';
import { normal, seeded } from './model/seeded';
import type { Scenario } from './scenario';
import type { Truth } from './truth-schema';

/**
 * Marking jitter laid on the truth, standard deviations: 6 ms for events before they fall on the nearest frame, 1.2 px
 * for landmarks, 0.8 px for the scene. Our own figures for a careful coach, no source.
 */
export const jitter = { eventSeconds: 0.006, landmarkPixels: 1.2, scenePixels: 0.8 } as const;

const two = (value: number): number => Number(value.toFixed(2));
const postureEvents = new Set(['entry', 'catch', 'shoulder', 'exit', 'kick-top', 'kick-bottom']);

async function fingerprint(file: string): Promise<Swim['clip']['fingerprint']> {
  const bytes = await readFile(file);
  const edge = 64 * 1024;
  const hash = createHash('sha256').update(bytes.subarray(0, edge));
  hash.update(bytes.subarray(Math.max(0, bytes.length - edge)));
  return { bytes: bytes.length, edgesSha256: hash.digest('hex') };
}

function nearestFrame(times: readonly number[], time: number): number {
  let best = 0;
  times.forEach((each, frame) => {
    if (Math.abs(each - time) < Math.abs((times[best] ?? 0) - time)) best = frame;
  });
  return best;
}

/** Writes a sample's swim.json: marks from the truth plus stated jitter, never from reading code. */
export async function writeSwim(
  folder: string,
  scenario: Scenario,
  clip: MadeClip,
  truth: Truth,
): Promise<void> {
  const random = seeded(createHash('sha256').update(scenario.id).digest().readUInt32LE(0));
  const noise = (sd: number): number => sd * normal(random);
  const until = scenario.marked * (truth.realTimes.at(-1) ?? 0);
  const events: EventMark[] = truth.events
    .filter((each) => each.time <= until)
    .map((each, i) => ({
      id: `${each.kind}-${i + 1}`,
      kind: each.kind,
      frame: nearestFrame(truth.realTimes, each.time + noise(jitter.eventSeconds)),
      ...plainMark,
      breathTo: each.kind === 'breath' ? 'front' : null,
    }));
  const { camera } = scenario;
  const between =
    scenario.lineEvery > 0
      ? truth.realTimes.map((_, frame) => frame).filter((frame) => frame % scenario.lineEvery === 0)
      : [];
  const frames = [
    ...new Set([
      ...events.filter((each) => postureEvents.has(each.kind)).map((each) => each.frame),
      ...between,
    ]),
  ];
  const inPicture = ({ x, y }: { x: number; y: number }): boolean =>
    x >= 0 && x <= camera.width && y >= 0 && y <= camera.height;
  const postures: Posture[] = frames
    .sort((a, b) => a - b)
    .map((frame) => {
      const points: Partial<Record<LandmarkName, { x: number; y: number }>> = {};
      const hidden: LandmarkName[] = [];
      landmarkNames.forEach((name, i) => {
        const point = {
          x: two((truth.points[frame]?.[2 * i] ?? 0) + noise(jitter.landmarkPixels)),
          y: two((truth.points[frame]?.[2 * i + 1] ?? 0) + noise(jitter.landmarkPixels)),
        };
        // folded arms are seen end-on, and what is out of the picture can't be marked
        const endOn = scenario.technique.arms === 'folded' && (name === 'wrist' || name === 'fingertip');
        if (endOn || !inPicture(point)) hidden.push(name);
        else points[name] = point;
      });
      return { frame, points, hidden };
    });
  const spot = (x: number, y: number): { x: number; y: number } => ({
    x: two(x + noise(jitter.scenePixels)),
    y: two(y + noise(jitter.scenePixels)),
  });
  const line = ({ a, b }: Truth['level']): Truth['level'] => ({ a: spot(a.x, a.y), b: spot(b.x, b.y) });
  const scaleRow = camera.height * 0.7;
  const metres = 3;
  const start = 0.2 * camera.width;
  const scene: Scene =
    scenario.marked === 0
      ? emptyScene
      : {
          ...emptyScene,
          travel: truth.travel,
          level: line(truth.level),
          surface: line(truth.surface),
          scale: scenario.withScale
            ? {
                line: { a: spot(start, scaleRow), b: spot(start + metres / camera.metresPerPixel, scaleRow) },
                metres,
                metresSd: 0.01,
                preset: null,
                frame: 0,
              }
            : null,
        };
  const { tags = [], depth = null, ...card } = scenario.card;
  const stamp = `${card.date}T16:30:00Z`;
  const swim: Swim = {
    format: 'submark-swim',
    version: swimFileVersion,
    id: scenario.id,
    createdAt: stamp,
    changedAt: stamp,
    clip: {
      place: { kind: 'inside', name: scenario.file },
      originalName: scenario.file,
      fingerprint: await fingerprint(clip.file),
      track: null,
      fields: false,
      container: scenario.shape === 'vp9' ? 'WebM' : 'MP4',
      codec: scenario.shape === 'vp9' ? 'vp9' : 'avc',
      width: camera.width,
      height: camera.height,
      rotation: scenario.shape === 'phone' ? 90 : 0,
      frameTimes: recordFromTable(clip.table),
      slowdown: {
        factor: truth.slowdown,
        source: scenario.shape === 'slow-motion' ? 'file-tag' : 'coach',
      },
    },
    card: {
      ...card,
      aids: [...card.aids],
      note: card.note ?? '',
      view: 'side',
      conditions: { ...noTags, depth, free: [...tags] },
      invented: true,
    },
    scene,
    events,
    postures,
    followed: [],
    // the drawn camera stood, and where it did not nobody has looked
    seen: [],
    cameraPath:
      camera.carried || postures.length < 2
        ? []
        : [{ frames: [0, scenario.pictures - 1], rows: [], moved: [], turned: null }],
    dismissed: [],
  };
  await writeFile(`${folder}/swim.json`, serialiseSwim(swim));
}

/** The invented squad; consent is recorded so that the samples can be exported without being asked. */
export async function writeSquad(file: string): Promise<void> {
  const consent = { givenOn: '2026-04-01', givenBy: 'Invented guardian', note: 'Invented, for the samples' };
  const swimmer = (
    id: string,
    name: string,
    birthYear: number,
    bodyTable: 'female' | 'male',
    streamlineMetres: number,
    strokes: readonly [low: number, high: number],
  ): Swimmer => ({
    id,
    name,
    birthYear,
    bodyTable,
    streamlineMetres,
    consent,
    // strokes a length: made up, as a coach would set them for one swimmer
    targets: [{ reading: 'stroke-count', low: strokes[0], high: strokes[1], from: '2026-05-01' }],
    invented: true,
  });
  const squad: Squad = {
    format: 'submark-squad',
    version: squadFileVersion,
    swimmers: [
      {
        ...swimmer('pip', 'Pip', 2010, 'female', 2.3, [9, 11]),
        targets: [
          { reading: 'kick1-top-to-entry', low: -40, high: 40, from: null },
          { reading: 'kick2-bottom-to-exit', low: -120, high: 0, from: null },
          { reading: 'stroke-count', low: 9, high: 11, from: '2026-05-01' },
        ],
      },
      swimmer('juno', 'Juno', 2008, 'female', 2.3, [8, 10]),
      swimmer('ansel', 'Ansel', 2009, 'male', 2.3, [8, 9]),
    ],
  };
  await writeFile(file, `${JSON.stringify(squad, null, 2)}\n`);
}
