import { useCallback, useMemo, useRef } from 'react';
import { OpenSwimContext } from '../open-swim/open-swim';
import { CopyNotice } from '../film/copy-notice';
import { FilmTroubleCard } from '../film/film-trouble';
import { cardWords } from '#core/swim-file/card-words';
import { PictureCanvas } from '../stage/picture-canvas';
import type { Size } from '../open-swim/stage-view';
import { useStagePointer } from '../stage/use-stage-pointer';
import '../stage/stage.css';
import { type LaidB, PairOverlay, useShownFrame } from './pair-overlay';
import { usePair, usePairPart, usePairView } from './pair-session';
import { letterOf, otherOf, type Which } from './pair-view';
import type { HomeViews } from './use-home-views';
import { useStore } from 'zustand';
import { pairWords } from '#core/words/pair';

interface Props {
  readonly which: Which;
  readonly size: Size;
  readonly homes: HomeViews;
  readonly laid: LaidB;
  readonly onRelinked: () => void;
}

/** One swim's picture with its marks, under the session it would have on the bench. */
export function PairStage(props: Props) {
  const session = usePair();
  return (
    <OpenSwimContext value={session.swims[props.which]}>
      <Surface {...props} />
    </OpenSwimContext>
  );
}

function Surface({ which, size, homes, laid, onRelinked }: Props) {
  const session = usePair();
  const surface = useRef<HTMLDivElement>(null);
  const spaceHeld = useRef(false);
  const { swim } = usePairPart(which);
  const zoomed = useStore(session.swims[which].view, (state) => state.stage);
  const shown = useShownFrame(which);
  const mirrored = usePairView((state) => state.mirrored[which]);
  const leads = usePairView((state) => state.lead === which);
  const { width, height } = swim.clip;
  const picture = useMemo(() => ({ width, height }), [width, height]);
  const otherShown = useShownFrame(otherOf(which));
  const viewAt = useCallback(
    (frame: number) => zoomed ?? homes.at(which, frame, otherShown),
    [zoomed, homes, which, otherShown],
  );
  const view = viewAt(shown);
  const place = { view, size, picture, home: homes.whole[which], kept: homes.kept };
  useStagePointer(surface, place, spaceHeld);
  const letter = letterOf(which);
  return (
    <section
      className={`stage pair-stage${leads ? ' leads' : ''}`}
      aria-label={pairWords('stage', { letter, title: cardWords(swim.card).title })}
      data-side={letter}
      data-shown-frame={shown}
      onPointerDownCapture={() => session.view.setState({ lead: which })}
    >
      <div className="stage-surface" ref={surface}>
        {size.width > 0 && <PictureCanvas viewAt={viewAt} size={size} mirrored={mirrored} />}
        {size.width > 0 && <PairOverlay which={which} view={view} size={size} laid={laid} />}
      </div>
      <p className="pair-badge">
        <b>{letter}</b>
        {mirrored && <span>{pairWords('mirrored')}</span>}
        {which === 0 && laid.kind === 'without' && <span>{laid.words}</span>}
        {which === 0 && laid.kind === 'laid' && (
          <span>{laid.over.scaled ? pairWords('bLaidSameBody') : pairWords('bLaidBodyLength')}</span>
        )}
      </p>
      <FilmTroubleCard onRelinked={onRelinked} />
      <CopyNotice />
    </section>
  );
}
