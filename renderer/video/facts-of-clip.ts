import type { Clip } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { isEvenRate, usualRate } from '#core/timeline/picture-order';
import type { ClipFacts } from './frame-source';

/** What a swim's file remembers of its clip, where the clip itself can't be opened in this window. */
export function factsOfClip(clip: Clip): ClipFacts {
  const { container, codec, width, height, rotation, fields } = clip;
  const table = tableFromRecord(clip.frameTimes);
  const track = clip.track ?? 1;
  return {
    ...{ container, codec, width, height, rotation, fields, table, track },
    evenRate: isEvenRate(table),
    rate: usualRate(table),
    taggedSlowdown: null,
    decodable: false,
    tracks: [{ number: track, codec, width, height }],
    mayBeInterlaced: fields,
  };
}
