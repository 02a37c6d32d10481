import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type MadeClip, makeClip } from '../browser/harness/make-clips';

const h264 = ['-c:v', 'libx264', '-preset', 'veryfast', '-x264-params', 'keyint=12:scenecut=0:bframes=2'];
const base = { width: 320, height: 180, rate: 30, pictures: 30, extension: 'mp4', encode: h264 };
const mjpeg = ['-c:v', 'mjpeg', '-q:v', '12', '-pix_fmt', 'yuvj420p'];

/** A second of film in every container that coaches bring, small enough to be read many thousand times. */
const made: readonly MadeClip[] = [
  { ...base, name: 'fuzz-index-first', remux: { output: ['-movflags', 'faststart'] } },
  { ...base, name: 'fuzz-index-last' },
  { ...base, name: 'fuzz-fragmented', remux: { output: ['-movflags', 'frag_keyframe+empty_moov'] } },
  { ...base, name: 'fuzz-quicktime', extension: 'mov' },
  { ...base, name: 'fuzz-matroska', extension: 'mkv' },
  {
    ...base,
    name: 'fuzz-webm',
    extension: 'webm',
    encode: ['-c:v', 'libvpx', '-deadline', 'realtime', '-cpu-used', '8', '-b:v', '300k', '-g', '12'],
  },
  { ...base, name: 'fuzz-transport', extension: 'ts' },
  { ...base, name: 'fuzz-avi', extension: 'avi', encode: mjpeg },
  { ...base, name: 'fuzz-mjpeg', extension: 'mov', encode: mjpeg },
];

/** A clip to mangle, and where what tells of its pictures lies in it. */
export interface MediaClip {
  readonly name: string;
  readonly extension: string;
  readonly bytes: Uint8Array;
  readonly headFrom: number;
  readonly headBytes: number;
}

const sample = '../../sample-clips/library/swims/sample-arms-folded/arms-folded.webm';

/** The clips to mangle: one drawn sample, and those that ffmpeg makes (left out where there is none). */
export async function mediaClips(): Promise<readonly MediaClip[]> {
  const paths = [fileURLToPath(new URL(sample, import.meta.url))];
  for (const clip of made) {
    const path = await makeClip(clip);
    if (path) paths.push(path);
  }
  return paths.map((path) => {
    const bytes = readFileSync(path);
    const name = path.slice(path.lastIndexOf('/') + 1);
    const index = bytes.indexOf('moov', 0, 'latin1');
    const headFrom = index > bytes.length / 2 ? index - 4 : 0;
    return {
      name,
      extension: name.slice(name.lastIndexOf('.') + 1),
      bytes: new Uint8Array(bytes),
      headFrom,
      headBytes: Math.min(4096, bytes.length - headFrom),
    };
  });
}
