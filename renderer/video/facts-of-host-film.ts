import type { HostFilm } from '#core/host-contract/operations/media-operations';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { isEvenRate, usualRate } from '#core/timeline/picture-order';
import type { ClipFacts } from './frame-source';

/** The facts of a film that the host's tools have read, because this window can't. */
export function factsOfHostFilm(film: HostFilm): ClipFacts {
  const table = tableFromRecord(film.frameTimes);
  return {
    container: film.container,
    codec: film.codec,
    width: film.width,
    height: film.height,
    rotation: film.rotation,
    table,
    evenRate: isEvenRate(table),
    rate: usualRate(table),
    taggedSlowdown: film.taggedSlowdown,
    lostPictures: film.lostPictures,
    decodable: false,
    track: film.track,
    tracks: film.tracks,
    fields: film.fields,
    mayBeInterlaced: film.fields,
  };
}
