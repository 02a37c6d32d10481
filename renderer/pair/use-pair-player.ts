import { useEffect } from 'react';
import { placesOf } from '#core/compare/pair-clock';
import { pairRun } from '#core/compare/pair-run';
import { createPairPlayer } from './pair-player';
import { type PairSession, pairFrames, pairSides, usePair, usePairView } from './pair-session';
import { goToPlace, readMode, showFrames } from './pair-steps';
import { pairWords } from '#core/words/pair';

/** Plays while the pair is set to play; from the beginning when it stands at the end. */
export function usePairPlayer(): void {
  const session = usePair();
  const playing = usePairView((state) => state.playing);
  useEffect(() => (playing ? startPlaying(session) : undefined), [playing, session]);
}

function startPlaying(session: PairSession): () => void {
  const sides = pairSides(session);
  const { mode, lead, pace } = session.view.getState();
  const standing = () => ({ frames: pairFrames(session), lead });
  if (pairRun(sides, mode, standing()).seconds <= 0) {
    if (mode === 'free') showFrames(session, [sides[0].first, sides[1].first]);
    else goToPlace(session, placesOf(sides, readMode(mode)).from);
    session.view.setState({ playing: true });
  }
  const benches = session.swims;
  // the stages then take pictures as they are held, and ask for none of their own
  for (const { view } of benches) view.setState({ playing: true });
  const player = createPairPlayer({
    sides,
    mode,
    standing: standing(),
    sources: benches.map(({ film }) => film.getState().source),
    pace,
    onFrames: (frames) =>
      benches.forEach(({ view }, index) => {
        const frame = frames[index];
        if (frame !== undefined) view.setState({ frame, towards: 1 });
      }),
    onStop: (reason) => {
      session.view.setState({ playing: false });
      if (reason === 'lost') session.say(pairWords('nextPictureCant'));
    },
  });
  const watching = [
    session.view.subscribe((state, before) => {
      if (state.pace !== before.pace) player.setPace(state.pace);
    }),
    // a press on either stage stops both
    ...benches.map(({ view }) =>
      view.subscribe((state, before) => {
        if (before.playing && !state.playing) session.view.setState({ playing: false });
      }),
    ),
  ];
  return () => {
    for (const unsubscribe of watching) unsubscribe();
    player.close();
    for (const { view } of benches) view.setState({ playing: false });
  };
}
