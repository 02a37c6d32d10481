import { z } from 'zod';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { mayBeInterlacedAvc } from '#core/timeline/avc-interlaced';
import { type TimeBase, timeBaseOf } from './probe-frame-times';
import { type MediaRun, runMediaTool } from './run-media-tool';

/** A film track as ffprobe lists it, before any picture is looked at. */
export interface ProbedTrack {
  readonly codec: string;
  /** Whether ffmpeg has a name for its coding; else `codec` is the container's own name for it. */
  readonly isKnown: boolean;
  /** How many pictures the container promises; null where it does not. */
  readonly promised: number | null;
  readonly codedWidth: number;
  readonly codedHeight: number;
  /** Shown size in square pixels, after rotation and pixel aspect. */
  readonly width: number;
  readonly height: number;
  /** Clockwise turn applied when shown. */
  readonly rotation: 0 | 90 | 180 | 270;
  readonly base: TimeBase;
  /** Colours as the file tags them, by ffmpeg's names; null where it does not. */
  readonly colours: string | null;
  /** Whether brightness uses the whole range, as some phones write it. */
  readonly fullRange: boolean;
  readonly seconds: number | null;
  /** Parameter sets of H.264 that may be coded as fields; null for anything else. */
  readonly fieldSets: Uint8Array | null;
}

export interface ProbedTracks {
  readonly container: string;
  readonly tracks: readonly ProbedTrack[];
  /** Tags of the file and of its film tracks, by key. */
  readonly tags: Readonly<Record<string, string>>;
}

/** Most pixels along a side that a swim's file holds. */
const mostPixels = 65_535;

const tagsSchema = z.record(z.string(), z.string()).optional();
const answerSchema = z.object({
  streams: z
    .array(
      z.object({
        codec_name: z.string().optional(),
        codec_tag_string: z.string().optional(),
        nb_frames: z.string().optional(),
        width: z.number().optional(),
        height: z.number().optional(),
        sample_aspect_ratio: z.string().optional(),
        time_base: z.string().optional(),
        color_space: z.string().optional(),
        color_range: z.string().optional(),
        extradata: z.string().optional(),
        tags: tagsSchema,
        side_data_list: z.array(z.object({ rotation: z.number().optional() })).optional(),
      }),
    )
    .default([]),
  format: z
    .object({ format_name: z.string().optional(), duration: z.string().optional(), tags: tagsSchema })
    .default({}),
});

/** Names by ffprobe's own name of a format; the first that the list holds. */
const containers: readonly (readonly [string, string])[] = [
  ['mov', 'MP4'],
  ['matroska', 'Matroska'],
  ['avi', 'AVI'],
  ['mpegts', 'MPEG-TS'],
  ['mpeg', 'MPEG-PS'],
  ['asf', 'ASF'],
  ['flv', 'FLV'],
  ['mxf', 'MXF'],
  ['dv', 'DV'],
  ['ogg', 'Ogg'],
];

/** The file's film tracks in its own order; covers and thumbnails are left out. Only headers are read. */
export async function probeTracks(file: string, options: MediaRun = {}): Promise<Result<ProbedTracks>> {
  const stream =
    'stream=codec_name,codec_tag_string,nb_frames,width,height,sample_aspect_ratio,time_base,color_space,color_range,extradata';
  const more = 'stream_tags:stream_side_data=rotation:format=format_name,duration:format_tags';
  const run = await runMediaTool(
    'ffprobe',
    // "file:" keeps a name such as "http:x" or "-i" from being read as an address or an option
    [
      '-v',
      'error',
      '-select_streams',
      'V',
      // bytes as a listing in hexadecimals
      '-show_data',
      '-show_entries',
      `${stream}:${more}`,
      '-of',
      'json',
      '-i',
      `file:${file}`,
    ],
    options,
  );
  if (!run.ok) return run;
  const { streams, format } = answerSchema.parse(JSON.parse(run.value));
  const seconds = Number(format.duration);
  const tracks = streams.flatMap((each): ProbedTrack[] => {
    const base = timeBaseOf(each.time_base);
    if (!base || !each.width || !each.height) return [];
    const known = each.codec_name === 'unknown' ? null : (each.codec_name ?? null);
    const rotation = turnOf(each.side_data_list?.find((data) => data.rotation !== undefined)?.rotation ?? 0);
    const [across, up] = aspectOf(each.sample_aspect_ratio);
    // the longer way round: pixels are widened or heightened, never thrown away
    const upright = [
      across > up ? Math.round((each.width * across) / up) : each.width,
      across < up ? Math.round((each.height * up) / across) : each.height,
    ] as const;
    const [width, height] = rotation % 180 === 0 ? upright : ([upright[1], upright[0]] as const);
    // more than a swim can keep: what a damaged header says of its size
    if (Math.max(width, height) > mostPixels || Math.min(width, height) < 1) return [];
    return [
      {
        codec: known ?? each.codec_tag_string ?? 'unknown',
        isKnown: known !== null,
        promised: Number(each.nb_frames) || null,
        codedWidth: each.width,
        codedHeight: each.height,
        width,
        height,
        rotation,
        base,
        colours: each.color_space === 'unknown' ? null : (each.color_space ?? null),
        fullRange: each.color_range === 'pc',
        seconds: seconds > 0 ? seconds : null,
        fieldSets: each.codec_name === 'h264' ? fieldSetsOf(each.extradata) : null,
      },
    ];
  });
  if (tracks.length === 0) return failure('no-video-track');
  const names = format.format_name?.split(',') ?? [];
  return success({
    container: containers.find(([name]) => names.includes(name))?.[1] ?? names[0] ?? 'unknown',
    tracks,
    tags: Object.assign({}, format.tags, ...streams.map((each) => each.tags)),
  });
}

/** Parameter sets as ffprobe lists their bytes: an offset, pairs of bytes, then letters. */
function fieldSetsOf(listing: string | undefined): Uint8Array | null {
  const pairs = [...(listing ?? '').matchAll(/^[0-9a-f]{8}: ((?:[0-9a-f]{2,4} )+)/gm)].map(([, hex]) => hex);
  const sets = Buffer.from(pairs.join('').replaceAll(' ', ''), 'hex');
  return mayBeInterlacedAvc(sets) ? sets : null;
}

/** ffprobe's rotation is counter-clockwise; ours is the clockwise turn that shows the film upright. */
function turnOf(rotation: number): ProbedTrack['rotation'] {
  const turn = (((Math.round(-rotation / 90) * 90) % 360) + 360) % 360;
  return turn === 90 || turn === 180 || turn === 270 ? turn : 0;
}

function aspectOf(text: string | undefined): readonly [number, number] {
  const found = /^(\d+):(\d+)$/.exec(text ?? '');
  const [across, up] = [Number(found?.[1]), Number(found?.[2])];
  return across > 0 && up > 0 ? [across, up] : [1, 1];
}
