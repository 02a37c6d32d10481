import type { View } from '#core/swim-file/swim-schema';
import { useSwim } from '../open-swim/open-swim';

const lacks: Readonly<Record<Exclude<View, 'side'>, string>> = {
  front:
    'Filmed from the front: moments and counts are read. Lengths, speed, the body wave and angles against travel are not, for they run toward the camera.',
  rear: 'Filmed from behind: moments and counts are read. Lengths, speed, the body wave and angles against travel are not, for they run away from the camera.',
  below:
    'Filmed from below: moments and counts are read, and the bends of the joints of a swimmer who lies on the side. Heights, the body wave and angles against travel are not, for up and down runs toward the camera.',
  above:
    'Filmed from above: moments and counts are read, and the bends of the joints of a swimmer who lies on the side. Heights, the body wave and angles against travel are not, for up and down runs toward the camera.',
  deck: 'Filmed from the deck: moments and counts are read. What the surface bends can’t be measured: no heights, lengths or angles under water.',
};

/** Says once, at the head of the readings, what the camera's place can't give. */
export function ViewNotice() {
  const view = useSwim((swim) => swim.card.view);
  return view === 'side' ? null : <p className="view-notice">{lacks[view]}</p>;
}
