import { TimeSwitch } from '../score/time-switch';
import { useCallback, useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { clockOf, useBench, useSwim, useView } from './bench-session';
import { goTo, goToMark, stepBy } from './stepping';
import { whereWords } from './where-words';

/** Shares of true speed the film can be played at. */
export const paces = [
  { pace: 0.125, words: '⅛×' },
  { pace: 0.25, words: '¼×' },
  { pace: 0.5, words: '½×' },
  { pace: 1, words: '1×' },
] as const;

/** A step button that repeats while it is held, as a held key does. */
function StepButton(props: {
  readonly frames: number;
  readonly sign: '◀' | '▶' | null;
  readonly words: string;
  readonly title: string;
  readonly minor?: boolean;
}) {
  const session = useBench();
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const stop = useCallback((): void => {
    if (timer.current) clearTimeout(timer.current);
    timer.current = null;
  }, []);
  useEffect(() => stop, [stop]);
  const press = (): void => {
    stepBy(session, props.frames);
    const again = (): void => {
      stepBy(session, props.frames);
      timer.current = setTimeout(again, 60);
    };
    timer.current = setTimeout(again, 380);
  };
  return (
    <button
      type="button"
      className={props.minor ? 'step minor' : 'step'}
      title={props.title}
      aria-label={props.title}
      onPointerDown={(event) => event.button === 0 && press()}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        stepBy(session, props.frames);
      }}
    >
      {props.sign === '◀' && '◀ '}
      <span className={props.sign ? 'wide-words' : undefined}>{props.words}</span>
      {props.sign === '▶' && ' ▶'}
    </button>
  );
}

export function StepControls() {
  const session = useBench();
  const frame = useView((state) => state.frame);
  const waiting = useView((state) => state.shownFrame !== state.frame);
  const playing = useView((state) => state.playing);
  const pace = useView((state) => state.pace);
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const clock = useSwim(clockOf);
  const hasStrokes = useStore(session.readings.store, (state) => state.rhythm.strokes.length > 0);
  const rhythm = useStore(session.readings.store, (state) => state.rhythm);
  const where = whereWords(clock, frame, rhythm, hasStrokes ? 'stroke' : 'kick');
  return (
    <section className="steps" aria-label="Step through the film">
      <div className="steps-row">
        <button
          type="button"
          className="step"
          onClick={() => goToMark(session, -1)}
          title="Previous mark (↑)"
          aria-label="Previous mark"
        >
          ⇤ <span className="wide-words">mark</span>
        </button>
        <StepButton frames={-10} sign={null} words="−10" title="Ten frames back (Shift ←)" minor />
        <StepButton frames={-1} sign="◀" words="frame" title="One frame back (←)" />
        <output className={`where${waiting && hasFilm ? ' waiting' : ''}`} aria-live="off" data-frame={frame}>
          <strong className="where-frame">{where.frame}</strong>
          <small className="where-time">{waiting && hasFilm ? 'picture on its way…' : where.time}</small>
        </output>
        <StepButton frames={1} sign="▶" words="frame" title="One frame on (→)" />
        <StepButton frames={10} sign={null} words="+10" title="Ten frames on (Shift →)" minor />
        <button
          type="button"
          className="step"
          onClick={() => goToMark(session, 1)}
          title="Next mark (↓)"
          aria-label="Next mark"
        >
          <span className="wide-words">mark</span> ⇥
        </button>
        <span className="steps-space" />
        <button
          type="button"
          className="step play"
          aria-pressed={playing}
          disabled={!hasFilm}
          onClick={() => session.view.setState({ playing: !playing })}
          title="Play or stop (Space)"
        >
          {playing ? '❙❙ Stop' : '▶ Play'}
        </button>
        <fieldset className="switch" aria-label="Speed of playing">
          {paces.map((each) => (
            <button
              key={each.pace}
              type="button"
              aria-pressed={pace === each.pace}
              onClick={() => session.view.setState({ pace: each.pace })}
              title={`Play at ${each.words} of true speed`}
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
          aria-label="Scrub through the film"
          aria-valuetext={`${where.frame}, ${where.time}`}
          onChange={(event) => goTo(session, Number(event.target.value))}
        />
        <TimeSwitch />
      </div>
    </section>
  );
}
