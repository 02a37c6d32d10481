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
import { trialsWords } from '#core/words/trials';

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
    <section aria-label={trialsWords('differences')} className="trial-contrasts">
      <h2>{trialsWords('differences')}</h2>
      {contrasts.length === 0 && <p>{trialsWords('nothingCanCompared')}</p>}
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
              <ul className="message trial-warnings" aria-label={trialsWords('whatMayMislead')}>
                {warnings.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            )}
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
            <section className="scroll-sideways" tabIndex={0} aria-label={trialsWords('tableDifferences')}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">{trialsWords('reading')}</th>
                    <th scope="col">{trialsWords('from')}</th>
                    <th scope="col">{trialsWords('repeats')}</th>
                    <th scope="col">{trialsWords('difference95')}</th>
                    <th scope="col">{trialsWords('clear')}</th>
                    <th scope="col">{trialsWords('settle')}</th>
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
      <p className="caution">{trialsWords('intervalWelchs95')}</p>
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
        verdictWords: contrast.verdict === 'clear' ? '● clear' : trialsWords('notYet'),
        difference: differenceWords(
          contrast.difference,
          contrast.low,
          contrast.high,
          contrast.unit,
          doubtOfBoth(contrast.first.doubted, contrast.second.doubted),
        ),
        settle:
          contrast.verdict === 'clear'
            ? trialsWords('settled')
            : repeatsWords(contrast.moreRepeats, first, second),
      };
    case 'too-few':
      return {
        verdict: 'too-few',
        verdictWords: trialsWords('tooFew'),
        difference: '–',
        settle: repeatsWords(contrast.moreRepeats, first, second),
      };
    case 'no-spread':
      return {
        verdict: 'no-spread',
        verdictWords: trialsWords('noSpread'),
        difference: '–',
        settle: trialsWords('allAlikeLast'),
      };
  }
}
