import type { MadeClip } from '../../browser/harness/make-clips';

const x264 = (...more: string[]): string[] => [
  '-c:v',
  'libx264',
  '-preset',
  'veryfast',
  '-crf',
  '23',
  ...more,
];

/** The clips the stepping bench walks over. */
export const steppingClips = {
  longGroups: {
    name: 'bench-1080p60-groups-of-250',
    width: 1920,
    height: 1080,
    rate: 60,
    pictures: 900,
    extension: 'mp4',
    encode: x264('-g', '250', '-keyint_min', '250', '-sc_threshold', '0'),
  },
  slowMotion: {
    name: 'bench-1080p240',
    width: 1920,
    height: 1080,
    rate: 240,
    pictures: 960,
    extension: 'mp4',
    encode: x264('-g', '240', '-keyint_min', '240', '-sc_threshold', '0'),
  },
  ultraHigh: {
    name: 'bench-2160p30',
    width: 3840,
    height: 2160,
    rate: 30,
    pictures: 300,
    extension: 'mp4',
    encode: x264('-g', '60', '-keyint_min', '60', '-sc_threshold', '0'),
  },
  vp9: {
    name: 'bench-1080p30-vp9',
    width: 1920,
    height: 1080,
    rate: 30,
    pictures: 450,
    extension: 'webm',
    encode: [
      '-c:v',
      'libvpx-vp9',
      '-deadline',
      'realtime',
      '-cpu-used',
      '8',
      '-b:v',
      '6M',
      '-g',
      '120',
      '-row-mt',
      '1',
    ],
  },
} satisfies Record<string, MadeClip>;

/** A working copy that stands for one of the clips, as the app's own job makes it. */
export interface CopiedClip extends Pick<MadeClip, 'name' | 'rate' | 'pictures'> {
  readonly copyOf: MadeClip;
}

const copyOf = (clip: MadeClip, name: string): CopiedClip => ({
  ...{ name, rate: clip.rate, pictures: clip.pictures, copyOf: clip },
});

/** What the bench walks over, by the name it is called with. */
export const steppingFilms: Readonly<Record<string, MadeClip | CopiedClip>> = {
  ...steppingClips,
  longGroupsCopy: copyOf(steppingClips.longGroups, 'bench-1080p60-working-copy'),
  ultraHighCopy: copyOf(steppingClips.ultraHigh, 'bench-2160p30-working-copy'),
};
