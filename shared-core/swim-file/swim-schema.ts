import { z } from 'zod';
import { eventKinds } from '../marks/event-kind';
import { landmarkNames } from '../marks/landmark';
import { conditionTagsSchema } from './condition-tags';

/** Version written by this build. A file with a larger number was written by a newer Submark. */
export const swimFileVersion = 5;

const finite = z.number().refine(Number.isFinite, 'must be a finite number');
const whole = z.number().int();
/** Ids are made by the caller; kept to letters, digits, dash and underscore so that they are safe as folder names. */
export const idSchema = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/);
const isoInstant = z.iso.datetime();
export const isoDaySchema = z.iso.date();

/** Pixels along one side of the shown picture, or as far beside it as fifteen of the largest: no swimmer was marked farther out. */
const pixels = finite.min(-1_000_000).max(1_000_000);
/** Pixels of the shown picture, x right, y down. Points outside the picture are allowed: a toe can be out of shot. */
const picturePoint = z.strictObject({ x: pixels, y: pixels });
const pictureLine = z.strictObject({ a: picturePoint, b: picturePoint });

export const frameTimesSchema = z
  .strictObject({
    ticksPerSecond: whole.positive(),
    firstTick: whole,
    gaps: z
      .array(z.tuple([whole.nonnegative(), whole.positive()]).readonly())
      .min(1)
      .readonly(),
  })
  .refine(
    (times) => times.gaps.reduce((sum, [, count]) => sum + count, 0) <= 5_000_000,
    'more than five million frames',
  );

export const clipSchema = z.strictObject({
  /** Where the clip is: a file beside swim.json, or a path the coach chose to leave it at. */
  place: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('inside'),
      name: z.string().min(1).max(255),
    }),
    z.strictObject({
      kind: z.literal('outside'),
      path: z.string().min(1).max(4096),
    }),
  ]),
  /** Name the coach knows the file by. */
  originalName: z.string().min(1).max(255),
  /** Size in bytes and SHA-256 (hex) of the first and last 64 KiB: tells whether the clip is still the same file. */
  fingerprint: z.strictObject({
    bytes: whole.nonnegative(),
    edgesSha256: z.string().regex(/^[0-9a-f]{64}$/),
  }),
  /** Number of the video track the coach chose, from 1, as its container counts; null: its first. */
  track: whole.positive().max(10_000).nullable(),
  /** The film is interlaced and each of its fields is a picture of its own: two frames here for one coded. */
  fields: z.boolean(),
  container: z.string().max(60),
  codec: z.string().max(60),
  /** Size of the shown picture in square pixels, after rotation and pixel aspect. */
  width: whole.positive().max(65_535),
  height: whole.positive().max(65_535),
  /** Clockwise turn applied when shown. */
  rotation: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
  frameTimes: frameTimesSchema,
  /** Playback seconds per real second, and who says so. */
  slowdown: z.strictObject({
    // 100,000 pictures a second stored at one in ten seconds
    factor: finite.positive().max(1_000_000),
    source: z.enum(['file-tag', 'coach', 'assumed']),
  }),
});

export const strokes = ['butterfly', 'dolphin-kick'] as const;
export const views = ['side', 'front', 'rear', 'below', 'above', 'deck'] as const;
export const armPositions = [
  'stroking',
  'stretched',
  'overlapped',
  'folded',
  'at-sides',
  'sculling',
  'one-arm-left',
  'one-arm-right',
  'one-arm-alternating',
] as const;
export const sidesUp = ['front', 'back', 'left-side', 'right-side'] as const;
export const aids = ['fins', 'monofin', 'snorkel', 'board', 'paddles', 'pull-buoy'] as const;
export const efforts = ['easy', 'steady', 'strong', 'full'] as const;

export const cardSchema = z.strictObject({
  /** Id in the library's squad; null until the coach says who swims. */
  swimmerId: idSchema.nullable(),
  /** Name as it was when the card was filled, so that a swim alone still says who it is. */
  swimmerName: z.string().max(120),
  date: isoDaySchema,
  stroke: z.enum(strokes),
  /** Drill in the coach's own words; empty for the plain stroke. */
  drill: z.string().max(200),
  arms: z.enum(armPositions),
  sideUp: z.enum(sidesUp),
  aids: z.array(z.enum(aids)).max(6),
  effort: z.enum(efforts).nullable(),
  /** Metres swum in the repeat, when the coach says. */
  distanceMetres: finite.positive().max(10_000).nullable(),
  view: z.enum(views),
  /** Positions and conditions that trials compare. */
  conditions: conditionTagsSchema,
  note: z.string().max(4000),
  /** True for demo swims of an invented squad. */
  invented: z.boolean(),
});

const sceneSchema = z.strictObject({
  /** Way the swimmer goes in the shown picture. */
  travel: z.enum(['left', 'right']).nullable(),
  /** Two points on something level: the lane line, the floor line, the surface. */
  level: pictureLine.nullable(),
  /** Two points on the water surface. */
  surface: pictureLine.nullable(),
  /** A known length in the swimmer's plane. `metresSd`: standard deviation of the known length itself. */
  scale: z
    .strictObject({
      line: pictureLine,
      metres: finite.positive().max(200),
      metresSd: finite.nonnegative().max(10),
      preset: z.string().max(60).nullable(),
      frame: whole.nonnegative(),
    })
    .nullable(),
  /**
   * Corners of a rectangle of known sides in the swimmer's plane: start near the surface, then along, down and back
   * (`alongMetres` from the first corner to the second, `upMetres` from the second to the third).
   */
  plane: z
    .strictObject({
      corners: z.tuple([picturePoint, picturePoint, picturePoint, picturePoint]),
      alongMetres: finite.positive().max(200),
      upMetres: finite.positive().max(200),
      frame: whole.nonnegative(),
    })
    .nullable(),
  /** Lines that are straight in the pool, as seen: what the lens bends shows in them. */
  straights: z.array(z.array(picturePoint).min(3).max(200)).max(40),
  /**
   * Metres from the camera to the plane of the scale, and how much farther than that plane the swimmer is (negative:
   * nearer). Null when not measured.
   */
  camera: z.strictObject({
    metres: finite.positive().max(200).nullable(),
    fartherMetres: finite.min(-50).max(50).nullable(),
  }),
  /**
   * Things that stand still beside the swimmer, in the swimmer's plane, each marked on some frames: what ties a moving
   * camera's background to the pool.
   */
  still: z
    .array(
      z
        .array(z.strictObject({ frame: whole.nonnegative(), ...picturePoint.shape }))
        .min(1)
        .max(1000),
    )
    .max(40),
});

const eventSchema = z.strictObject({
  id: idSchema,
  kind: z.enum(eventKinds),
  frame: whole.nonnegative(),
  /** Which hand, for hand events of one-arm drills; null means both. */
  hand: z.enum(['left', 'right']).nullable(),
  /** Which way the mouth turns, for breaths; null for every other kind. */
  breathTo: z.enum(['front', 'left', 'right']).nullable(),
  /** Metres from the wall, for distance marks; null for every other kind. */
  metres: finite.nonnegative().max(10_000).nullable(),
  /** Who placed it: the coach, or the coach by accepting what was proposed from followed or seen points. */
  from: z.enum(['coach', 'proposal']),
  /**
   * Instant between frames, of an accepted proposal: frames after `frame` (negative: before) and the standard
   * deviation of the instant in real seconds. Null: somewhere within the frame.
   */
  refined: z.strictObject({ frames: finite.min(-1).max(1), sdSeconds: finite.positive().max(10) }).nullable(),
});

const postureSchema = z.strictObject({
  frame: whole.nonnegative(),
  /** Marked landmarks; a name that is absent has not been laid. */
  points: z.partialRecord(z.enum(landmarkNames), picturePoint),
  /** Landmarks the coach said can't be seen on this frame. */
  hidden: z.array(z.enum(landmarkNames)).max(9),
});

/** A landmark followed by the machine over consecutive frames from `frame` on: x, y, confidence from 0 to 1. */
const followedRunSchema = z.strictObject({
  landmark: z.enum(landmarkNames),
  frame: whole.nonnegative(),
  points: z
    .array(z.tuple([pixels, pixels, finite.min(0).max(1)]))
    .min(1)
    .max(1_000_000),
});

/**
 * A landmark as the machine saw it, without a mark, over consecutive frames from `frame` on: x, y, and the standard deviation of
 * one axis, pixels, as measured on film whose points are known. Nobody has looked at it.
 */
const seenRunSchema = z.strictObject({
  landmark: z.enum(landmarkNames),
  frame: whole.nonnegative(),
  points: z
    .array(z.tuple([finite, finite, finite.positive()]))
    .min(1)
    .max(1_000_000),
});

/**
 * What lies behind the swimmer, as it moved in the picture over some frames: what the camera did. Rows of the picture
 * are kept apart, since near and far things move by different lengths when a camera is carried. No rows: the camera
 * stood still.
 */
const cameraRunSchema = z
  .strictObject({
    /** Frames looked at, ascending. */
    frames: z.array(whole.nonnegative()).min(2).max(1_000_000),
    /** Pixels from the top of the picture. */
    rows: z.array(pixels).max(16),
    /** Row by row, frame by frame: how far the background has moved there since the first of the frames, pixels. */
    moved: z.array(z.array(z.tuple([pixels, pixels])).max(1_000_000)).max(16),
    /** The most that the picture turned, degrees, and grew or shrank, as a share, against the first frame. Null: not known. */
    turned: z.strictObject({ degrees: finite.nonnegative(), zoom: finite.nonnegative() }).nullable(),
  })
  .refine(
    ({ frames, rows, moved }) =>
      moved.length === rows.length &&
      moved.every((row) => row.length === frames.length) &&
      frames.every((frame, i) => i === 0 || frame > (frames[i - 1] as number)),
    'rows and frames of the background do not agree',
  );

/** A proposed event that the coach rejected; it is not proposed again at that frame. */
const dismissedSchema = z.strictObject({ kind: z.enum(eventKinds), frame: whole.nonnegative() });

export const swimSchema = z.strictObject({
  format: z.literal('submark-swim'),
  version: z.literal(swimFileVersion),
  id: idSchema,
  createdAt: isoInstant,
  changedAt: isoInstant,
  clip: clipSchema,
  card: cardSchema,
  scene: sceneSchema,
  events: z.array(eventSchema).max(100_000),
  postures: z.array(postureSchema).max(1_000_000),
  /** Machine-followed points, apart from the coach's own in `postures`, which they never replace. */
  followed: z.array(followedRunSchema).max(100_000),
  /** Points the machine saw without a mark, apart from marked and followed ones, which go before them. */
  seen: z.array(seenRunSchema).max(100_000),
  /** What the camera did while points were followed. */
  cameraPath: z.array(cameraRunSchema).max(100_000),
  dismissed: z.array(dismissedSchema).max(100_000),
});

export type Swim = z.infer<typeof swimSchema>;
export type Clip = z.infer<typeof clipSchema>;
export type SwimCard = z.infer<typeof cardSchema>;
export type Scene = z.infer<typeof sceneSchema>;
export type EventMark = z.infer<typeof eventSchema>;
export type FollowedRun = z.infer<typeof followedRunSchema>;
export type SeenRun = z.infer<typeof seenRunSchema>;
export type CameraRun = z.infer<typeof cameraRunSchema>;
export type Posture = z.infer<typeof postureSchema>;
export type View = (typeof views)[number];

/** A scene in which nothing is set. */
export const emptyScene: Scene = {
  travel: null,
  level: null,
  surface: null,
  scale: null,
  plane: null,
  straights: [],
  camera: { metres: null, fartherMetres: null },
  still: [],
};

/** What an event has besides its id, kind and frame when the coach simply marks it. */
export const plainMark = {
  hand: null,
  breathTo: null,
  metres: null,
  from: 'coach',
  refined: null,
} as const satisfies Partial<EventMark>;
