import type { PacketIndex } from './packet-index';

/**
 * Names coded pictures by their place in showing order, their *rank*: a name that no rounding of times can blur. Pictures
 * shown at the same time keep their decoding order.
 */
export interface ShowingOrder {
  /** −1 where there is no such picture. */
  rankOfCoded(coded: number): number;
  rankOfFrame(frame: number): number;
  /** −1 for a picture that is no frame (it lies before the film begins). */
  frameOfRank(rank: number): number;
}

export function showingOrder({ order, pictures }: Pick<PacketIndex, 'order' | 'pictures'>): ShowingOrder {
  const codedByRank = pictures.map((_, coded) => coded);
  codedByRank.sort((a, b) => (pictures[a]?.tick ?? 0) - (pictures[b]?.tick ?? 0) || a - b);
  const ranks = new Array<number>(pictures.length);
  codedByRank.forEach((coded, rank) => {
    ranks[coded] = rank;
  });
  const rankOfCoded = (coded: number): number => ranks[coded] ?? -1;
  return {
    rankOfCoded,
    rankOfFrame: (frame) => rankOfCoded(order.codedOfFrame[frame] ?? -1),
    frameOfRank: (rank) => order.frameOfCoded[codedByRank[rank] ?? -1] ?? -1,
  };
}
