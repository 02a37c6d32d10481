import { useCallback, useMemo, useState } from 'react';
import { filmNext, filmNextWords } from '#core/practice/film-next';
import { type SquadRow, squadSeason } from '#core/practice/squad-season';
import { type Work, workOfCard } from '#core/practice/work';
import type { SeasonSwim } from '#core/practice/season-swim';
import { addressOf } from '../ui/use-route';
import { dayWords } from '#core/swim-file/card-words';
import type { SwimCard } from '#core/swim-file/swim-schema';
import { shortListFor } from '#core/measures/short-list';
import { shortListStore } from '../readings/kept-short-lists';
import { isoDayOf } from '../card/remembered-card';
import type { HostClient } from '../host/host-client';
import { mainWay } from '#core/practice/main-way';
import { squadWords } from '#core/words/squad';
import { SquadReadings } from './squad-readings';
import { useSquadReadings } from './use-squad-readings';
import type { SeasonData } from './use-season';
import { PageBar } from '../ui/page-bar';
import { lineWords, readingLabel, withDays } from './season-words';
import { seasonWords } from '#core/words/season';

interface Props {
  readonly host: HostClient;
  readonly data: SeasonData;
  readonly today: string;
}

/** Days of practice looked back on; our own choices. */
const periods = [
  [28, seasonWords('last4Weeks')],
  [84, seasonWords('last12Weeks')],
  [365, seasonWords('lastYear')],
] as const;
/** Readings seen first for a card's drill. */
const pinnedFor = (card: SwimCard): readonly string[] => shortListFor(card, shortListStore.getState().lists);
const metres = (value: number): string => `${Math.round(value).toLocaleString()} m`;

function filmedWords({ lastFilmed, daysSinceFilm }: SquadRow): string {
  if (lastFilmed === null) return seasonWords('neverFilmed');
  if (daysSinceFilm === 0) return seasonWords('today');
  return daysSinceFilm === 1
    ? seasonWords('dayAgo', { daysSinceFilm: String(daysSinceFilm) })
    : seasonWords('daysAgo', { daysSinceFilm: String(daysSinceFilm) });
}

/** Who has not been filmed, and whose metres with aids are not matched by as many without. */
export function SquadPage({ host, data, today }: Props) {
  const read = useSquadReadings(host, data);
  const rowsOf = useCallback(
    (back: number) => {
      const swims = data.swims.map(({ card }) => ({ swimmerId: card.swimmerId, day: card.date }));
      const from = isoDayOf(new Date(`${today}T12:00:00`).getTime() - back * 86_400_000);
      return squadSeason(data.squad.swimmers, swims, data.practices, { from, to: today });
    },
    [data, today],
  );
  const [chosen, setBack] = useState<number | null>(null);
  // until one is chosen: the shortest in which anything was logged
  const back = useMemo(
    () =>
      chosen ??
      periods.find(([days]) => rowsOf(days).some(({ totals }) => totals.metres > 0))?.[0] ??
      periods[0][0],
    [chosen, rowsOf],
  );
  const rows = useMemo(() => rowsOf(back), [rowsOf, back]);
  const next = useMemo(() => {
    // what a card says is enough for the rules that need no reading; the swimmer's own page knows them all
    const cards = data.swims.map(
      ({ id, card }): SeasonSwim => ({
        swimId: id,
        swimmerId: card.swimmerId,
        day: card.date,
        view: card.view,
        work: workOfCard(card, data.drills),
        effort: card.effort,
        readings: new Map(),
      }),
    );
    return new Map(
      data.squad.swimmers.map((swimmer) => [
        swimmer.id,
        filmNext({ ...swimmer, targets: [] }, cards, data.practices, today)[0] ?? null,
      ]),
    );
  }, [data, today]);
  return (
    <div className="season">
      <PageBar title={seasonWords('season')} />
      <main>
        {data.squad.swimmers.length === 0 ? (
          <section className="season-empty">
            <h2>{seasonWords('noSwimmersYet')}</h2>
            <p>{seasonWords('swimmerComesInto')}</p>
          </section>
        ) : (
          <>
            <p className="season-lead">
              {seasonWords('longestWithoutFilm')}
              <label>
                {seasonWords('metres')}
                <select value={back} onChange={(event) => setBack(Number(event.target.value))}>
                  {periods.map(([days, words]) => (
                    <option key={days} value={days}>
                      {words}
                    </option>
                  ))}
                </select>
              </label>
            </p>
            <table className="season-table squad-table">
              <thead>
                <tr>
                  <th scope="col">{seasonWords('swimmer')}</th>
                  <th scope="col">{squadWords('readings')}</th>
                  <th scope="col">{squadWords('metres')}</th>
                  <th scope="col">{seasonWords('whatFilmNext')}</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <SwimmerRow
                    key={row.swimmerId}
                    row={row}
                    film={next.get(row.swimmerId) ?? null}
                    data={data}
                    read={read.get(row.swimmerId) ?? null}
                  />
                ))}
              </tbody>
            </table>
            <p className="caution">{seasonWords('whateverDoneAid')}</p>
          </>
        )}
      </main>
    </div>
  );
}

interface RowProps {
  readonly row: SquadRow;
  readonly film: Parameters<typeof filmNextWords>[0] | null;
  readonly data: SeasonData;
  /** What is read of the swimmer's main way of swimming; null until it is. */
  readonly read: { readonly swims: readonly SeasonSwim[]; readonly pending: boolean } | null;
}

function SwimmerRow({ row, film, data, read }: RowProps) {
  const { totals } = row;
  const late = row.daysSinceFilm === null || row.daysSinceFilm > 28;
  const own = data.swims.filter(({ card }) => card.swimmerId === row.swimmerId);
  const latest = mainWay(own, data.drills).at(-1);
  const words = { readingLabel, workWords: (work: Work) => lineWords(work, data.drills) };
  return (
    <tr>
      <th scope="row">
        <a href={addressOf({ screen: 'season', ids: [row.swimmerId] })}>{row.name}</a>
        <small className={late ? 'off' : undefined}>
          {late && <span aria-hidden="true">▲ </span>}
          {filmedWords(row)}
        </small>
        {row.lastFilmed && <small>{dayWords(row.lastFilmed)}</small>}
      </th>
      <td>
        <SquadReadings
          swims={read?.swims ?? null}
          pending={latest !== undefined && (read?.pending ?? true)}
          pinned={latest ? pinnedFor(latest.card) : []}
          drills={data.drills}
        />
      </td>
      <td className={totals.matched ? undefined : 'off'}>
        {totals.metres === 0 ? (
          <span className="quiet">{seasonWords('nothingLogged')}</span>
        ) : (
          <>
            <small>{squadWords('aided', { metres: Math.round(totals.aidedMetres) })}</small>
            <small>{squadWords('unaided', { metres: Math.round(totals.unaidedMetres) })}</small>
            {totals.matched
              ? squadWords('matched')
              : seasonWords('shortWithout', { metres: metres(totals.shortfallMetres) })}
          </>
        )}
      </td>
      <td>{film ? withDays(filmNextWords(film, words)) : seasonWords('nothingPressing')}</td>
    </tr>
  );
}
