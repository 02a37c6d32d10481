import { useMemo, useState } from 'react';
import { filmNext, filmNextWords } from '#core/practice/film-next';
import { neverCompared } from '#core/measures/never-compared';
import { seasonLines } from '#core/practice/season-change';
import { periodTotals } from '#core/practice/practice-totals';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { addressOf } from '../ui/use-route';
import { ConsentWords } from '../card/consent-words';
import { dayWords } from '#core/swim-file/card-words';
import { isoDayOf } from '../card/remembered-card';
import type { HostClient } from '../host/host-client';
import { isWanted } from '../readings/arrange-readings';
import { PageBar } from '../ui/page-bar';
import { ReadingChoice } from './reading-choice';
import { SeasonLines } from './season-lines';
import { SeasonPlot } from './season-plot';
import { SeasonTable } from './season-table';
import { lineWords, readingLabel, withDays } from './season-words';
import { TargetHistory } from './target-history';
import { type SeasonData, useSwimmerReadings } from './use-season';

interface Props {
  readonly host: HostClient;
  readonly data: SeasonData;
  readonly swimmer: Swimmer;
  readonly today: string;
}

/** One swimmer's season: any reading over time, whether it has changed, and what to film next. */
export function SwimmerPage({ host, data, swimmer, today }: Props) {
  const { swims, pending, failed } = useSwimmerReadings(host, data, swimmer);
  const counts = useMemo(() => {
    const found = new Map<string, number>();
    for (const { readings } of swims)
      for (const id of readings.keys()) if (!neverCompared(id)) found.set(id, (found.get(id) ?? 0) + 1);
    return found;
  }, [swims]);
  const usual = useMemo(
    () =>
      [...counts]
        .filter(([id]) => isWanted(id))
        .sort((a, b) => b[1] - a[1])
        .map(([id]) => id)[0] ?? null,
    [counts],
  );
  const [asked, setAsked] = useState<string | null>(null);
  const [line, setLine] = useState<number | null>(null);
  const reading = asked !== null && counts.has(asked) ? asked : usual;
  const lines = useMemo(() => (reading === null ? [] : seasonLines(swims, reading)), [swims, reading]);
  const longest = lines.reduce(
    (best, { points }, at) => (points.length > (lines[best]?.points.length ?? 0) ? at : best),
    0,
  );
  const chosen = line !== null && line < lines.length ? line : longest;
  const targets = useMemo(
    () => swimmer.targets.filter((each) => each.reading === reading),
    [swimmer, reading],
  );
  const advice = useMemo(
    () => (pending > 0 ? [] : filmNext(swimmer, swims, data.practices, today)),
    [swimmer, swims, data, today, pending],
  );
  const own = data.swims.filter(({ card }) => card.swimmerId === swimmer.id);
  const last = own
    .map(({ card }) => card.date)
    .sort()
    .at(-1);
  const monthAgo = isoDayOf(new Date(`${today}T12:00:00`).getTime() - 28 * 86_400_000);
  const totals = periodTotals(data.practices, { from: monthAgo, to: today }, swimmer.id, 'logged');
  return (
    <div className="season">
      <PageBar
        title={`${swimmer.name}: season`}
        back={
          <a className="season-back" href={addressOf({ screen: 'season', ids: [] })}>
            ‹ Squad
          </a>
        }
      />
      <main className="season-swimmer">
        <section className="season-main" aria-label="A reading over the season">
          <div className="season-choose">
            <ReadingChoice
              counts={counts}
              reading={reading}
              onChoose={(id) => {
                setAsked(id);
                setLine(null);
              }}
            />
            <output>{pending > 0 ? `${pending} swims still being read…` : ''}</output>
            {failed > 0 && <span className="off">▲ {failed} swims can’t be read</span>}
          </div>
          {reading !== null && lines.length > 0 ? (
            <>
              <SeasonPlot lines={lines} chosen={chosen} targets={targets} label={readingLabel(reading)} />
              <p className="caution">
                Whiskers: 95 % of this swim’s own uncertainty, with the scale’s. Shaded: the target of those
                days. Swims with aids and without, and different drills, are never on one line.
              </p>
              <SeasonTable lines={lines} drills={data.drills} label={readingLabel(reading)} />
            </>
          ) : (
            pending === 0 && (
              <section className="season-empty">
                <h2>{own.length === 0 ? 'No swims yet' : 'Nothing to draw yet'}</h2>
                <p>
                  {own.length === 0
                    ? `Film ${swimmer.name} from the side, add the clip on the shelf and mark it; readings appear here by themselves.`
                    : 'Mark hands, feet and head on the bench: every reading that comes of it appears here by itself.'}
                </p>
              </section>
            )
          )}
        </section>
        <aside className="season-side">
          {lines.length > 0 && (
            <SeasonLines lines={lines} chosen={chosen} drills={data.drills} onChoose={setLine} />
          )}
          <section>
            <h2>What to film next</h2>
            {pending > 0 ? (
              <p className="caution">Known when all swims are read.</p>
            ) : advice.length === 0 ? (
              <p>Nothing pressing.</p>
            ) : (
              <ol className="film-next">
                {advice.slice(0, 6).map((each) => (
                  <li key={JSON.stringify(each)}>
                    {withDays(
                      filmNextWords(each, {
                        readingLabel,
                        workWords: (work) => lineWords(work, data.drills),
                      }),
                    )}
                  </li>
                ))}
              </ol>
            )}
          </section>
          <section>
            <h2>Targets and their history</h2>
            <TargetHistory swimmer={swimmer} />
          </section>
          <section>
            <h2>Film and metres</h2>
            <p>
              {last
                ? `${own.length} ${own.length === 1 ? 'swim' : 'swims'}, last filmed ${dayWords(last)}.`
                : 'Never filmed.'}{' '}
              {totals.metres > 0
                ? `Logged in the last 4 weeks: ${Math.round(totals.aidedMetres)} m with aids, ${Math.round(totals.unaidedMetres)} m without${totals.matched ? ', matched' : ''}.`
                : 'No practice logged in the last 4 weeks.'}
            </p>
            <p>
              <ConsentWords swimmer={swimmer} />
            </p>
          </section>
        </aside>
      </main>
    </div>
  );
}
