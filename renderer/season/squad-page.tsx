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

interface Props {
  readonly data: SeasonData;
  readonly today: string;
}

/** Days of practice looked back on; our own choices. */
const periods = [
  [28, 'last 4 weeks'],
  [84, 'last 12 weeks'],
  [365, 'last year'],
] as const;
const metres = (value: number): string => `${Math.round(value).toLocaleString()} m`;

function filmedWords({ lastFilmed, daysSinceFilm }: SquadRow): string {
  if (lastFilmed === null) return 'Never filmed';
  if (daysSinceFilm === 0) return 'Today';
  return `${daysSinceFilm} ${daysSinceFilm === 1 ? 'day' : 'days'} ago`;
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
      <PageBar title="Season" />
      <main>
        {data.squad.swimmers.length === 0 ? (
          <section className="season-empty">
            <h2>No swimmers yet</h2>
            <p>
              A swimmer comes into the squad with the first swim that names them. Then this page says who has
              not been filmed for a while, and whether what is swum with aids is matched by as much without.
            </p>
          </section>
        ) : (
          <>
            <p className="season-lead">
              Longest without film first. Open a swimmer to see any reading over the season.
              <label>
                Metres of the
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
                  <th scope="col">Swimmer</th>
                  <th scope="col">Last filmed</th>
                  <th scope="col">Logged with aids</th>
                  <th scope="col">Without</th>
                  <th scope="col">Balance</th>
                  <th scope="col">What to film next</th>
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
                          ? 'nothing logged'
                          : totals.matched
                            ? '✓ matched'
                            : `▲ ${metres(totals.shortfallMetres)} short without`}
                      </td>
                      <td>
                        {film
                          ? withDays(
                              filmNextWords(film, {
                                readingLabel,
                                workWords: (work) => lineWords(work, data.drills),
                              }),
                            )
                          : 'Nothing pressing'}
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
            <p className="caution">
              Whatever is done with an aid is matched by as much without: common practice, no source. Film a
              minor only with the guardian’s written consent; nobody goes under water longer or farther for a
              film.
            </p>
          </>
        )}
      </main>
    </div>
  );
}
