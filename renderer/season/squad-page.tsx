import { useCallback, useMemo, useState } from 'react';
import { filmNext, filmNextWords } from '#core/practice/film-next';
import { type SquadRow, squadSeason } from '#core/practice/squad-season';
import { workOfCard } from '#core/practice/work';
import type { SeasonSwim } from '#core/practice/season-swim';
import { addressOf } from '../ui/use-route';
import { dayWords } from '#core/swim-file/card-words';
import { isoDayOf } from '../card/remembered-card';
import type { SeasonData } from './use-season';
import { PageBar } from '../ui/page-bar';
import { lineWords, readingLabel, withDays } from './season-words';
import { seasonWords } from '#core/words/season';

interface Props {
  readonly data: SeasonData;
  readonly today: string;
}

/** Days of practice looked back on; our own choices. */
const periods = [
  [28, seasonWords('last4Weeks')],
  [84, seasonWords('last12Weeks')],
  [365, seasonWords('lastYear')],
] as const;
const metres = (value: number): string => `${Math.round(value).toLocaleString()} m`;

function filmedWords({ lastFilmed, daysSinceFilm }: SquadRow): string {
  if (lastFilmed === null) return seasonWords('neverFilmed');
  if (daysSinceFilm === 0) return seasonWords('today');
  return daysSinceFilm === 1
    ? seasonWords('dayAgo', { daysSinceFilm: String(daysSinceFilm) })
    : seasonWords('daysAgo', { daysSinceFilm: String(daysSinceFilm) });
}

/** Who has not been filmed, and whose metres with aids are not matched by as many without. */
export function SquadPage({ data, today }: Props) {
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
                  <th scope="col">{seasonWords('lastFilmed')}</th>
                  <th scope="col">{seasonWords('loggedAids')}</th>
                  <th scope="col">{seasonWords('without')}</th>
                  <th scope="col">{seasonWords('balance')}</th>
                  <th scope="col">{seasonWords('whatFilmNext')}</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => {
                  const { totals } = row;
                  const film = next.get(row.swimmerId);
                  const late = row.daysSinceFilm === null || row.daysSinceFilm > 28;
                  return (
                    <tr key={row.swimmerId}>
                      <th scope="row">
                        <a href={addressOf({ screen: 'season', ids: [row.swimmerId] })}>{row.name}</a>
                      </th>
                      <td className={late ? 'off' : undefined}>
                        {late && <span aria-hidden="true">▲ </span>}
                        {filmedWords(row)}
                        {row.lastFilmed && <small>{dayWords(row.lastFilmed)}</small>}
                      </td>
                      <td>{totals.metres > 0 ? metres(totals.aidedMetres) : '–'}</td>
                      <td>{totals.metres > 0 ? metres(totals.unaidedMetres) : '–'}</td>
                      <td className={totals.matched ? undefined : 'off'}>
                        {totals.metres === 0
                          ? seasonWords('nothingLogged')
                          : totals.matched
                            ? '✓ matched'
                            : seasonWords('shortWithout', { metres: metres(totals.shortfallMetres) })}
                      </td>
                      <td>
                        {film
                          ? withDays(
                              filmNextWords(film, {
                                readingLabel,
                                workWords: (work) => lineWords(work, data.drills),
                              }),
                            )
                          : seasonWords('nothingPressing')}
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
            <p className="caution">{seasonWords('whateverDoneAid')}</p>
          </>
        )}
      </main>
    </div>
  );
}
