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
import { setsWords } from '#core/words/sets';
import { rich } from '../ui/rich';

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
    <aside className="totals" aria-label={setsWords('totals')}>
      <div className="totals-choice">
        <label>
          {setsWords('for')}
          <select value={who ?? ''} onChange={(event) => setWho(event.target.value || null)}>
            <option value="">{setsWords('wholeCard')}</option>
            {swimmers.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          {setsWords('what2')}
          <select value={basis} onChange={(event) => setBasis(event.target.value as Basis)}>
            <option value="planned">{setsWords('planned')}</option>
            <option value="logged">{setsWords('logged2')}</option>
          </select>
        </label>
      </div>
      <p className="totals-metres">
        <strong>{metresWords(totals.metres)}</strong>
        {totals.kickMetresBetween > 0 &&
          ` ${setsWords('kickBetweenMetres', { metres: metresWords(totals.kickMetresBetween) })}`}
      </p>
      <AidBalance totals={totals} />
      <h2>{setsWords('leftRight')}</h2>
      <ArmBalance totals={totals} />
      {totals.metresBySide.size > 1 && (
        <p>
          {[...totals.metresBySide]
            .map(([side, metres]) => `${metresWords(metres)} ${sideWords[side]}`)
            .join(', ')}
        </p>
      )}
      <h2>{setsWords('time2')}</h2>
      <p>
        {rich(
          setsWords.parts('aboutDuration', {
            duration: durationWords(time.seconds),
            b: (inside) => <strong>{inside}</strong>,
          }),
        )}
        {time.fromPaceSeconds > 0 &&
          (practice.pace
            ? setsWords('fromYourPace', { duration: durationWords(time.fromPaceSeconds) })
            : setsWords('fromAssumedPace', { duration: durationWords(time.fromPaceSeconds) }))}
        .
      </p>
      <PaceForm pace={pace} onChange={onPace} />
      {time.tightItemIds.length > 0 && (
        <p>
          {setsWords('atPaceSendOff', {
            flatMap: practice.items
              .flatMap(({ id }, i) =>
                time.tightItemIds.includes(id) ? [setsWords('itemI', { i: i + 1 })] : [],
              )
              .join(', '),
          })}
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
      <h2>{setsWords('withoutAids')}</h2>
      <dl className="balance">
        <dt>{setsWords('with2')}</dt>
        <dd>
          <meter min={0} max={most} value={aidedMetres} aria-label={setsWords('metresAids')} />{' '}
          {metresWords(aidedMetres)}
        </dd>
        <dt>{setsWords('without')}</dt>
        <dd>
          <meter min={0} max={most} value={unaidedMetres} aria-label={setsWords('metresWithoutAids')} />{' '}
          {metresWords(unaidedMetres)}
        </dd>
      </dl>
      <p data-balance={matched ? 'matched' : 'short'}>
        {aidedMetres === 0
          ? setsWords('nothingSwumAids')
          : matched
            ? setsWords('matchedMuchWithout')
            : setsWords('withoutAidsMissingMatch', { metres: metresWords(shortfallMetres) })}
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
                  {setsWords('withoutMissing', {
                    sentence: sentence(phrase),
                    metres: metresWords(each.shortfallMetres),
                  })}
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
  if (right + left === 0 && uncountedRepeats === 0) return <p>{setsWords('noOneArmStrokes')}</p>;
  return (
    <p data-even={even === null ? 'unknown' : even}>
      {setsWords('rightLeft', { right, left })} {even === true && '✓ Even.'}
      {even === false &&
        (right > left
          ? setsWords('moreRight', { right: Math.abs(right - left) })
          : setsWords('moreLeft', { right: Math.abs(right - left) }))}
      {even === null && setsWords('repeatsHaveNo', { uncountedRepeats })}
    </p>
  );
}
