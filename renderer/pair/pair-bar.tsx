import type { LayPoint } from '#core/compare/lay-body-line';
import { KeySheetButton } from '../ui/key-sheet-button';
import { useTip } from '../ui/use-tip';
import { cardWords } from '#core/swim-file/card-words';
import { usePair, usePairPart, usePairView } from './pair-session';
import { letterOf, type Which } from './pair-view';

interface Props {
  readonly onLeave: () => void;
  readonly onBench: (which: Which) => void;
  readonly onSwap: () => void;
  readonly onStill: () => void;
  readonly onVideo: () => void;
}

const lays: readonly { readonly at: LayPoint | null; readonly words: string }[] = [
  { at: null, words: 'no' },
  { at: 'hip', words: 'at the hip' },
  { at: 'shoulder', words: 'at the shoulder' },
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
  const known = a.context.bodyLength !== null && b.context.bodyLength !== null;
  return (
    <header className="bench-bar pair-bar">
      <button type="button" onClick={onLeave} title="Back to all swims">
        ‹ Shelf
      </button>
      <h1>
        <SwimName which={0} onBench={onBench} />
        <button
          type="button"
          className="pair-swap"
          onClick={onSwap}
          title={tip('swap', 'A and B change places')}
        >
          ⇄<span className="unseen">A and B change places</span>
        </button>
        <SwimName which={1} onBench={onBench} />
      </h1>
      <button
        type="button"
        aria-pressed={sameLength}
        disabled={!known}
        onClick={() => session.view.setState({ sameLength: !sameLength })}
        title={
          known
            ? tip('same-length', 'Show both bodies equally long')
            : 'Needs a stretched body line in both, or the swimmer’s streamline and a known length'
        }
      >
        Same length
      </button>
      <label className="pair-lay">
        B on A
        <select
          value={lay ?? ''}
          title={tip('lay', 'B’s body line on A’s picture, where both have one')}
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
        title={tip('differences', 'Show or hide the differences')}
      >
        Differences
      </button>
      <button
        type="button"
        onClick={onStill}
        title={tip('still', 'Save the frames shown side by side as a picture')}
      >
        Still…
      </button>
      <button type="button" onClick={onVideo} title={tip('video', 'Save both side by side as a video')}>
        Video…
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
      title={`${[title, ...facts].join(' · ')}. To the bench.`}
      aria-label={`${letter}: ${title}, ${facts[0] ?? ''}. To the bench`}
    >
      <b>{letter}</b>
      <span>
        {title} <small>{facts[0]}</small>
      </span>
    </button>
  );
}
