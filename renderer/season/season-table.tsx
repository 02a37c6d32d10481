import type { Drill } from '#core/practice/drill-schema';
import type { SeasonLine } from '#core/practice/season-change';
import { addressOf } from '../ui/use-route';
import { dayWords } from '#core/swim-file/card-words';
import { lineWords, readingText } from './season-words';
import { seasonWords } from '#core/words/season';

interface Props {
  readonly lines: readonly SeasonLine[];
  readonly drills: readonly Drill[];
  readonly label: string;
}

/** The numbers behind the plot, latest first; each leads to its swim. */
export function SeasonTable({ lines, drills, label }: Props) {
  const rows = lines
    .flatMap((line) => line.points.map((point) => ({ line, point })))
    .sort((a, b) => (a.point.day < b.point.day ? 1 : a.point.day > b.point.day ? -1 : 0));
  return (
    <table className="season-table">
      <caption className="unseen">{seasonWords('day', { label })}</caption>
      <thead>
        <tr>
          <th scope="col">{seasonWords('day2')}</th>
          <th scope="col">{seasonWords('swum')}</th>
          <th scope="col">{seasonWords('effort')}</th>
          <th scope="col">{label}</th>
          <th scope="col">{seasonWords('cycles')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ line, point }) => (
          <tr key={point.swimId}>
            <th scope="row">
              <a href={addressOf({ screen: 'bench', ids: [point.swimId] })}>{dayWords(point.day)}</a>
            </th>
            <td>{lineWords(line.work, drills)}</td>
            <td>{point.effort ?? seasonWords('notSaid')}</td>
            <td>{readingText(point.reading)}</td>
            <td>{point.reading.cycles > 0 ? point.reading.cycles : '–'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
