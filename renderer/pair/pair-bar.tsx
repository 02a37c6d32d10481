import { useStore } from 'zustand';
import type { LayPoint } from '#core/compare/lay-body-line';
import { KeySheetButton } from '../ui/key-sheet-button';
import { KeepInViewButton } from '../stage/keep-in-view-button';
import { useTip } from '../ui/use-tip';
import { cardWords } from '#core/swim-file/card-words';
import { usePair, usePairPart, usePairView } from './pair-session';
import { letterOf, type Which } from './pair-view';
import { pairWords } from '#core/words/pair';

interface Props {
  readonly onLeave: () => void;
  readonly onBench: (which: Which) => void;
  readonly onSwap: () => void;
  readonly onStill: () => void;
  readonly onVideo: () => void;
}

const lays: readonly { readonly at: LayPoint | null; readonly words: string }[] = [
  { at: null, words: 'no' },
  { at: 'hip', words: pairWords('atHip') },
  { at: 'shoulder', words: pairWords('atShoulder') },
];

/** Which two swims these are, and how their pictures are brought together. */
export function PairBar({ onLeave, onBench, onSwap, onStill, onVideo }: Props) {
  const tip = useTip();
  const session = usePair();
  const sameLength = usePairView((state) => state.sameLength);
  const lay = usePairView((state) => state.lay);
  const showTable = usePairView((state) => state.showTable);
  const a = usePairPart(0);
  const b = usePairPart(1);
  const takenA = useStore(session.swims[0].view, (state) => state.stage !== null);
  const takenB = useStore(session.swims[1].view, (state) => state.stage !== null);
  const known = a.context.bodyLength !== null && b.context.bodyLength !== null;
  return (
    <header className="bench-bar pair-bar">
      <button type="button" onClick={onLeave} title={pairWords('backAllSwims')}>
        {pairWords('shelf')}
      </button>
      <h1>
        <SwimName which={0} onBench={onBench} />
        <button
          type="button"
          className="pair-swap"
          onClick={onSwap}
          title={tip('swap', pairWords('bChangePlaces'))}
        >
          ⇄<span className="unseen">{pairWords('bChangePlaces')}</span>
        </button>
        <SwimName which={1} onBench={onBench} />
      </h1>
      <KeepInViewButton swims={session.swims} taken={takenA || takenB} />
      <button
        type="button"
        aria-pressed={sameLength}
        disabled={!known}
        onClick={() => session.view.setState({ sameLength: !sameLength })}
        title={known ? tip('same-length', pairWords('showBothBodies')) : pairWords('needsStretchedBody')}
      >
        {pairWords('sameLength')}
      </button>
      <label className="pair-lay">
        {pairWords('b')}
        <select
          value={lay ?? ''}
          title={tip('lay', pairWords('bsBodyLinePicture'))}
          onChange={(change) =>
            session.view.setState({ lay: lays.find(({ at }) => at === change.target.value)?.at ?? null })
          }
        >
          {lays.map(({ at, words }) => (
            <option key={words} value={at ?? ''}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        aria-pressed={showTable}
        onClick={() => session.view.setState({ showTable: !showTable })}
        title={tip('differences', pairWords('showOrHideDifferences'))}
      >
        {pairWords('differences')}
      </button>
      <button type="button" onClick={onStill} title={tip('still', pairWords('saveFramesShown'))}>
        {pairWords('still')}
      </button>
      <button type="button" onClick={onVideo} title={tip('video', pairWords('saveBothSide'))}>
        {pairWords('video')}
      </button>
      <KeySheetButton />
    </header>
  );
}

function SwimName({ which, onBench }: { readonly which: Which; readonly onBench: (which: Which) => void }) {
  const { swim } = usePairPart(which);
  const { title, facts } = cardWords(swim.card);
  const letter = letterOf(which);
  return (
    <button
      type="button"
      className="pair-name"
      onClick={() => onBench(which)}
      title={pairWords('bench', { list: [title, ...facts].join(' · ') })}
      aria-label={pairWords('benchLetter', { letter, title, facts: facts[0] ?? '' })}
    >
      <b>{letter}</b>
      <span>
        {title} <small>{facts[0]}</small>
      </span>
    </button>
  );
}
