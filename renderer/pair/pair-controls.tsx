import { pairModes } from '#core/compare/pair-clock';
import { StepButton } from '../film/step-button';
import { paces } from '../film/step-controls';
import { playPaces } from '../video/player';
import { chooseMode, modeWords } from './pair-commands';
import { usePair, usePairView } from './pair-session';
import { goToLock, lockHere, stepPair, stepToMark } from './pair-steps';
import { letterOf } from './pair-view';
import { useTip } from '../ui/use-tip';
import { pairWords } from '#core/words/pair';

const modeCommands = { time: 'in-time', cycle: 'in-cycle', free: 'free' } as const;
const modeTitles = {
  time: pairWords('bothRunTrueTime'),
  cycle: pairWords('bothRunThrough'),
  free: pairWords('eachStepsIts'),
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
    <section className="steps pair-steps" aria-label={pairWords('stepThroughBoth')}>
      <div className="steps-row">
        <fieldset className="switch" aria-label={pairWords('runTogether')}>
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
          title={tip('lock', pairWords('lockBothWhereThey'))}
        >
          {pairWords('lockHere')}
        </button>
        <button
          type="button"
          onClick={() => goToLock(session)}
          title={tip('to-lock', pairWords('bothLockedMoment'))}
        >
          {pairWords('goLock')}
        </button>
        <span className="steps-space" />
        <button
          type="button"
          className="step"
          onClick={() => stepToMark(session, -1)}
          title={tip('mark-before', pairWords('previousMarkLead', { lead }))}
          aria-label={pairWords('previousMarkLead', { lead })}
        >
          ⇤
        </button>
        <StepButton
          sign={null}
          words="−10"
          title={tip('frames-back', pairWords('tenFramesBackLead', { lead }))}
          onStep={step(-10)}
          minor
        />
        <StepButton
          sign="◀"
          words={pairWords('frame')}
          title={tip('frame-back', pairWords('oneFrameBackLead', { lead }))}
          onStep={step(-1)}
        />
        <StepButton
          sign="▶"
          words={pairWords('frame')}
          title={tip('frame-on', pairWords('oneFrameLead', { lead }))}
          onStep={step(1)}
        />
        <StepButton
          sign={null}
          words="+10"
          title={tip('frames-on', pairWords('tenFramesLead', { lead }))}
          onStep={step(10)}
          minor
        />
        <button
          type="button"
          className="step"
          onClick={() => stepToMark(session, 1)}
          title={tip('mark-after', pairWords('nextMarkLead', { lead }))}
          aria-label={pairWords('nextMarkLead', { lead })}
        >
          ⇥
        </button>
        <span className="steps-space" />
        <button
          type="button"
          className="step play"
          aria-pressed={playing}
          onClick={() => session.view.setState({ playing: !playing })}
          title={tip('play', pairWords('playOrStopBoth'))}
        >
          {playing ? '❙❙ Stop' : '▶ Play'}
        </button>
        <fieldset className="switch" aria-label={pairWords('speedPlaying')}>
          {paces.map(({ pace: share, words }) => (
            <button
              key={share}
              type="button"
              aria-pressed={pace === share}
              onClick={() => session.view.setState({ pace: playPaces.find((each) => each === share) ?? 1 })}
              title={pairWords('playAtTrueSpeed', { words })}
            >
              {words}
            </button>
          ))}
        </fieldset>
      </div>
    </section>
  );
}
