import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { cameraPath } from '#core/follow/camera-path';
import { landmarkNames } from '#core/marks/landmark';
import { emptyScene } from '#core/swim-file/swim-schema';
import { findMediaTool } from '#electron/media/find-media-tool';
import { cameraMoves, cameraStood, fewLooks } from '../../../shared-core/follow/camera-moves';
import type { WholePicture } from '#core/follow/whole-picture';
import { type Scenario, scenarios } from '../../../sample-clips/scenario';
import { type Truth, truthSchema } from '../../../sample-clips/truth-schema';
import { aSwim } from '../../shared-core/swim-file/a-swim';
import { trueAt } from './follow-coach';
import { openVision } from './open-vision';
import { writeSection } from '../write-section';

/**
 * Whether the app's look at the background tells what a camera did: two drawn swims whose camera stood, as they are and moved by
 * an ffmpeg filter whose pan, turn and zoom are known, and the other samples. Takes some minutes. Run with tsx.
 */
const root = fileURLToPath(new URL('../../../', import.meta.url));
const lookSeconds = 0.05;

interface Case {
  readonly what: string;
  readonly filter: string | null;
  /** By the last picture, of a clip of so many: pixels (of the drawn picture), degrees, percent. */
  readonly made: (pictures: number) => string;
}
const fixed = (value: number, digits = 1): string => value.toFixed(digits);
const cases: readonly Case[] = [
  { what: 'stood', filter: null, made: () => '0' },
  {
    what: 'slow pan, 0.05 px a picture',
    filter: "crop=1200:720:'0.05*n':0",
    made: (n) => `${fixed(0.05 * n)} px`,
  },
  { what: 'pan, 0.2 px a picture', filter: "crop=1200:720:'0.2*n':0", made: (n) => `${fixed(0.2 * n)} px` },
  { what: 'tilt, 0.1 px a picture', filter: "crop=1280:680:0:'0.1*n'", made: (n) => `${fixed(0.1 * n)} px` },
  { what: 'pan, 1 px a picture', filter: "crop=900:720:'1*n':0", made: (n) => `${fixed(n)} px` },
  { what: 'shaken by 4 px', filter: "crop=1270:710:'5+4*sin(n/3)':'5+3*cos(n/4)'", made: () => 'to and fro' },
  { what: 'turned', filter: "rotate='0.0002*n'", made: (n) => `${fixed((0.0002 * n * 180) / Math.PI)}°` },
  {
    what: 'turned a little',
    filter: "rotate='0.00004*n'",
    made: (n) => `${fixed((0.00004 * n * 180) / Math.PI)}°`,
  },
  {
    what: 'zoomed',
    filter: "scale=w='2*trunc(640*(1+0.0004*n))':h=-2:eval=frame,crop=1280:720",
    made: (n) => `${fixed(0.04 * n)} %`,
  },
  {
    what: 'zoomed a little',
    filter: "scale=w='2*trunc(640*(1+0.00008*n))':h=-2:eval=frame,crop=1280:720",
    made: (n) => `${fixed(0.008 * n)} %`,
  },
];

async function pictures(
  file: string,
  { width, height }: Scenario['camera'],
  filter: string | null,
): Promise<(frame: number) => WholePicture | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('needs ffmpeg');
  const step = Math.max(1, Math.round(width / 960));
  const size = { width: Math.floor(width / step), height: Math.floor(height / step) };
  const scale = `scale=${size.width}:${size.height}:flags=area`;
  const args = ['-v', 'error', '-i', file, '-vf', [...(filter ? [filter] : []), scale].join(',')];
  const { stdout } = await execa(tool.path, [...args, '-f', 'rawvideo', '-pix_fmt', 'gray', '-'], {
    encoding: 'buffer',
    maxBuffer: 4e9,
  });
  const bytes = size.width * size.height;
  return (frame) =>
    (frame + 1) * bytes > stdout.length
      ? null
      : {
          frame,
          step,
          ...size,
          grey: new Uint8Array(stdout.subarray(frame * bytes, (frame + 1) * bytes)),
        };
}

const vision = await openVision();
async function row(scenario: Scenario, { what, filter, made }: Case): Promise<string> {
  const truth: Truth = truthSchema.parse(
    JSON.parse(readFileSync(`${root}sample-clips/truth/${scenario.id}.json`, 'utf8')),
  );
  const folder = `${root}sample-clips/library/swims/${scenario.id}`;
  if (!readdirSync(folder).includes(scenario.file)) throw new Error(`no clip of ${scenario.id}`);
  const picture = await pictures(`${folder}/${scenario.file}`, scenario.camera, filter);
  const last = truth.realTimes.length - 1;
  const some = (frames: readonly number[]): WholePicture[] =>
    frames.flatMap((frame) => picture(Math.round(frame)) ?? []);
  const evenly = (count: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => (last * i) / (count - 1));
  const bodyOn = (frame: number) => landmarkNames.map((name) => trueAt(truth, frame, name));
  const length = truth.bodyLengthMetres / truth.metresPerPixel;
  const stood = cameraStood(vision, some(evenly(fewLooks)), bodyOn, length);
  const apart = Math.max(1, Math.round(lookSeconds * scenario.captureRate));
  const run = stood ?? cameraMoves(vision, some(evenly(Math.ceil(last / apart) + 1)), bodyOn, length);
  const base = aSwim();
  const { state } = cameraPath(
    {
      cameraPath: run ? [run] : [],
      scene: emptyScene,
      clip: { ...base.clip, width: scenario.camera.width, height: scenario.camera.height },
      postures: [],
    },
    1,
  );
  const words = { stands: 'stood', loose: 'moved', carried: 'swayed', turned: 'turned or zoomed' }[state];
  const turned = run?.turned;
  return `| ${scenario.id.replace('sample-', '')} | ${what} | ${made(last)} | ${run ? words : 'can’t tell'}${stood ? ', at five pictures' : ''} | ${turned ? fixed(turned.degrees, 2) : '–'} | ${turned ? fixed(100 * turned.zoom, 2) : '–'} |`;
}

const rows: string[] = [];
for (const scenario of scenarios) {
  const whole = ['sample-butterfly-together', 'sample-streamline-kick'].includes(scenario.id);
  for (const each of whole ? cases : cases.slice(0, 1)) {
    const carried = scenario.camera.carried !== null && scenario.camera.carried !== undefined;
    // the phone's pictures are stored turned, and its camera was carried
    if (carried) continue;
    rows.push(await row(scenario, each));
    console.log(rows.at(-1));
  }
}
writeSection('camera', 'follow/camera.ts', [
  '## What the camera did',
  '',
  'Drawn clips whose camera stood, moved by a filter. “Told” is what readings take it for; the last columns are the most that the picture was seen to turn and to grow or shrink. From 0.6 degrees or 2 % on it counts as turned or zoomed.',
  '',
  '| clip | camera | by the last picture | told | turned, degrees | zoomed, % |',
  '| --- | --- | --- | --- | --- | --- |',
  ...rows,
]);
