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
import { seasonWords } from '#core/words/season';

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
        title={seasonWords('seasonName', { name: swimmer.name })}
        back={
          <a className="season-back" href={addressOf({ screen: 'season', ids: [] })}>
            {seasonWords('squad')}
          </a>
        }
      />
      <main className="season-swimmer">
        <section className="season-main" aria-label={seasonWords('readingOverSeason')}>
          <div className="season-choose">
            <ReadingChoice
              counts={counts}
              reading={reading}
              onChoose={(id) => {
                setAsked(id);
                setLine(null);
              }}
            />
            <output>{pending > 0 ? seasonWords('swimsStillBeing', { pending }) : ''}</output>
            {failed > 0 && <span className="off">{seasonWords('swimsCantRead', { failed })}</span>}
          </div>
          {reading !== null && lines.length > 0 ? (
            <>
              <SeasonPlot lines={lines} chosen={chosen} targets={targets} label={readingLabel(reading)} />
              <p className="caution">{seasonWords('whiskers95Swims')}</p>
              <SeasonTable lines={lines} drills={data.drills} label={readingLabel(reading)} />
            </>
          ) : (
            pending === 0 && (
              <section className="season-empty">
                <h2>{own.length === 0 ? seasonWords('noSwimsYet') : seasonWords('nothingDrawYet')}</h2>
                <p>
                  {own.length === 0
                    ? seasonWords('filmFromSide', { name: swimmer.name })
                    : seasonWords('markHandsFeet')}
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
            <h2>{seasonWords('whatFilmNext')}</h2>
            {pending > 0 ? (
              <p className="caution">{seasonWords('knownWhenAll')}</p>
            ) : advice.length === 0 ? (
              <p>{seasonWords('nothingPressingFull')}</p>
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
            <h2>{seasonWords('targetsTheirHistory')}</h2>
            <TargetHistory swimmer={swimmer} />
          </section>
          <section>
            <h2>{seasonWords('filmMetres')}</h2>
            <p>
              {totals.metres > 0
                ? totals.matched
                  ? seasonWords('loggedLast4Weeks', {
                      own: last
                        ? seasonWords('swimsLastFilmed', { own: own.length, day: dayWords(last) })
                        : seasonWords('neverFilmedFull'),
                      aidedMetres: Math.round(totals.aidedMetres),
                      unaidedMetres: Math.round(totals.unaidedMetres),
                    })
                  : seasonWords('loggedLast4WeeksM', {
                      own: last
                        ? seasonWords('swimsLastFilmed', { own: own.length, day: dayWords(last) })
                        : seasonWords('neverFilmedFull'),
                      aidedMetres: Math.round(totals.aidedMetres),
                      unaidedMetres: Math.round(totals.unaidedMetres),
                    })
                : seasonWords('noPracticeLogged', {
                    own: last
                      ? seasonWords('swimsLastFilmed', { own: own.length, day: dayWords(last) })
                      : seasonWords('neverFilmedFull'),
                  })}
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
