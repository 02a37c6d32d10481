import { useCallback, useMemo, useRef, useState } from 'react';
import { hasCycles } from '#core/compare/pair-clock';
import { useCommandKeys } from '../ui/use-command-keys';
import { zoomAt } from '../open-swim/stage-view';
import { useElementSize } from '../ui/use-element-size';
import { PairBar } from './pair-bar';
import { pairCommands } from './pair-commands';
import { PairControls } from './pair-controls';
import { useLaidLine } from './pair-overlay';
import { PairScore } from './pair-score';
import { pairFrames, pairSides, usePair, usePairPart, usePairView } from './pair-session';
import { PairSideBar } from './pair-side-bar';
import { PairStage } from './pair-stage';
import { PairStill } from './pair-still';
import { PairTablePanel } from './pair-table-panel';
import { PairVideo } from './pair-video';
import { otherOf, type Which } from './pair-view';
import { useHomeViews } from './use-home-views';
import { usePairPlayer } from './use-pair-player';
import '../film/film-messages.css';
import '../film/steps.css';
import '../bench/bench.css';
import '../readings/readings.css';
import './pair.css';
import { pairWords } from '#core/words/pair';

interface Props {
  readonly onLeave: () => void;
  readonly onBench: (which: Which) => void;
  readonly onSwap: () => void;
  readonly onRelinked: () => void;
}

/** Two swims, reviewed together. */
export function Pair({ onLeave, onBench, onSwap, onRelinked }: Props) {
  const session = usePair();
  const boxA = useRef<HTMLDivElement>(null);
  const boxB = useRef<HTMLDivElement>(null);
  const sizes = [useElementSize(boxA), useElementSize(boxB)] as const;
  const homes = useHomeViews(sizes);
  const laid = useLaidLine();
  const showTable = usePairView((state) => state.showTable);
  const [video, setVideo] = useState(false);
  const openVideo = useCallback(() => {
    session.view.setState({ playing: false });
    setVideo(true);
  }, [session]);
  const [still, setStill] = useState(false);
  const openStill = useCallback(() => {
    session.view.setState({ playing: false });
    setStill(true);
  }, [session]);
  const cyclic = [usePairPart(0).side, usePairPart(1).side].every(hasCycles);
  usePairPlayer();

  const place = useRef({ sizes, homes });
  place.current = { sizes, homes };
  const zoom = useCallback(
    (factor: number | null) => {
      const { lead } = session.view.getState();
      const { view, document } = session.swims[lead];
      const size = place.current.sizes[lead];
      const { homes } = place.current;
      const home = homes.whole[lead];
      const now = view.getState();
      const shown =
        now.stage ?? homes.at(lead, now.shownFrame ?? now.frame, pairFrames(session)[otherOf(lead)]);
      const at = { x: size.width / 2, y: size.height / 2 };
      const { clip } = document.swim();
      const zoomed = factor === null ? null : zoomAt(shown, at, factor, clip, size, home);
      view.setState({ stage: zoomed ?? (factor !== null && homes.kept ? home : null) });
    },
    [session],
  );
  const commands = useMemo(
    () =>
      pairCommands(session, {
        cyclic: () => pairSides(session).every(hasCycles),
        zoom,
        swap: onSwap,
        exportVideo: openVideo,
        exportStill: openStill,
      }),
    [session, zoom, onSwap, openVideo, openStill],
  );
  useCommandKeys(pairWords('pair'), commands);

  return (
    <div className={`bench pair${showTable ? ' with-table' : ''}`}>
      <PairBar onLeave={onLeave} onBench={onBench} onSwap={onSwap} onStill={openStill} onVideo={openVideo} />
      <main className="pair-middle">
        <div className="pair-stages">
          {([0, 1] as const).map((which) => (
            <div key={which} className="pair-column">
              <div className="pair-picture" ref={which === 0 ? boxA : boxB}>
                <PairStage
                  which={which}
                  size={sizes[which]}
                  homes={homes}
                  laid={laid}
                  onRelinked={onRelinked}
                />
              </div>
              <PairSideBar which={which} />
            </div>
          ))}
        </div>
        <PairControls cyclic={cyclic} />
        <PairScore />
      </main>
      {showTable && <PairTablePanel />}
      {still && <PairStill onClose={() => setStill(false)} />}
      {video && <PairVideo onClose={() => setVideo(false)} />}
    </div>
  );
}
