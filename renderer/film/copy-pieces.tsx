import type { FrameRange } from '#core/timeline/frame-range';
import { clockOf, type Copying, useSwim, useView } from '../open-swim/open-swim';
import { filmWords } from '#core/words/film';

/** Which part of the film is ready while its copy is made, and where the coach is. */
export function CopyPieces({ pieces }: Pick<Copying, 'pieces'>) {
  const frames = useSwim((swim) => clockOf(swim).table.starts.length);
  const frame = useView((state) => state.frame);
  const percent = (count: number): string => `${(100 * count) / frames}%`;
  return (
    <div className="copy-pieces-strip" aria-hidden="true">
      {joined(pieces).map(({ first, last }) => (
        <span key={first} style={{ left: percent(first), width: percent(last - first + 1) }} />
      ))}
      <i style={{ left: percent(frame) }} />
    </div>
  );
}

/** The same in words: whether the coach stands in what is ready. */
export function WhatIsReady({ why, pieces }: Pick<Copying, 'why' | 'pieces'>) {
  const frame = useView((state) => state.frame);
  const here = joined(pieces).find(({ first, last }) => frame >= first && frame <= last);
  return (
    <>
      <br />
      {here ? filmWords('readyHereFrames', { first: here.first + 1, last: here.last + 1 }) : elsewhere[why]}
    </>
  );
}

const elsewhere: Readonly<Record<Copying['why'], string>> = {
  needed: filmWords('notReadyHere'),
  slow: filmWords('notReadyHereYet'),
};

/** Pieces that follow one another as one. */
function joined(pieces: readonly FrameRange[]): FrameRange[] {
  const whole: FrameRange[] = [];
  for (const piece of [...pieces].sort((a, b) => a.first - b.first)) {
    const before = whole.at(-1);
    if (before && before.last + 1 === piece.first) whole[whole.length - 1] = { ...before, last: piece.last };
    else whole.push(piece);
  }
  return whole;
}
