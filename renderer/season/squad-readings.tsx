import type { Drill } from '#core/practice/drill-schema';
import { lastClearChange, type SeasonLine, seasonLines } from '#core/practice/season-change';
import type { SeasonSwim } from '#core/practice/season-swim';
import { likeKey } from '#core/practice/work';
import { dayWords } from '#core/swim-file/card-words';
import { squadWords } from '#core/words/squad';
import { figuresFor, lineWords, readingLabel, readingText } from './season-words';
import { SparkLine } from './spark-line';

/** Readings shown of each swimmer: what a coach takes in at a glance. Our own choice. */
const shown = 3;

interface Props {
  /** Swims of the swimmer's main way of swimming, as far as they are read; null before the first is. */
  readonly swims: readonly SeasonSwim[] | null;
  readonly pending: boolean;
  /** Ids of the readings the coach sees first for it. */
  readonly pinned: readonly string[];
  readonly drills: readonly Drill[];
}

/** A swimmer's pinned readings as small lines over the season, each with its last clear change. */
export function SquadReadings({ swims, pending, pinned, drills }: Props) {
  const [first] = swims ?? [];
  if (!swims || !first) return <span className="quiet">{squadWords(pending ? 'reading' : 'noReading')}</span>;
  const own = swims.filter(({ work }) => likeKey(work) === likeKey(first.work));
  const lines = pinned
    .flatMap((id) => {
      const [line] = [...seasonLines(own, id)].sort((a, b) => b.points.length - a.points.length);
      return line ? [{ id, line }] : [];
    })
    .slice(0, shown);
  if (lines.length === 0 && !pending) return <span className="quiet">{squadWords('noReading')}</span>;
  return (
    <>
      <small>{lineWords(first.work, drills)}</small>
      <ul className="squad-readings">
        {lines.map(({ id, line }) => (
          <ReadingLine key={id} id={id} line={line} />
        ))}
      </ul>
      {pending && <small>{squadWords('reading')}</small>}
    </>
  );
}

function ReadingLine({ id, line }: { readonly id: string; readonly line: SeasonLine }) {
  const latest = line.points.at(-1);
  if (!latest) return null;
  const { words, clear } = changeWords(line);
  return (
    <li>
      <span>{readingLabel(id)}</span>
      <SparkLine line={line} />
      <b>{readingText(latest.reading)}</b>
      <em className={clear ? 'clear' : undefined}>
        <span aria-hidden="true">{clear ? '● ' : '○ '}</span>
        {words}
      </em>
    </li>
  );
}

function changeWords(line: SeasonLine): { readonly words: string; readonly clear: boolean } {
  const change = lastClearChange(line);
  if (change?.status !== 'compared') return { words: squadWords('oneDay'), clear: false };
  const since = dayWords(change.since);
  const doubt = change.doubtful ? squadWords('doubtful') : '';
  const effort = change.effortDiffers ? squadWords('effort') : '';
  if (change.verdict !== 'clear')
    return { words: `${squadWords('noChange', { since })}${doubt}${effort}`, clear: false };
  const by = figuresFor(change.high - change.value)(change.value);
  const moved = `${change.value > 0 ? '+' : ''}${by} ${line.unit}`;
  return { words: `${squadWords('change', { by: moved, since })}${doubt}${effort}`, clear: true };
}
