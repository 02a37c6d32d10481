import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { sameStarts } from '#core/timeline/same-starts';
import type { HostClient } from '../host/host-client';
import type { FrameSource, OpenFrameSource, ShownAs } from './frame-source';
import { type Mending, mendedSource } from './mended-source';
import { openFrameSource } from './open-frame-source';

/** A swim's film, and whether its pictures come from the clip itself or from its working copy. */
export interface SwimFilm {
  readonly source: FrameSource;
  readonly from: 'clip' | 'copy';
}

interface Options {
  readonly signal: AbortSignal;
  readonly budgetBytes?: number;
  readonly open?: OpenFrameSource;
  /** Told how many frames this window could not decode so far, each time there is one more. */
  readonly onBroken?: (frames: number) => void;
}

/**
 * Opens a swim's film for any screen: its working copy when there is one, else the clip itself. Either way frame n is the
 * frame the marks call n, or it is refused: `clip-changed` when the frames are not those the marks were made on,
 * `unsupported-codec` when this window can't decode the clip and there is no copy yet (the bench makes one).
 */
export async function openSwimFilm(
  host: Pick<HostClient, 'call' | 'clipAddress' | 'copyAddress'>,
  swim: Swim,
  options: Options,
): Promise<Result<SwimFilm>> {
  const copy = await openCopy(host, swim, options);
  if (copy.ok || copy.error.code === 'cancelled') return copy;
  return openClipItself(host, swim, options);
}

/** The working copy; `not-found` when there is none that can be used. */
export async function openCopy(
  host: Pick<HostClient, 'call' | 'copyAddress'>,
  { id, clip }: Swim,
  { open = openFrameSource, onBroken, ...options }: Options,
): Promise<Result<SwimFilm>> {
  const look = await host.call('copy/look', { id }, options.signal);
  if (!look.ok) return look;
  if (look.value.state !== 'ready') return failure('not-found', { name: 'The working copy' });
  const standsFor: ShownAs = {
    width: clip.width,
    height: clip.height,
    table: tableFromRecord(clip.frameTimes),
  };
  const source = await open({ address: host.copyAddress(id) }, { ...options, standsFor });
  if (!source.ok) return source;
  return success({ source: mendedSource(source.value, { ask: stillsOf(host, id), onBroken }), from: 'copy' });
}

/** The clip itself, whether or not there is a working copy. */
export async function openClipItself(
  host: Pick<HostClient, 'call' | 'clipAddress'>,
  { id, clip }: Swim,
  { open = openFrameSource, onBroken, ...options }: Options,
): Promise<Result<SwimFilm>> {
  // a decoder gives both fields woven into one picture, which is no frame of this swim
  if (clip.fields) return failure('unsupported-codec', { codec: clip.codec, name: clip.originalName });
  const opened = await open({ address: host.clipAddress(id), track: clip.track }, options);
  if (!opened.ok) return failure(opened.error.code, { ...opened.error.detail, name: clip.originalName });
  const { facts } = opened.value;
  const same =
    facts.width === clip.width &&
    facts.height === clip.height &&
    // half a tick: each start was rounded to the coarser clock once
    sameStarts(facts.table, tableFromRecord(clip.frameTimes), 0.5);
  if (same)
    return success({
      source: mendedSource(opened.value, { ask: stillsOf(host, id), onBroken }),
      from: 'clip',
    });
  opened.value.close();
  return failure('clip-changed', { name: clip.originalName });
}

/** One frame of a swim's clip at a time, made by the host's tools. */
const stillsOf =
  (host: Pick<HostClient, 'call'>, id: string): Mending['ask'] =>
  async (frame) => {
    const answer = await host.call('copy/stills', {
      id,
      around: { first: frame, last: frame },
      asked: frame,
    });
    return answer.ok ? success(answer.value.stills) : answer;
  };
