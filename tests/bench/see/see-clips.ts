import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { scenarios } from '../../../sample-clips/scenario';
import { type Truth, truthSchema } from '../../../sample-clips/truth-schema';
import { followClips, madeFollowClip } from '../follow/follow-clips';
import { unseenClips } from '../follow/unseen-clips';

/** A drawn clip whose swimmer is to be seen without a mark. */
export interface SeeClip {
  readonly name: string;
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly truth: Truth;
  readonly arms: 'stroking' | 'stretched';
  /** Settings were chosen on it. */
  readonly setOn: boolean;
  /** Nobody swims in the part of the picture that is looked at. */
  readonly empty: boolean;
  /** An ffmpeg filter on the pictures. */
  readonly filter: string | null;
}

const root = fileURLToPath(new URL('../../../', import.meta.url));
const setOn = ['sample-butterfly-together', 'sample-streamline-kick'];

/**
 * The sample clips; another swimmer's butterfly from another camera at 25 a second, and one seen from the other side, larger and with
 * bubbles, which nothing was ever set on; and the floor of a pool under the swimmer, where nobody is.
 */
export async function seeClips(): Promise<readonly SeeClip[]> {
  const samples = scenarios
    .filter(({ id }) => id.startsWith('sample-') && !id.includes('month'))
    .flatMap((scenario): SeeClip[] => {
      const { id, file, camera, card } = scenario;
      const own = {
        name: id.replace('sample-', ''),
        file: `${root}sample-clips/library/swims/${id}/${file}`,
        width: camera.width,
        height: camera.height,
        truth: truthSchema.parse(JSON.parse(readFileSync(`${root}sample-clips/truth/${id}.json`, 'utf8'))),
        arms: card.arms === 'stroking' ? 'stroking' : 'stretched',
        setOn: setOn.includes(id),
        empty: false,
        filter: null,
      } as const;
      const floor = { width: 640, height: 300, filter: 'crop=640:300:500:420' };
      return id === setOn[0] ? [own, { ...own, ...floor, name: 'floor of that pool', empty: true }] : [own];
    });
  const other = (await unseenClips()).find(({ name }) => name === 'unseen-butterfly-25');
  const heldOut = followClips().find(({ hardship }) => hardship === 'held-out');
  const drawn = [
    ...(other ? [other] : []),
    ...(heldOut ? [{ ...heldOut, ...(await madeFollowClip(heldOut)) }] : []),
  ].map(
    ({ name, file, scenario, truth }): SeeClip => ({
      name,
      file,
      width: scenario.camera.width,
      height: scenario.camera.height,
      truth,
      arms: 'stroking',
      setOn: false,
      empty: false,
      filter: null,
    }),
  );
  return [...samples, ...drawn];
}
