import { pairModes } from '#core/compare/pair-clock';
import { StepButton } from '../film/step-button';
import { paces } from '../film/step-controls';
import { playPaces } from '../video/player';
import { chooseMode, modeWords } from './pair-commands';
import { usePair, usePairView } from './pair-session';
import { goToLock, lockHere, stepPair, stepToMark } from './pair-steps';
import { letterOf } from './pair-view';
import { useTip } from '../ui/use-tip';

const modeCommands = { time: 'in-time', cycle: 'in-cycle', free: 'free' } as const;
const modeTitles = {
  time: 'Both run in true time from the locked moment',
  cycle: 'Both run through their cycles together, however long each takes',
  free: 'Each steps on its own',
} as const;

/** Steps and plays both swims, and says how they run together. */
export function PairControls({ cyclic }: { readonly cyclic: boolean }) {
  const tip = useTip();
  const session = usePair();
  const mode = usePairView((state) => state.mode);
  const lead = usePairView((state) => letterOf(state.lead));
  const playing = usePairView((state) => state.playing);
  const pace = usePairView((state) => state.pace);
  const step = (by: number) => (): void => stepPair(session, by);
  return (
    <section className="steps pair-steps" aria-label="Step through both films">
      <div className="steps-row">
        <fieldset className="switch" aria-label="Run together in">
          {pairModes.map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={mode === each}
              onClick={() => chooseMode(session, each, cyclic)}
              title={tip(modeCommands[each], modeTitles[each])}
            >
              {modeWords[each]}
            </button>
          ))}
        </fieldset>
        <button
          type="button"
          onClick={() => lockHere(session)}
          title={tip('lock', 'Lock both where they stand now: on the mark there, or the frame')}
        >
          Lock here
        </button>
        <button
          type="button"
          onClick={() => goToLock(session)}
          title={tip('to-lock', 'Both to the locked moment')}
        >
          Go to lock
        </button>
        <span className="steps-space" />
        <button
          type="button"
          className="step"
          onClick={() => stepToMark(session, -1)}
          title={tip('mark-before', `Previous mark of ${lead}`)}
          aria-label={`Previous mark of ${lead}`}
        >
          ⇤
        </button>
        <StepButton
          sign={null}
          words="−10"
          title={tip('frames-back', `Ten frames of ${lead} back`)}
          onStep={step(-10)}
          minor
        />
        <StepButton
          sign="◀"
          words="frame"
          title={tip('frame-back', `One frame of ${lead} back`)}
          onStep={step(-1)}
        />
        <StepButton
          sign="▶"
          words="frame"
          title={tip('frame-on', `One frame of ${lead} on`)}
          onStep={step(1)}
        />
        <StepButton
          sign={null}
          words="+10"
          title={tip('frames-on', `Ten frames of ${lead} on`)}
          onStep={step(10)}
          minor
        />
        <button
          type="button"
          className="step"
          onClick={() => stepToMark(session, 1)}
          title={tip('mark-after', `Next mark of ${lead}`)}
          aria-label={`Next mark of ${lead}`}
        >
          ⇥
        </button>
        <span className="steps-space" />
        <button
          type="button"
          className="step play"
          aria-pressed={playing}
          onClick={() => session.view.setState({ playing: !playing })}
          title={tip('play', 'Play or stop both')}
        >
          {playing ? '❙❙ Stop' : '▶ Play'}
        </button>
        <fieldset className="switch" aria-label="Speed of playing">
          {paces.map(({ pace: share, words }) => (
            <button
              key={share}
              type="button"
              aria-pressed={pace === share}
              onClick={() => session.view.setState({ pace: playPaces.find((each) => each === share) ?? 1 })}
              title={`Play at ${words} of true speed`}
            >
              {words}
            </button>
          ))}
        </fieldset>
      </div>
    </section>
  );
}
