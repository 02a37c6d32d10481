import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';

const sample = fileURLToPath(
  new URL('../../sample-clips/library/swims/sample-streamline-kick/swim.json', import.meta.url),
);

/** Repeats of a trial, made up: the known length behind the speed, and how low the head is. In the order swum. */
const made = [
  { head: 'low', metres: 3.06 },
  { head: 'high', metres: 2.71 },
  { head: 'high', metres: 2.74 },
  { head: 'low', metres: 3.01 },
  { head: 'low', metres: 3.09 },
  { head: 'high', metres: 2.66 },
  { head: 'low', metres: 3.03 },
  { head: 'high', metres: 2.7 },
] as const;

/** Lays eight marked repeats of one swimmer into a library's folder, without film: head low and high in a mixed order. */
export async function layTrialSwims(library: string): Promise<readonly string[]> {
  const parsed = parseSwim(await readFile(sample, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  const swim = parsed.value;
  const scale = swim.scene.scale;
  if (!scale) throw new Error('the sample has no known length');
  return Promise.all(
    made.map(async ({ head, metres }, i) => {
      const id = `trial-repeat-${i + 1}`;
      const folder = path.join(library, 'swims', id);
      await mkdir(folder, { recursive: true });
      const down = head === 'low' ? 9 : -9;
      const text = serialiseSwim({
        ...swim,
        id,
        clip: { ...swim.clip, place: { kind: 'inside', name: 'none.mp4' } },
        card: {
          ...swim.card,
          drill: 'streamlined kick',
          note: `repeat ${i + 1}`,
          conditions: { ...swim.card.conditions, head },
        },
        scene: { ...swim.scene, scale: { ...scale, metres } },
        postures: swim.postures.map((posture) => {
          const { ear } = posture.points;
          return ear
            ? { ...posture, points: { ...posture.points, ear: { x: ear.x, y: ear.y + down } } }
            : posture;
        }),
      });
      await writeFile(path.join(folder, 'swim.json'), text);
      return id;
    }),
  );
}
