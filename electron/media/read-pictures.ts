import { type Result, success } from '#core/host-contract/host-error';
import type { Clip } from '#core/swim-file/swim-schema';
import { openFrameReader } from './frame-reader';
import type { WantedClip } from './known-film';

export interface ReadPicture {
  readonly frame: number;
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opaque, row by row; valid until the next picture comes. */
  readonly rgba: Uint8Array;
}

/** Reads chosen frames of a clip, at the size the stage shows, and hands each over in order of time. */
export async function readPictures(
  file: string,
  clip: WantedClip & Pick<Clip, 'width' | 'height'>,
  frames: readonly number[],
  hand: (picture: ReadPicture) => void,
  signal?: AbortSignal,
): Promise<Result<null>> {
  const wanted = [...new Set(frames)].sort((a, b) => a - b);
  if (wanted.length === 0) return success(null);
  const { width, height } = clip;
  const reader = await openFrameReader({
    file,
    clip,
    frames: wanted,
    filters: () => [`scale=${width}:${height}`, 'format=rgba'],
    bytes: width * height * 4,
    ...(signal ? { signal } : {}),
  });
  if (!reader.ok) return reader;
  try {
    for (const frame of wanted) {
      const read = await reader.value.read(frame);
      if (!read.ok) return read;
      hand({ frame, width, height, rgba: read.value });
    }
    return success(null);
  } finally {
    await reader.value.close();
  }
}
