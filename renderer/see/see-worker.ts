import { followSwimmer, type SwimmerFollower } from '#core/see/follow-swimmer';
import { layStretches, type TimedSighting } from '#core/see/lay-seen';
import type { FromSeer, Glance, SeeFiles, ToSeer } from './see-message';
import { type OpenedNetworks, openNetworks } from './open-networks';

const say = (message: FromSeer): void => self.postMessage(message);

let opened: OpenedNetworks | null = null;
let follower: SwimmerFollower | null = null;
let sightings: (TimedSighting & { readonly frame: number })[] = [];

async function bytesAt(address: string): Promise<Uint8Array> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`a file for seeing is not there (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}

async function open(files: SeeFiles): Promise<OpenedNetworks> {
  // the runtime asks here where its program lies: by itself it would look beside this worker
  Object.assign(self, { Module: { locateFile: () => files.program } });
  const [landmarks, detector] = await Promise.all([bytesAt(files.landmarks), bytesAt(files.detector)]);
  return openNetworks({ runtime: files.runtime, landmarks, detector });
}

async function answer(message: ToSeer): Promise<void> {
  if (message.kind === 'open') {
    opened = await open(message.files);
    say({ kind: 'opened', runsOn: opened.runsOn });
    return;
  }
  if (!opened) throw new Error('nothing can be seen before the networks are loaded');
  const { id } = message;
  if (message.kind === 'begin') {
    follower = followSwimmer(opened.networks, message.chosen);
    sightings = [];
    say({ kind: 'begun', id });
  } else if (message.kind === 'look') {
    if (!follower) throw new Error('no swim was begun');
    const { frame, time, picture } = message;
    const look = await follower.look(picture, time);
    if (look.kind === 'seen') sightings.push({ frame, time, body: look.body });
    const glance: Glance =
      look.kind === 'several'
        ? { kind: 'several', squares: look.found.map(({ square }) => square) }
        : { kind: look.kind };
    say({ kind: 'looked', id, glance });
  } else {
    const laid = layStretches(sightings);
    say({
      kind: 'laid',
      id,
      frames: sightings.flatMap(({ frame }, i) => {
        const points = laid[i];
        return points ? [{ frame, points }] : [];
      }),
    });
  }
}

self.onmessage = (event: MessageEvent<ToSeer>) => {
  answer(event.data).catch((problem: unknown) => say({ kind: 'failed', reason: String(problem) }));
};
