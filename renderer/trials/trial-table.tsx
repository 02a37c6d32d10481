import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { errorWords } from '#core/host-contract/error-words';
import { doubtsInWords, isDoubtful } from '#core/measures/doubtful';
import type { Drill } from '#core/practice/drill-schema';
import { advisedKickCycles } from '#core/practice/trial-warning';
import type { TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import { type ConditionTags, depths, headPositions, hipPositions } from '#core/swim-file/condition-tags';
import type { Squad } from '#core/swim-file/squad-schema';
import { addressOf } from '../ui/use-route';
import { aidsWords, conditionWords, dayWords } from '#core/swim-file/card-words';
import { readingLabel } from '../sets/drill-facts';
import { levelsAsked } from './levels-asked';
import { poolWords, valueWords } from './trial-words';
import type { ReadSwim } from './use-swim-readings';
import { trialsWords } from '#core/words/trials';

interface Props {
  readonly trial: Trial;
  readonly rows: readonly TrialRow[];
  readonly read: ReadonlyMap<string, ReadSwim>;
  readonly squad: Squad;
  readonly own: readonly Drill[];
  readonly swims: readonly SwimSummary[];
  readonly onChoose: () => void;
  readonly onTags: (swimId: string, tags: ConditionTags) => void;
  readonly onMove: (swimId: string, by: -1 | 1) => void;
  readonly onRemove: (swimId: string) => void;
}

const asked = [
  { of: 'head', label: trialsWords('head'), levels: headPositions },
  { of: 'hips', label: trialsWords('hips'), levels: hipPositions },
  { of: 'depth', label: trialsWords('depth'), levels: depths },
] as const;

/** Every repeat in the order swum: its conditions, its kick cycles, its readings. */
export function TrialTable(props: Props) {
  const { trial, rows, read, swims, onChoose, onTags, onRemove } = props;
  const lost = trial.rows.filter(({ swimId }) => read.get(swimId)?.ok === false);
  if (trial.rows.length === 0)
    return (
      <section className="trial-empty">
        <p>{trialsWords('noRepeatsYet')}</p>
        <button type="button" className="primary" onClick={onChoose}>
          {trialsWords('chooseSwimsMore')}
        </button>
      </section>
    );
  return (
    <section aria-label={trialsWords('repeats')} className="trial-repeats">
      <h2>{trialsWords('repeatsOrderSwum2')}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="scroll-sideways" tabIndex={0} aria-label={trialsWords('tableRepeats')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{trialsWords('order')}</th>
              <th scope="col">{trialsWords('swim')}</th>
              {asked.map(({ of, label }) => (
                <th key={of} scope="col">
                  {label}
                </th>
              ))}
              <th scope="col">{trialsWords('tags')}</th>
              <th scope="col">{trialsWords('aids')}</th>
              <th scope="col">{trialsWords('kickCycles')}</th>
              {trial.readings.map((id) => (
                <th key={id} scope="col">
                  {readingLabel(id)}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">{trialsWords('leaveOut')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, at) => (
              <RepeatRow key={row.swimId} of={props} row={row} at={at} />
            ))}
          </tbody>
        </table>
      </section>
      {cardsDiffer(rows, swims).length > 0 && (
        <p>
          {trialsWords('someCardsSay', { cardsDiffer: cardsDiffer(rows, swims).length })}{' '}
          <button
            type="button"
            onClick={() => {
              for (const { id, card } of cardsDiffer(rows, swims)) onTags(id, card.conditions);
            }}
          >
            {trialsWords('takeCardsWords')}
          </button>
        </p>
      )}
      {lost.map(({ swimId }) => {
        const found = read.get(swimId);
        if (!found || found.ok) return null;
        return (
          <p key={swimId} className="message message-trouble">
            {errorWords(found.error).what}{' '}
            <button type="button" onClick={() => onRemove(swimId)}>
              {trialsWords('leaveOut2')}
            </button>
          </p>
        );
      })}
      <p className="caution">
        {trialsWords('whatMarkingAlone', { advisedKickCycles })}{' '}
        {levelsAsked(rows, trial.factor).length < 2 && trialsWords('twoConditionsLeastCompare')}
      </p>
    </section>
  );
}

interface RowProps {
  readonly of: Props;
  readonly row: TrialRow;
  /** Its place in the order swum, from 0. */
  readonly at: number;
}

function RepeatRow({ of: { trial, rows, squad, own, onTags, onMove, onRemove }, row, at }: RowProps) {
  return (
    <tr>
      <td className="trial-order-cell">
        {at + 1}
        <button
          type="button"
          disabled={at === 0}
          aria-label={trialsWords('repeatEarlier', { at: at + 1 })}
          onClick={() => onMove(row.swimId, -1)}
        >
          ↑
        </button>
        <button
          type="button"
          disabled={at === rows.length - 1}
          aria-label={trialsWords('repeatLater', { at: at + 1 })}
          onClick={() => onMove(row.swimId, 1)}
        >
          ↓
        </button>
      </td>
      <th scope="row">
        <a href={addressOf({ screen: 'bench', ids: [row.swimId] })}>{dayWords(row.day)}</a>
        <small>{poolWords(row, squad, own)}</small>
      </th>
      {asked.map(({ of, levels }) => (
        <td key={of}>
          <select
            aria-label={trialsWords('repeatOf', { of, at: at + 1 })}
            value={row.tags[of] ?? ''}
            onChange={(event) =>
              onTags(row.swimId, {
                ...row.tags,
                [of]: levels.find((each) => each === event.target.value) ?? null,
              })
            }
          >
            <option value="">–</option>
            {levels.map((level) => (
              <option key={level} value={level}>
                {conditionWords(of, level)}
              </option>
            ))}
          </select>
        </td>
      ))}
      <td>{row.tags.free.join(', ')}</td>
      <td>{row.work.aids.length > 0 ? aidsWords([...row.work.aids]) : trialsWords('none')}</td>
      <td className="number">{cyclesWords(row.kickCycles)}</td>
      {trial.readings.map((id) => {
        const found = row.values.get(id);
        return (
          <td key={id} className="number">
            {found ? valueWords(id, found) : '–'}
            {found && isDoubtful(found) && (
              <small className="kick-doubt">{doubtsInWords(found).join('; ')}</small>
            )}
          </td>
        );
      })}
      <td>
        <button
          type="button"
          className="quiet"
          aria-label={trialsWords('leaveRepeatOutAt', { at: at + 1 })}
          onClick={() => onRemove(row.swimId)}
        >
          ✕
        </button>
      </td>
    </tr>
  );
}

function cyclesWords(cycles: number | null): string {
  if (cycles === null) return trialsWords('notMarked');
  return cycles < advisedKickCycles ? trialsWords('few', { cycles }) : `${cycles}`;
}

/** Swims whose card says other conditions than the trial. */
function cardsDiffer(rows: readonly TrialRow[], swims: readonly SwimSummary[]): readonly SwimSummary[] {
  return rows.flatMap(({ swimId, tags }) => {
    const swim = swims.find(({ id }) => id === swimId);
    return swim && JSON.stringify(swim.card.conditions) !== JSON.stringify(tags) ? [swim] : [];
  });
}
