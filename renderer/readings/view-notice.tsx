import type { View } from '#core/swim-file/swim-schema';
import { useSwim } from '../open-swim/open-swim';
import { readingsWords } from '#core/words/readings';

const lacks: Readonly<Record<Exclude<View, 'side'>, string>> = {
  front: readingsWords('filmedFromFront'),
  rear: readingsWords('filmedFromBehind'),
  below: readingsWords('filmedFromBelow'),
  above: readingsWords('filmedFromAbove'),
  deck: readingsWords('filmedFromDeck'),
};

/** Says once, at the head of the readings, what the camera's place can't give. */
export function ViewNotice() {
  const view = useSwim((swim) => swim.card.view);
  return view === 'side' ? null : <p className="view-notice">{lacks[view]}</p>;
}
