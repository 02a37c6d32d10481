import { useStore } from 'zustand';
import { localFrameInterval } from '#core/timeline/clip-clock';
import { clockOf, useOpenSwim, useSwim } from '../open-swim/open-swim';
import { openRoute } from '../ui/use-route';
import { KeySheetButton } from '../ui/key-sheet-button';
import { useTip } from '../ui/use-tip';
import { cardWords } from '#core/swim-file/card-words';
import { goTo } from '../open-swim/stepping';
import { SaveState } from './save-state';
import { benchWords } from '#core/words/bench';

interface Props {
  readonly onLeave: () => void;
  readonly onCard: () => void;
  readonly onStill: () => void;
  readonly onVideo: () => void;
  readonly onExport: () => void;
}

/** Which swim this is, whether it is safe, and the few things done to it as a whole. */
export function BenchBar({ onLeave, onCard, onStill, onVideo, onExport }: Props) {
  const tip = useTip();
  const session = useOpenSwim();
  const card = useSwim((swim) => swim.card);
  const clock = useSwim(clockOf);
  const undoName = useStore(session.document.store, (state) => state.undoName);
  const redoName = useStore(session.document.store, (state) => state.redoName);
  const words = cardWords(card);
  const middle = Math.floor(clock.table.starts.length / 2);
  const rate = Math.round(1 / localFrameInterval(clock, middle));
  const back = (way: 'undo' | 'redo') => (): void => {
    const step = session.document[way]();
    if (step?.frame !== null && step?.frame !== undefined) goTo(session, step.frame);
  };
  return (
    <header className="bench-bar">
      <button type="button" onClick={onLeave} title={benchWords('backAllSwims')}>
        {benchWords('shelf')}
      </button>
      <h1 title={[words.title, ...words.facts].join(' · ')}>
        <strong>{words.title}</strong> <small>{[...words.facts, `${rate}/s`].join(' · ')}</small>
        {card.invented && <em className="invented">{benchWords('invented')}</em>}
      </h1>
      <button type="button" onClick={onCard} title={benchWords('whoSwimsWhat')}>
        {benchWords('card')}
      </button>
      <SaveState />
      <button
        type="button"
        onClick={back('undo')}
        disabled={undoName === null}
        title={undoName ? tip('undo', benchWords('undo', { undoName })) : benchWords('nothingUndo')}
      >
        {benchWords('undo2')}
      </button>
      <button
        type="button"
        onClick={back('redo')}
        disabled={redoName === null}
        title={redoName ? tip('redo', benchWords('redo', { redoName })) : benchWords('nothingRedo')}
      >
        {benchWords('redo2')}
      </button>
      <button
        type="button"
        onClick={() => openRoute({ screen: 'pair', ids: [session.document.swim().id] })}
        title={tip('pair', benchWords('seeSwimBeside'))}
      >
        {benchWords('pair')}
      </button>
      <button type="button" onClick={onStill} title={tip('still', benchWords('savePictureIts'))}>
        {benchWords('still')}
      </button>
      <button type="button" onClick={onVideo} title={tip('video', benchWords('saveStretchSwim'))}>
        {benchWords('video')}
      </button>
      <button type="button" onClick={onExport} title={tip('export', benchWords('savePicturesData'))}>
        {benchWords('export')}
      </button>
      <KeySheetButton />
    </header>
  );
}
