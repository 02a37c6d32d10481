import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { readingContext } from '#core/measures/compute-readings';
import { cycleCurves } from '#core/measures/plots/cycle-curves';
import { heightCurves } from '#core/measures/plots/height-curves';
import { speedCurve, usualCutoffHz } from '#core/measures/plots/speed-curve';
import { undulationProfile } from '#core/measures/plots/undulation-profile';
import type { Reading } from '#core/measures/reading';
import { swimDoubtWords } from '#core/measures/kick-doubt-words';
import { reasonWords } from '#core/measures/reason-words';
import { realTimeOf } from '#core/timeline/clip-clock';
import { clockOf, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { goTo } from '../open-swim/stepping';
import { CutoffSwitch } from './cutoff-switch';
import { cycleView } from './cycle-view';
import { heightView } from './height-view';
import type { DrawnPlot } from './draw-plot';
import { type FramePoint, PlotFigure } from './plot-figure';
import { PlotLegend } from './plot-legend';
import { PlotTableView } from './plot-table-view';
import type { PlotView } from './plot-view';
import { profileView } from './profile-view';
import { speedView } from './speed-view';
import './plots.css';
import { plotsWords } from '#core/words/plots';

const plots = [
  { id: 'profile', words: plotsWords('alongBody'), needs: 'undulation-toe' },
  { id: 'height', words: plotsWords('toeHipHeight'), needs: 'undulation-toe' },
  { id: 'cycle', words: plotsWords('kneeHipAngle2'), needs: 'knee-angle' },
  { id: 'speed', words: plotsWords('speed'), needs: 'speed-hip' },
] as const;
type PlotId = (typeof plots)[number]['id'];

/** The swim's curves in the place of the score: to look at, to step along, and as numbers. */
export function PlotsPanel() {
  const session = useOpenSwim();
  const swim = useSwim((each) => each);
  const readings = useStore(session.readings.store, (state) => state.readings);
  const { swimmer, markingError } = useStore(session.known);
  const [chosen, setChosen] = useState<PlotId>('profile');
  const [asTable, setAsTable] = useState(false);
  const [cutoff, setCutoff] = useState<'usual' | 'suggested'>('usual');
  const speeds = useMemo(() => {
    if (chosen !== 'speed') return null;
    const context = readingContext(swim, { swimmer, markingError });
    return speedCurve(context, cutoff === 'usual' ? usualCutoffHz : 'suggested');
  }, [chosen, cutoff, swim, swimmer, markingError]);
  const view = useMemo((): PlotView | null => {
    if (chosen === 'speed') return speedView(speeds);
    if (chosen === 'profile') return profileView(undulationProfile(readings));
    const context = readingContext(swim, { swimmer, markingError });
    if (chosen === 'height') return heightView(heightCurves(context), context.unit);
    return cycleView(cycleCurves(context), context.cycles?.base ?? 'kick');
  }, [chosen, speeds, readings, swim, swimmer, markingError]);
  const doubt = swimDoubtWords(readings, swim.clip.slowdown.factor);
  const choose = useCallback(
    ({ frame }: FramePoint) => {
      if (frame !== null) goTo(session, frame);
    },
    [session],
  );
  return (
    <section className="plots" aria-label={plotsWords('plots')}>
      <header className="plots-bar">
        <fieldset className="switch" aria-label={plotsWords('whichPlot')}>
          {plots.map(({ id, words }) => (
            <button key={id} type="button" aria-pressed={chosen === id} onClick={() => setChosen(id)}>
              {words}
            </button>
          ))}
        </fieldset>
        {speeds && <CutoffSwitch curve={speeds} chosen={cutoff} onChoose={setCutoff} />}
        <button
          type="button"
          aria-pressed={asTable}
          onClick={() => setAsTable(!asTable)}
          title={plotsWords('sameNumbers')}
        >
          {plotsWords('numbers2')}
        </button>
      </header>
      {view && doubt && (
        <p className="plots-doubt" title={doubt}>
          {doubt}
        </p>
      )}
      {!view ? (
        <p className="plots-empty">
          {emptyWords(readings, plots.find(({ id }) => id === chosen)?.needs ?? '')}
        </p>
      ) : asTable ? (
        <PlotTableView table={view.table} label={view.label} onChoose={choose} />
      ) : (
        <Drawn key={chosen} view={view} onChoose={choose} />
      )}
    </section>
  );
}

/** What has to be marked before there is something to see. */
function emptyWords(readings: readonly Reading[], needs: string): string {
  const reading = readings.find(({ id }) => id === needs);
  const reason = reading?.status === 'missing' ? reading.reasons[0] : undefined;
  return reason
    ? plotsWords('nothingDrawYet', { reason: reasonWords(reason) })
    : plotsWords('nothingDrawYetLay');
}

function Drawn({
  view,
  onChoose,
}: {
  readonly view: PlotView;
  readonly onChoose: (point: FramePoint) => void;
}) {
  const session = useOpenSwim();
  const clock = useSwim(clockOf);
  const frame = useView((state) => state.frame);
  const [drawn, setDrawn] = useState<DrawnPlot | null>(null);
  const head = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const scale = view.overTime ? drawn?.scale('x') : undefined;
    const line = head.current;
    if (!line) return;
    const x = scale ? Number(scale.apply(realTimeOf(clock, frame))) : Number.NaN;
    const [from = 0, to = 0] = (scale?.range as number[] | undefined) ?? [];
    const inside = x >= from - 1 && x <= to + 1;
    line.hidden = !inside;
    if (inside) line.style.left = `${x}px`;
  }, [drawn, view, clock, frame]);
  const { stops } = view;
  const at = Math.max(
    0,
    stops.findIndex((stop) => stop.frame === frame),
  );
  const [stop, setStop] = useState(at);
  const here = stops[stop]?.frame === frame ? stop : at;
  return (
    <>
      <div className="plot-place">
        <PlotFigure label={view.label} options={view.options} onChoose={onChoose} onDrawn={setDrawn} />
        <div className="plot-head" ref={head} hidden />
      </div>
      {stops.length > 0 && (
        <footer className="plot-foot">
          <PlotLegend view={view} />
          <label className="plot-stops">
            <span>{plotsWords('pointPoint')}</span>
            <input
              type="range"
              min={0}
              max={stops.length - 1}
              value={here}
              aria-valuetext={stops[here]?.words ?? ''}
              onKeyDown={(event) => event.stopPropagation()}
              onChange={(event) => {
                const next = Number(event.target.value);
                setStop(next);
                const to = stops[next];
                if (to) goTo(session, to.frame);
              }}
            />
          </label>
          <output>{stops[here]?.words}</output>
        </footer>
      )}
    </>
  );
}
