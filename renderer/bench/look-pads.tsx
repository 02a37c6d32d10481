import { useKeyOf, useTip } from '../ui/use-tip';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { benchWords } from '#core/words/bench';

/** What lies over the picture: the scene shown or hidden, and everything away while the pad is held. */
export function LookPads() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const { view } = useOpenSwim();
  const showScene = useView((state) => state.showScene);
  const bare = useView((state) => state.bare);
  const hold = (held: boolean): void => view.setState({ bare: held });
  return (
    <>
      <button
        type="button"
        className="pad"
        aria-pressed={!showScene}
        onClick={() => view.setState({ showScene: !showScene })}
        title={tip('scene', benchWords('hideLevelSurface'))}
        aria-label={benchWords('hideSceneKey', { keyOf: keyOf('scene') })}
      >
        <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
          <path d="M-9,4 H9 M-9,-4 H9 M-8,9 L8,-9" fill="none" stroke="currentColor" strokeWidth="2" />
        </svg>
        <span className="pad-words">{benchWords('hideScene')}</span>
        <span className="pad-count">{showScene ? '' : '✓'}</span>
        <kbd>{keyOf('scene')}</kbd>
      </button>
      <button
        type="button"
        className="pad"
        aria-pressed={bare}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          hold(true);
        }}
        onPointerUp={() => hold(false)}
        onPointerCancel={() => hold(false)}
        onContextMenu={(event) => event.preventDefault()}
        onKeyDown={(event) => {
          if (event.key === ' ' || event.key === 'Enter') hold(true);
        }}
        onKeyUp={() => hold(false)}
        onBlur={() => hold(false)}
        title={tip('bare', benchWords('holdSeeBarePicture'))}
        aria-label={benchWords('barePictureWhile', { keyOf: keyOf('bare') })}
      >
        <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
          <rect x="-9" y="-6" width="18" height="12" fill="none" stroke="currentColor" strokeWidth="2" />
        </svg>
        <span className="pad-words">{benchWords('bareHold')}</span>
        <span className="pad-count" />
        <kbd>{keyOf('bare')}</kbd>
      </button>
    </>
  );
}
