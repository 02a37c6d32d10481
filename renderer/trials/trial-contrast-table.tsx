import { doubtOfBoth } from '#core/measures/doubtful';
import { Fragment } from 'react';
import type { Drill } from '#core/practice/drill-schema';
import type { TrialContrast } from '#core/practice/trial-contrast';
import { poolOf, type TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import { trialWarningWords } from '#core/practice/trial-warning';
import type { Squad } from '#core/swim-file/squad-schema';
import { readingLabel } from '../sets/drill-facts';
import { differenceWords, levelWords, poolWords, repeatsWords } from './trial-words';

interface Props {
  readonly trial: Trial;
  readonly rows: readonly TrialRow[];
  readonly contrasts: readonly TrialContrast[];
  readonly squad: Squad;
  readonly own: readonly Drill[];
}

/** Each pair of conditions, reading by reading: the difference, its interval, and whether it is clear yet. */
export function TrialContrastTable({ trial, rows, contrasts, squad, own }: Props) {
  if (rows.length === 0) return null;
  const pools = [...new Set(contrasts.map(({ pool }) => pool))];
  return (
    <section aria-label="Differences" className="trial-contrasts">
      <h2>Differences</h2>
      {contrasts.length === 0 && (
        <p>Nothing can be compared yet: two conditions, swum alike in everything else, are the least.</p>
      )}
      {pools.map((pool) => {
        const first = rows.find((row) => poolOf(row, trial.factor) === pool);
        const like = contrasts.filter((each) => each.pool === pool);
        const warnings = [
          ...new Set(
            like.flatMap((each) => (each.status === 'contrast' ? each.warnings.map(trialWarningWords) : [])),
          ),
        ];
        return (
          <Fragment key={pool}>
            <h3>{first ? poolWords(first, squad, own) : ''}</h3>
            {warnings.length > 0 && (
              <ul className="message trial-warnings" aria-label="What may mislead">
                {warnings.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            )}
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
            <section className="scroll-sideways" tabIndex={0} aria-label="Table of differences">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Reading</th>
                    <th scope="col">From → to</th>
                    <th scope="col">Repeats</th>
                    <th scope="col">Difference (95 %)</th>
                    <th scope="col">Clear?</th>
                    <th scope="col">To settle it</th>
                  </tr>
                </thead>
                <tbody>
                  {like.map((each) => (
                    <ContrastRow
                      key={`${each.readingId} ${each.unit} ${each.first.level} ${each.second.level}`}
                      contrast={each}
                      trial={trial}
                      own={own}
                    />
                  ))}
                </tbody>
              </table>
            </section>
          </Fragment>
        );
      })}
      <p className="caution">
        Interval: Welch’s 95 %, never narrower than marking alone would give. “Clear” says that a difference
        is there, not that it is large enough to matter; with many readings, one in twenty is clear by chance.
      </p>
    </section>
  );
}

interface RowProps {
  readonly contrast: TrialContrast;
  readonly trial: Trial;
  readonly own: readonly Drill[];
}

function ContrastRow({ contrast, trial, own }: RowProps) {
  const first = levelWords(trial.factor, contrast.first.level, own);
  const second = levelWords(trial.factor, contrast.second.level, own);
  const words = contrastWords(contrast, first, second);
  return (
    <tr data-verdict={words.verdict}>
      <th scope="row">{readingLabel(contrast.readingId)}</th>
      <td>
        {first} → {second}
      </td>
      <td className="number">
        {contrast.first.swimIds.length} · {contrast.second.swimIds.length}
      </td>
      <td className="number">{words.difference}</td>
      <td className="number">{words.verdictWords}</td>
      <td>{words.settle}</td>
    </tr>
  );
}

/** A contrast in words, for the table and the page. */
export function contrastWords(
  contrast: TrialContrast,
  first: string,
  second: string,
): {
  readonly verdict: string;
  readonly verdictWords: string;
  readonly difference: string;
  readonly settle: string;
} {
  switch (contrast.status) {
    case 'contrast':
      return {
        verdict: contrast.verdict,
        verdictWords: contrast.verdict === 'clear' ? '● clear' : '○ not yet',
        difference: differenceWords(
          contrast.difference,
          contrast.low,
          contrast.high,
          contrast.unit,
          doubtOfBoth(contrast.first.doubted, contrast.second.doubted),
        ),
        settle: contrast.verdict === 'clear' ? 'Settled.' : repeatsWords(contrast.moreRepeats, first, second),
      };
    case 'too-few':
      return {
        verdict: 'too-few',
        verdictWords: '○ too few',
        difference: '–',
        settle: repeatsWords(contrast.moreRepeats, first, second),
      };
    case 'no-spread':
      return {
        verdict: 'no-spread',
        verdictWords: '○ no spread',
        difference: '–',
        settle: 'All alike to the last digit: are these the same marks?',
      };
  }
}
