import { z } from 'zod';
import { bundleOperations } from './operations/bundle-operations';
import { clipOperations } from './operations/clip-operations';
import { clashOperations } from './operations/clash-operations';
import { coachOperations } from './operations/coach-operations';
import { copyOperations } from './operations/copy-operations';
import { handoutOperations } from './operations/handout-operations';
import { jobOperations } from './operations/job-operations';
import { libraryOperations } from './operations/library-operations';
import { manySwimsOperations } from './operations/many-swims-operations';
import { memoryOperations } from './operations/memory-operations';
import { mediaOperations } from './operations/media-operations';
import { placeOperations } from './operations/place-operations';
import { practiceOperations } from './operations/practice-operations';
import { squadOperations } from './operations/squad-operations';
import { swimOperations } from './operations/swim-operations';
import { trialOperations } from './operations/trial-operations';
import { upkeepOperations } from './operations/upkeep-operations';
import { videoOperations } from './operations/video-operations';
import { windowOperations } from './operations/window-operations';

/**
 * The host contract: what the window may ask of the host. Both transports carry exactly this list, and check
 * input and output against it. Each area lists its own.
 */
export const operations = {
  ...libraryOperations,
  ...swimOperations,
  ...manySwimsOperations,
  ...copyOperations,
  ...clipOperations,
  ...squadOperations,
  ...clashOperations,
  ...coachOperations,
  ...mediaOperations,
  ...memoryOperations,
  ...bundleOperations,
  ...handoutOperations,
  ...jobOperations,
  ...placeOperations,
  ...practiceOperations,
  ...trialOperations,
  ...upkeepOperations,
  ...videoOperations,
  ...windowOperations,
} as const;

export type OperationName = keyof typeof operations;
export type OperationInput<Name extends OperationName> = z.infer<(typeof operations)[Name]['input']>;
export type OperationOutput<Name extends OperationName> = z.infer<(typeof operations)[Name]['output']>;

/**
 * Byte streams that ride beside the operations, on the same origin in both transports:
 * GET  /stream/clip/{swimId}        the clip, with Range
 * GET  /stream/arrived/{clipId}     an arrived clip that is not a swim yet, with Range
 * GET  /stream/copy/{swimId}        its working copy, with Range
 * GET  /stream/copy/{swimId}/{n}    the piece of a copy being made that begins with frame n, with Range
 * GET  /stream/thumbnail/{swimId}   JPEG
 * PUT  /stream/thumbnail/{swimId}   JPEG
 * PUT  /stream/arrive?name=…&as=…   a clip's bytes; answers Result<ArrivedClip>; `as` names it to `clip/arriving`
 * PUT  /stream/bundle               a swim bundle's bytes; answers Result<ArrivedBundle>
 * PUT  /stream/export?name=…        an exported file's bytes; answers Result<{ name, path }>; never overwrites
 */
export const streamPaths = {
  clip: (swimId: string): string => `/stream/clip/${swimId}`,
  copy: (swimId: string): string => `/stream/copy/${swimId}`,
  copyPiece: (swimId: string, first: number): string => `/stream/copy/${swimId}/${first}`,
  arrived: (clipId: string): string => `/stream/arrived/${clipId}`,
  thumbnail: (swimId: string): string => `/stream/thumbnail/${swimId}`,
  arrive: (name: string, arrivalId: string): string =>
    `/stream/arrive?name=${encodeURIComponent(name)}&as=${encodeURIComponent(arrivalId)}`,
  bundle: '/stream/bundle',
  /** The file that has the first of these letters. */
  letters: (words: string): string => `/stream/letters?for=${encodeURIComponent(words)}`,
  export: (name: string): string => `/stream/export?name=${encodeURIComponent(name)}`,
} as const;

export const exportedSchema = z.strictObject({
  name: z.string(),
  path: z.string(),
});
