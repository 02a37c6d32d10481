import { useMemo, useState } from 'react';
import type { Practice } from '#core/practice/practice-schema';
import { assumedPace, type Pace, practiceTime } from '#core/practice/practice-time';
import { type PracticeTotals, practiceTotals } from '#core/practice/practice-totals';
import type { Basis } from '#core/practice/swum-part';
import type { Squad } from '#core/swim-file/squad-schema';
import { drillById } from '#core/practice/drill-library';
import { workPhrase } from '#core/practice/item-phrase';
import { aidWords, sideWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';
import { CountsHeld } from './counts-held';
import { PaceForm } from './pace-form';
import { durationWords, metresWords } from './sets-words';

interface Props {
  readonly practice: Practice;
  readonly squad: Squad;
  readonly onPace: (pace: Pace) => void;
}

/** What the practice adds up to, as it is written: metres, aids against none, left and right, time. */
export function TotalsPanel({ practice, squad, onPace }: Props) {
  const [who, setWho] = useState<string | null>(null);
  const [basis, setBasis] = useState<Basis>('planned');
  const totals = useMemo(() => practiceTotals(practice, who, basis), [practice, who, basis]);
  const pace = practice.pace ?? assumedPace;
  const time = useMemo(() => practiceTime(practice, practice.pace ?? assumedPace), [practice]);
  const swimmers = squad.swimmers.filter(({ id }) => practice.swimmerIds.includes(id));
  return (
    <aside className="totals" aria-label="Totals">
      <div className="totals-choice">
        <label>
          For
          <select value={who ?? ''} onChange={(event) => setWho(event.target.value || null)}>
            <option value="">Whole card</option>
            {swimmers.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          What was
          <select value={basis} onChange={(event) => setBasis(event.target.value as Basis)}>
            <option value="planned">planned</option>
            <option value="logged">logged</option>
          </select>
        </label>
      </div>
      <p className="totals-metres">
        <strong>{metresWords(totals.metres)}</strong>
        {totals.kickMetresBetween > 0 && ` of it ${metresWords(totals.kickMetresBetween)} kick between`}
      </p>
      <AidBalance totals={totals} />
      <h2>Left and right</h2>
      <ArmBalance totals={totals} />
      {totals.metresBySide.size > 1 && (
        <p>
          {[...totals.metresBySide]
            .map(([side, metres]) => `${metresWords(metres)} ${sideWords[side]}`)
            .join(', ')}
        </p>
      )}
      <h2>Time</h2>
      <p>
        About <strong>{durationWords(time.seconds)}</strong>
        {time.fromPaceSeconds > 0 &&
          `, ${durationWords(time.fromPaceSeconds)} of it from ${practice.pace ? 'your' : 'an assumed'} pace`}
        .
      </p>
      <PaceForm pace={pace} onChange={onPace} />
      {time.tightItemIds.length > 0 && (
        <p>
          △ At that pace the send-off of{' '}
          {practice.items
            .flatMap(({ id }, i) => (time.tightItemIds.includes(id) ? [`item ${i + 1}`] : []))
            .join(', ')}{' '}
          is shorter than its swim.
        </p>
      )}
      <CountsHeld practice={practice} squad={squad} />
    </aside>
  );
}

function AidBalance({ totals }: { readonly totals: PracticeTotals }) {
  const { aidedMetres, unaidedMetres, shortfallMetres, matched, metresByAid, byWork } = totals;
  const most = Math.max(aidedMetres, unaidedMetres, 1);
  return (
    <>
      <h2>With and without aids</h2>
      <dl className="balance">
        <dt>With</dt>
        <dd>
          <meter min={0} max={most} value={aidedMetres} aria-label="Metres with aids" />{' '}
          {metresWords(aidedMetres)}
        </dd>
        <dt>Without</dt>
        <dd>
          <meter min={0} max={most} value={unaidedMetres} aria-label="Metres without aids" />{' '}
          {metresWords(unaidedMetres)}
        </dd>
      </dl>
      <p data-balance={matched ? 'matched' : 'short'}>
        {aidedMetres === 0
          ? 'Nothing is swum with aids.'
          : matched
            ? '✓ Matched: as much without as with.'
            : `△ ${metresWords(shortfallMetres)} without aids are missing to match.`}
      </p>
      {metresByAid.size > 0 && (
        <p>
          {[...metresByAid]
            .map(([aid, metres]) => `${sentence(aidWords[aid])} ${metresWords(metres)}`)
            .join(', ')}
        </p>
      )}
      {byWork.some((each) => !each.matched) && (
        <ul>
          {byWork
            .filter((each) => !each.matched)
            .map((each) => {
              const work = { ...each.work, aids: [] };
              const name = drillById(work.drill, [])?.name ?? null;
              const phrase = workPhrase(work, name);
              return (
                <li key={JSON.stringify(work)}>
                  {sentence(phrase)}: {metresWords(each.shortfallMetres)} without missing
                </li>
              );
            })}
        </ul>
      )}
    </>
  );
}

function ArmBalance({ totals }: { readonly totals: PracticeTotals }) {
  const { right, left, uncountedRepeats, even } = totals.arms;
  if (right + left === 0 && uncountedRepeats === 0) return <p>No one-arm strokes.</p>;
  return (
    <p data-even={even === null ? 'unknown' : even}>
      {right} right, {left} left. {even === true && '✓ Even.'}
      {even === false && `△ ${Math.abs(right - left)} more ${right > left ? 'right' : 'left'}.`}
      {even === null &&
        `${uncountedRepeats} ${uncountedRepeats === 1 ? 'repeat has' : 'repeats have'} no count yet.`}
    </p>
  );
}
