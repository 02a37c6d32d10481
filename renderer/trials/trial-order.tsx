import { useState } from 'react';
import { underwaterCautions } from '#core/practice/caution';
import type { Drill } from '#core/practice/drill-schema';
import { type TrialPlanFault, trialPlan } from '#core/practice/trial-plan';
import { levelOf, type TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import { advisedKickCycles } from '#core/practice/trial-warning';
import { depths, headPositions, hipPositions } from '#core/swim-file/condition-tags';
import { sentence } from '../card/sentence';
import { CautionsList } from '../sets/cautions-list';
import { levelsAsked } from './levels-asked';
import { levelWords } from './trial-words';
import { useTip } from '../ui/use-tip';
import { trialsWords } from '#core/words/trials';
import { rich } from '../ui/rich';

interface Props {
  readonly trial: Trial;
  readonly rows: readonly TrialRow[];
  readonly own: readonly Drill[];
  readonly onChange: (said: Partial<Trial>, name: string) => void;
  /** Makes a practice of the planned order. */
  readonly onPractice: () => void;
}

/** A whole number from the machine's own randomness: the one place where chance comes in. */
function drawSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}

/** A random order to swim the repeats in, held against the order they were swum in. */
export function TrialOrder({ trial, rows, own, onChange, onPractice }: Props) {
  const tip = useTip();
  const { factor, plan } = trial;
  const present = levelsAsked(rows, factor);
  const [text, setText] = useState<string | null>(null);
  const [each, setEach] = useState(plan?.repeatsEach ?? 4);
  const offered = plan?.conditions ?? (present.length >= 2 ? present : usual(trial));
  // a level written in the coach's words is that level, so that it can be held against what was swum
  const levels = [...new Set([...offered, ...present, ...usual(trial)])];
  const levelNamed = (words: string): string =>
    levels.find(
      (level) => levelWords(factor, level, own).toLocaleLowerCase() === words.toLocaleLowerCase(),
    ) ?? words;
  const written = text ?? offered.map((level) => levelWords(factor, level, own)).join(', ');
  const conditions =
    text === null
      ? offered
      : text
          .split(',')
          .map((part) => levelNamed(part.trim().slice(0, 60)))
          .filter(Boolean);
  const [fault, setFault] = useState<string | null>(null);
  const draw = (): void => {
    const seed = drawSeed();
    const asked = trialPlan(conditions, each, seed);
    setFault(asked.ok ? null : faultWords(asked.fault));
    if (!asked.ok) return;
    onChange({ plan: { seed, conditions: [...conditions], repeatsEach: each } }, trialsWords('drawOrder'));
    setText(null);
  };
  const planned = plan ? trialPlan(plan.conditions, plan.repeatsEach, plan.seed) : null;
  const swum = rows.map((row) => levelOf(row, factor));
  return (
    <section aria-label={trialsWords('orderRepeats')} className="trial-order">
      <h2>{trialsWords('orderRepeats')}</h2>
      <p>{trialsWords('tirednessLearningMislead')}</p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          draw();
        }}
      >
        <label className="order-conditions">
          {trialsWords('conditionsCommasBetween')}
          <input value={written} maxLength={600} onChange={(event) => setText(event.target.value)} />
        </label>
        <label>
          {trialsWords('repeatsEach')}
          <input
            type="number"
            min="1"
            max="50"
            step="1"
            value={each}
            onChange={(event) => event.target.valueAsNumber >= 1 && setEach(event.target.valueAsNumber)}
          />
        </label>
        <button type="submit">{plan ? trialsWords('drawAnotherOrder') : trialsWords('drawOrder2')}</button>
        {plan && (
          <button type="button" onClick={onPractice} title={tip('practice', trialsWords('oneItemRepeat'))}>
            {trialsWords('putPractice')}
          </button>
        )}
        {plan && (
          <button
            type="button"
            className="quiet"
            onClick={() => onChange({ plan: null }, trialsWords('dropPlannedOrder'))}
          >
            {trialsWords('drop')}
          </button>
        )}
      </form>
      {fault && (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      {(planned?.ok || rows.length > 0) && (
        <ol className="order-list">
          {Array.from({ length: Math.max(planned?.ok ? planned.repeats.length : 0, swum.length) }, (_, i) => {
            const want = planned?.ok ? (planned.repeats[i]?.condition ?? null) : null;
            const was = swum[i];
            const differs = want !== null && was != null && want !== was;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a place in the order is what it is
              <li key={i} data-differs={differs || undefined}>
                {want !== null && (
                  <span>
                    {rich(
                      trialsWords.parts('planned', {
                        level: levelWords(factor, want, own),
                        b: (inside) => <b>{inside}</b>,
                      }),
                    )}
                  </span>
                )}
                {i < swum.length && (
                  <span>
                    {rich(
                      trialsWords.parts('swum', {
                        level: was == null ? trialsWords('notSaid') : levelWords(factor, was, own),
                        value: differs ? ` ${trialsWords('otherThanPlanned')}` : '',
                        b: (inside) => <b>{inside}</b>,
                      }),
                    )}
                  </span>
                )}
              </li>
            );
          })}
        </ol>
      )}
      <p>{trialsWords('eachRepeatKick', { advisedKickCycles })}</p>
      <CautionsList codes={underwaterCautions} />
    </section>
  );
}

/** Conditions to begin with when fewer than two were swum yet. */
function usual({ factor }: Trial): readonly string[] {
  switch (factor.of) {
    case 'head':
      return headPositions;
    case 'hips':
      return hipPositions;
    case 'depth':
      return depths.slice(1, 3);
    case 'arms':
      return ['stretched', 'folded'];
    case 'sideUp':
      return ['front', 'back'];
    case 'tag':
      return [factor.tag, trialsWords('not', { tag: factor.tag })];
    case 'drill':
    case 'aids':
      return [];
  }
}

function faultWords(fault: TrialPlanFault): string {
  switch (fault.code) {
    case 'too-few-conditions':
      return trialsWords('twoConditionsLeast');
    case 'condition-twice':
      return sentence(trialsWords('namedTwice', { condition: fault.condition }));
    case 'repeats-out-of-range':
      return trialsWords('oneFiftyRepeats');
    case 'seed-not-whole':
      return trialsWords('orderCouldNot');
  }
}
