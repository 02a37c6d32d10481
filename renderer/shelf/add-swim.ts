import { failure, type Result, success } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations';
import type { Squad, Swimmer } from '#core/swim-file/squad-schema';
import type { Swim, SwimCard } from '#core/swim-file/swim-schema';
import type { HostClient } from '../host/host-client';
import { makeId } from '../state/make-id';
import type { ClipFacts } from '../video/frame-source';
import { openFrameSource } from '../video/open-frame-source';
import { newSwim } from './new-swim';
import { thumbnailOf } from './thumbnail';

export interface Adding {
  readonly file: File;
  readonly facts: ClipFacts;
  readonly card: SwimCard;
  readonly slowdown: Swim['clip']['slowdown'];
  readonly squad: Squad;
  readonly squadRevision: string | null;
  readonly signal: AbortSignal;
  readonly onProgress: (share: number) => void;
}

/** The swimmer of the card, put into the squad when the name is new; null when no name was given. */
async function swimmerFor(host: HostClient, adding: Adding): Promise<Result<Swimmer | null>> {
  const name = adding.card.swimmerName.trim();
  const known = adding.squad.swimmers.find((each) => each.id === adding.card.swimmerId);
  if (known || name === '') return success(known ?? null);
  const swimmer: Swimmer = {
    id: makeId(),
    name,
    birthYear: null,
    bodyTable: null,
    streamlineMetres: null,
    consent: null,
    targets: [],
    invented: false,
  };
  const squad = { ...adding.squad, swimmers: [...adding.squad.swimmers, swimmer] };
  const written = await host.call('squad/write', { squad, baseRevision: adding.squadRevision });
  return written.ok ? success(swimmer) : written;
}

/** Sends a clip and makes a swim of it. When anything fails or is cancelled, nothing of it stays in the library. */
export async function addSwim(host: HostClient, adding: Adding): Promise<Result<string>> {
  const { file, facts, signal } = adding;
  const sent = await host.sendClip(file, file.name, { signal, onProgress: adding.onProgress });
  if (!sent.ok) return sent;
  const clip: ArrivedClip = sent.value;
  const drop = async (failed: Result<never>): Promise<Result<never>> => {
    await host.call('clip/discard', { clipId: clip.clipId });
    return failed;
  };
  if (signal.aborted) return drop(failure('cancelled', { name: file.name }));
  const swimmer = await swimmerFor(host, adding);
  if (!swimmer.ok) return drop(swimmer);
  const card: SwimCard = {
    ...adding.card,
    swimmerName: adding.card.swimmerName.trim(),
    swimmerId: swimmer.value?.id ?? null,
  };
  const swim = newSwim({
    id: makeId(),
    now: new Date().toISOString(),
    card,
    facts,
    slowdown: adding.slowdown,
    clip,
    originalName: file.name.slice(0, 255),
  });
  const created = await host.call('swim/create', { swim, clipId: clip.clipId });
  if (!created.ok) return drop(created);
  // a swim without a thumbnail is whole: only its tile is plainer
  const source = await openFrameSource({ address: host.clipAddress(swim.id) }, { signal });
  if (source.ok) {
    try {
      await host.sendThumbnail(swim.id, await thumbnailOf(source.value));
    } finally {
      source.value.close();
    }
  }
  return success(swim.id);
}
