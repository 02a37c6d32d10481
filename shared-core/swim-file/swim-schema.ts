import { z } from 'zod';
import { eventKinds } from '../marks/event-kind';
import { landmarkNames } from '../marks/landmark';

/** Version written by this build. A file with a larger number was written by a newer Submark. */
export const swimFileVersion = 1;

const finite = z.number().refine(Number.isFinite, 'must be a finite number');
const whole = z.number().int();
/** Ids are made by the caller; kept to letters, digits, dash and underscore so that they are safe as folder names. */
export const idSchema = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/);
const isoInstant = z.iso.datetime();
export const isoDaySchema = z.iso.date();

/** Pixels of the shown picture, x right, y down. Points outside the picture are allowed: a toe can be out of shot. */
const picturePoint = z.strictObject({ x: finite, y: finite });
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
    factor: finite.positive().max(1000),
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
  note: z.string().max(4000),
  /** True for demo swims of an invented squad. */
  invented: z.boolean(),
});

export const sceneSchema = z.strictObject({
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
});

export const eventSchema = z.strictObject({
  id: idSchema,
  kind: z.enum(eventKinds),
  frame: whole.nonnegative(),
  /** Which hand, for hand events of one-arm drills; null means both. */
  hand: z.enum(['left', 'right']).nullable(),
  /** Which way the mouth turns, for breaths; null for every other kind. */
  breathTo: z.enum(['front', 'left', 'right']).nullable(),
  /** Metres from the wall, for distance marks; null for every other kind. */
  metres: finite.nonnegative().max(10_000).nullable(),
});

export const postureSchema = z.strictObject({
  frame: whole.nonnegative(),
  /** Marked landmarks; a name that is absent has not been laid. */
  points: z.partialRecord(z.enum(landmarkNames), picturePoint),
  /** Landmarks the coach said can't be seen on this frame. */
  hidden: z.array(z.enum(landmarkNames)).max(9),
});

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
});

export type Swim = z.infer<typeof swimSchema>;
export type Clip = z.infer<typeof clipSchema>;
export type SwimCard = z.infer<typeof cardSchema>;
export type Scene = z.infer<typeof sceneSchema>;
export type EventMark = z.infer<typeof eventSchema>;
export type Posture = z.infer<typeof postureSchema>;
export type View = (typeof views)[number];
