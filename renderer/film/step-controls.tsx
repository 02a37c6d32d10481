import { LowerSwitch } from '../score/lower-switch';
import { TimeSwitch } from '../score/time-switch';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { KeepInViewButton } from '../stage/keep-in-view-button';
import { clockOf, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { StepButton } from './step-button';
import { goTo, goToMark, stepBy } from '../open-swim/stepping';
import { whereWords } from './where-words';
import { useTip } from '../ui/use-tip';
import { filmWords } from '#core/words/film';

/** Shares of true speed the film can be played at. */
export const paces = [
  { pace: 0.125, words: '⅛×' },
  { pace: 0.25, words: '¼×' },
  { pace: 0.5, words: '½×' },
  { pace: 1, words: '1×' },
] as const;

export function StepControls() {
  const tip = useTip();
  const session = useOpenSwim();
  const frame = useView((state) => state.frame);
  const waiting = useView((state) => state.shownFrame !== state.frame);
  const lost = useView((state) => state.lostFrame === state.frame);
  const playing = useView((state) => state.playing);
  const pace = useView((state) => state.pace);
  const scored = useView((state) => state.lower === 'score');
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const taken = useView((state) => state.stage !== null);
  const swims = useMemo(() => [session], [session]);
  const clock = useSwim(clockOf);
  const hasStrokes = useStore(session.readings.store, (state) => state.rhythm.strokes.length > 0);
  const rhythm = useStore(session.readings.store, (state) => state.rhythm);
  const step =
    (frames: number) =>
    (held: boolean): void =>
      stepBy(session, frames, held);
  const where = whereWords(clock, frame, rhythm, hasStrokes ? 'stroke' : 'kick');
  return (
    <section className="steps" aria-label={filmWords('stepThroughFilm')}>
      <div className="steps-row">
        <button
          type="button"
          className="step"
          onClick={() => goToMark(session, -1)}
          title={tip('mark-before', filmWords('previousMark'))}
          aria-label={filmWords('previousMark')}
        >
          ⇤ <span className="wide-words">{filmWords('mark')}</span>
        </button>
        <StepButton
          onStep={step(-10)}
          sign={null}
          words="−10"
          title={tip('frames-back', filmWords('tenFramesBack'))}
          minor
        />
        <StepButton
          onStep={step(-1)}
          sign="◀"
          words={filmWords('frame')}
          title={tip('frame-back', filmWords('oneFrameBack'))}
        />
        <output className={`where${waiting && hasFilm ? ' waiting' : ''}`} aria-live="off" data-frame={frame}>
          <strong className="where-frame">{where.frame}</strong>
          <small className="where-time">
            {!waiting || !hasFilm
              ? where.time
              : lost
                ? filmWords('pictureDamaged')
                : filmWords('pictureItsWay')}
          </small>
        </output>
        <StepButton
          onStep={step(1)}
          sign="▶"
          words={filmWords('frame')}
          title={tip('frame-on', filmWords('oneFrame'))}
        />
        <StepButton
          onStep={step(10)}
          sign={null}
          words="+10"
          title={tip('frames-on', filmWords('tenFrames'))}
          minor
        />
        <button
          type="button"
          className="step"
          onClick={() => goToMark(session, 1)}
          title={tip('mark-after', filmWords('nextMark'))}
          aria-label={filmWords('nextMark')}
        >
          <span className="wide-words">{filmWords('mark')}</span> ⇥
        </button>
        <span className="steps-space" />
        <button
          type="button"
          className="step play"
          aria-pressed={playing}
          disabled={!hasFilm}
          onClick={() => session.view.setState({ playing: !playing })}
          title={tip('play', filmWords('playOrStop'))}
        >
          {playing ? '❙❙ Stop' : '▶ Play'}
        </button>
        <fieldset className="switch" aria-label={filmWords('speedPlaying')}>
          {paces.map((each) => (
            <button
              key={each.pace}
              type="button"
              aria-pressed={pace === each.pace}
              onClick={() => session.view.setState({ pace: each.pace })}
              title={filmWords('playAtTrueSpeed', { each: each.words })}
            >
              {each.words}
            </button>
          ))}
        </fieldset>
      </div>
      <div className="steps-time">
        <input
          className="scrub"
          type="range"
          min={0}
          max={clock.table.starts.length - 1}
          value={frame}
          aria-label={filmWords('scrubThroughFilm')}
          aria-valuetext={`${where.frame}, ${where.time}`}
          onChange={(event) => goTo(session, Number(event.target.value))}
        />
        <KeepInViewButton swims={swims} taken={taken} />
        <LowerSwitch />
        {scored && <TimeSwitch />}
      </div>
    </section>
  );
}
