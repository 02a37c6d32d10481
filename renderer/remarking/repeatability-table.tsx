import { type EventKind, eventKinds } from '#core/marks/event-kind';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { eventWords, landmarkWords } from '#core/marks/mark-words';
import type { CoachFile } from '#core/swim-file/coach-file';
import {
  coachMarkingError,
  type CoachRepeatability,
  coachRepeatability,
} from '#core/uncertainty/coach-marking-error';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { pairsToTrust } from '#core/uncertainty/remarking';
import { remarkingWords } from '#core/words/remarking';

type Row = Pick<CoachRepeatability, 'item' | 'axis'>;

/** An instant is told in time and a point in pixels: the shoulder is the name of one of each. */
const kindOf = ({ item, axis }: Row): EventKind | undefined =>
  axis === 'time' ? eventKinds.find((kind) => kind === item) : undefined;
const landmarkOf = ({ item, axis }: Row): LandmarkName | undefined =>
  axis === 'time' ? undefined : landmarkNames.find((name) => name === item);

const axisWords = { time: '', x: remarkingWords('alongPicture'), y: remarkingWords('upDown') } as const;

function itemWords(row: CoachRepeatability): string {
  const { item, axis, of } = row;
  const kind = kindOf(row);
  const landmark = landmarkOf(row);
  const name = kind ? eventWords[kind] : landmark ? landmarkWords[landmark] : item;
  return `${name}${axisWords[axis]}${of === 'followed' ? ', followed' : ''}`;
}

/** What intervals take for one such mark, in the table's unit (ms or px). */
function usedSd(row: CoachRepeatability, error: MarkingError): number | null {
  const kind = kindOf(row);
  if (kind) return 1000 * error.eventSd[kind];
  const landmark = landmarkOf(row);
  if (!landmark) return null;
  return row.of === 'followed' ? error.followedSd[landmark] : error.landmarkSd[landmark];
}

/** Where a trusted figure comes from: a followed point is never held to be better than a marked one. */
function basisWords(row: CoachRepeatability, error: MarkingError): string {
  const landmark = landmarkOf(row);
  const bounded =
    row.of === 'followed' &&
    landmark !== undefined &&
    error.followedSd[landmark] === error.landmarkSd[landmark];
  return bounded ? remarkingWords('heldNoBetter') : 'measured';
}

function biasWords(row: CoachRepeatability, value: number): string {
  const size = Math.abs(value).toFixed(1);
  if (Number(size) === 0) return remarkingWords('noneSeen');
  const way = { time: ['later', 'earlier'], x: ['right', 'left'], y: ['lower', 'higher'] } as const;
  return `${size} ${row.axis === 'time' ? 'ms' : 'px'} ${way[row.axis][value > 0 ? 0 : 1]}`;
}

interface Props {
  readonly coach: CoachFile;
  /** Height of the picture that pixels are told for. */
  readonly pictureHeight: number;
}

/** How well the coach repeats each kind of mark, and what the intervals use for it. */
export function RepeatabilityTable({ coach, pictureHeight }: Props) {
  const rows = coachRepeatability(coach, pictureHeight);
  const error = coachMarkingError(coach, pictureHeight);
  if (rows.length === 0) return <p>{remarkingWords('nothingHasBeen')}</p>;
  return (
    <div className="remark-table">
      <table>
        <thead>
          <tr>
            <th scope="col">{remarkingWords('mark2')}</th>
            <th scope="col">{remarkingWords('pairs')}</th>
            <th scope="col" title={remarkingWords('sdDifferences2')}>
              {remarkingWords('typicalError')}
            </th>
            <th scope="col" title={remarkingWords('meanSecondMinus')}>
              {remarkingWords('secondMark')}
            </th>
            <th scope="col" title={remarkingWords('mdc951962Sem')}>
              {remarkingWords('leastRealChange')}
            </th>
            <th scope="col">{remarkingWords('intervals')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const factor = row.axis === 'time' ? 1000 : 1;
            const unit = row.axis === 'time' ? 'ms' : 'px';
            const { found } = row;
            const trusted = found !== null && !found.tooFew;
            const used = usedSd(row, error);
            return (
              <tr key={`${row.item}${row.axis}${row.of}`} data-item={`${row.item} ${row.axis} ${row.of}`}>
                <th scope="row">{itemWords(row)}</th>
                <td>{row.pairs}</td>
                <td>{found ? `${(factor * found.typicalError).toFixed(1)} ${unit}` : '–'}</td>
                <td>{found ? biasWords(row, factor * found.bias) : '–'}</td>
                <td>{found ? `${(factor * found.leastRealChange).toFixed(1)} ${unit}` : '–'}</td>
                <td className={trusted ? undefined : 'remark-few'}>
                  {used === null
                    ? '–'
                    : `${used.toFixed(1)} ${unit}, ${trusted ? basisWords(row, error) : 'assumed'}`}
                  {!trusted && <small>{remarkingWords('tooFewTrustPairs', { pairsToTrust })}</small>}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
