import { failure, type Result, success } from '#core/host-contract/host-error';
import { type ArrivedClip, arrivedClipSchema } from '#core/host-contract/operations/clip-operations';
import type { Swim, SwimCard } from '#core/swim-file/swim-schema';
import { enrolSwimmer } from '../card/write-swimmer';
import { followJob } from '../host/follow-job';
import type { HostClient } from '../host/host-client';
import { makeId } from '../host/make-id';
import type { ClipFacts } from '../video/frame-source';
import { type ClipToAdd, nameOf } from './clip-to-add';
import { newSwim } from './new-swim';
import { sendClip } from './send-clip';

export interface Adding {
  readonly adding: ClipToAdd;
  readonly facts: ClipFacts;
  readonly card: SwimCard;
  readonly slowdown: Swim['clip']['slowdown'];
  /** May still be on its way: it is waited for when the swim is made. */
  readonly thumbnail: Promise<Blob | null>;
  readonly signal: AbortSignal;
  /** Share of the bytes sent, 0 to 1; not called for a clip that stays where it lies. */
  readonly onProgress: (share: number) => void;
}

async function arrive(
  host: HostClient,
  { adding, signal, onProgress }: Adding,
): Promise<Result<ArrivedClip>> {
  if (adding.kind === 'file') return sendClip(host, adding.file, { signal, onProgress });
  if (!adding.copied) return success(adding.clip);
  const started = await host.call('clip/copy', { clipId: adding.clip.clipId });
  if (!started.ok) return started;
  return followJob(host, started.value.jobId, {
    result: arrivedClipSchema,
    signal,
    onProgress: (share) => onProgress(share ?? 0),
  });
}

/**
 * Sends a clip and makes a swim of it; gives the swim as it was created. When anything fails or is cancelled, nothing
 * of what was sent stays in the library; a referred clip is kept in hand, so that the coach can try again.
 */
export async function addSwim(host: HostClient, given: Adding): Promise<Result<Swim>> {
  const { adding, facts, signal } = given;
  const name = nameOf(adding);
  const arrived = await arrive(host, given);
  if (!arrived.ok) return arrived;
  const clip = arrived.value;
  const drop = async (failed: Result<never>): Promise<Result<never>> => {
    if (adding.kind === 'file') await host.call('clip/discard', { clipId: clip.clipId });
    return failed;
  };
  if (signal.aborted) return drop(failure('cancelled', { name }));
  const swimmer = await enrolSwimmer(host, given.card.swimmerName, makeId);
  if (!swimmer.ok) return drop(swimmer);
  if (signal.aborted) return drop(failure('cancelled', { name }));
  const card: SwimCard = {
    ...given.card,
    swimmerName: swimmer.value?.name ?? '',
    swimmerId: swimmer.value?.id ?? null,
  };
  const swim = newSwim({
    id: makeId(),
    now: new Date().toISOString(),
    card,
    facts,
    slowdown: given.slowdown,
    clip,
    originalName: name.slice(0, 255),
  });
  const created = await host.call('swim/create', { swim, clipId: clip.clipId });
  if (!created.ok) return drop(created);
  // a swim without a thumbnail is whole: only its tile is plainer
  const thumbnail = await given.thumbnail;
  if (thumbnail) await host.sendThumbnail(swim.id, thumbnail);
  return success(created.value.swim);
}
