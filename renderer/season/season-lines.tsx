import { symbol } from 'd3-shape';
import { useId } from 'react';
import type { Drill } from '#core/practice/drill-schema';
import { seasonChange, seasonChangeWords, type SeasonLine } from '#core/practice/season-change';
import { dayWords } from '#core/swim-file/card-words';
import { lineSymbols } from './season-plot';
import { figuresFor, lineWords } from './season-words';
import { seasonWords } from '#core/words/season';

interface Props {
  readonly lines: readonly SeasonLine[];
  readonly chosen: number;
  readonly drills: readonly Drill[];
  readonly onChoose: (at: number) => void;
}

/** The change of a line in words, with days as the coach writes them. */
function changeWords(line: SeasonLine): {
  readonly words: string;
  readonly clear: boolean;
  readonly rests: string;
} {
  const change = seasonChange(line);
  if (!change) return { words: '', clear: false, rests: '' };
  if (change.status === 'one-day-only')
    return {
      words: seasonWords('filmedOnlySecond', { day: dayWords(change.day) }),
      clear: false,
      rests: '',
    };
  const half = change.high - change.value;
  return {
    words: `${seasonChangeWords({ ...change, since: dayWords(change.since) }, figuresFor(half))} ${line.unit}`,
    clear: change.verdict === 'clear',
    rests:
      change.rests === 'marking-and-cycles'
        ? seasonWords('judgedMarkingError')
        : seasonWords('judgedMarkingErrorAlone'),
  };
}

/** One entry a way of swimming: its shape in the plot, and whether anything has changed. Never one line for two ways. */
export function SeasonLines({ lines, chosen, drills, onChoose }: Props) {
  const group = useId();
  return (
    <fieldset className="season-lines">
      <legend>{seasonWords('clearChangeSince')}</legend>
      {lines.map((line, at) => {
        const { words, clear, rests } = changeWords(line);
        const shape = symbol(lineSymbols[at % lineSymbols.length], 90)() ?? '';
        return (
          <label
            key={`${line.points[0]?.swimId} ${line.unit}`}
            className={at === chosen ? 'chosen' : undefined}
          >
            <input type="radio" name={group} checked={at === chosen} onChange={() => onChoose(at)} />
            <svg viewBox="-9 -9 18 18" width="18" height="18" aria-hidden="true">
              <path d={shape} />
            </svg>
            <span>
              <strong>{lineWords(line.work, drills)}</strong>
              <small>{seasonWords('swims', { points: line.points.length })}</small>
              <em className={clear ? 'clear' : undefined}>
                {clear ? '● ' : '○ '}
                {words}
              </em>
              {rests && <small>{rests}</small>}
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}
