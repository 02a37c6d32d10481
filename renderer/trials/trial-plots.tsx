import { useMemo } from 'react';
import { catalogue } from '#core/measures/families';
import type { Drill } from '#core/practice/drill-schema';
import { type TrialPoint, trialPoints } from '#core/practice/trial-points';
import { poolOf, type TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { readingLabel } from '../sets/drill-facts';
import { TrialPlot } from './trial-plot';
import { levelWords, poolWords, valueWords } from './trial-words';
import { trialsWords } from '#core/words/trials';
import { rich } from '../ui/rich';

interface Props {
  readonly trial: Trial;
  readonly rows: readonly TrialRow[];
  readonly own: readonly Drill[];
  readonly squad: Squad;
}

const groupOf = new Map(catalogue.map(({ id, group }) => [id, group]));
const isOutcome = (id: string): boolean =>
  id.startsWith('speed-hip') ||
  id.startsWith('speed-marks') ||
  id.startsWith('speed-centre') ||
  id === 'distance-per-kick';
const isPosture = (id: string): boolean => groupOf.get(id) === 'posture';

export interface PlotData {
  readonly key: string;
  readonly x: string;
  readonly y: string;
  readonly points: readonly TrialPoint[];
}

/** One picture for each outcome against each posture reading, in one unit and one pool each, those with two points or more. */
export function plotsOf(trial: Trial, rows: readonly TrialRow[]): readonly PlotData[] {
  const plots: PlotData[] = [];
  for (const y of trial.readings.filter(isOutcome))
    for (const x of trial.readings.filter(isPosture)) {
      const byKind = new Map<string, TrialPoint[]>();
      for (const point of trialPoints(rows, trial.factor, { x, y })) {
        const key = [x, y, point.pool, point.x.unit, point.y.unit].join(' ');
        byKind.set(key, [...(byKind.get(key) ?? []), point]);
      }
      for (const [key, points] of byKind) if (points.length >= 2) plots.push({ key, x, y, points });
    }
  return plots;
}

/** Speed and distance per kick against each posture reading, a point a repeat, with what marking leaves open. */
export function TrialPlots({ trial, rows, own, squad }: Props) {
  const plots = useMemo(() => plotsOf(trial, rows), [trial, rows]);
  if (rows.length === 0) return null;
  return (
    <section aria-label={trialsWords('speedAgainstPosture')} className="trial-plots">
      <h2>{trialsWords('speedDistancePer')}</h2>
      {plots.length === 0 && <p>{trialsWords('nothingDrawYet')}</p>}
      <div className="plot-grid">
        {plots.map(({ key, x, y, points }) => {
          const row = rows.find((each) => poolOf(each, trial.factor) === points[0]?.pool);
          const title = trialsWords('againstReading', {
            reading: readingLabel(y),
            toLocaleLowerCase: readingLabel(x).toLocaleLowerCase(),
          });
          const named = points.map((point) => ({
            ...point,
            level: point.level === null ? trialsWords('notSaid') : levelWords(trial.factor, point.level, own),
          }));
          return (
            <figure key={key}>
              <figcaption>
                <strong>{title}</strong>
                <small>{row ? poolWords(row, squad, own) : ''}</small>
              </figcaption>
              <TrialPlot
                title={title}
                points={named}
                xLabel={`${readingLabel(x)}, ${points[0]?.x.unit ?? ''}`}
                yLabel={`${readingLabel(y)}, ${points[0]?.y.unit ?? ''}`}
              />
              <details>
                <summary>
                  {rich(
                    trialsWords.parts('sameTable', {
                      title,
                      span: (inside) => <span className="unseen">{inside}</span>,
                    }),
                  )}
                </summary>
                <table>
                  <thead>
                    <tr>
                      <th scope="col">{trialsWords('repeat')}</th>
                      <th scope="col">{trialsWords('condition')}</th>
                      <th scope="col">{readingLabel(x)}</th>
                      <th scope="col">{readingLabel(y)}</th>
                    </tr>
                  </thead>
                  <tbody>
                    {named.map((point) => (
                      <tr key={point.swimId}>
                        <td className="number">
                          {rows.findIndex(({ swimId }) => swimId === point.swimId) + 1}
                        </td>
                        <td>{point.level}</td>
                        <td className="number">{valueWords(x, point.x)}</td>
                        <td className="number">{valueWords(y, point.y)}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </details>
            </figure>
          );
        })}
      </div>
    </section>
  );
}
