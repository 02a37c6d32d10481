import { useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import { neverCompared } from '#core/measures/never-compared';
import { targetAdvice } from '#core/practice/target-advice';
import { targetHistory, targetInForce } from '#core/swim-file/target-in-force';
import { useStore } from 'zustand';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { dayWords } from '#core/swim-file/card-words';
import { isoDayOf } from '../card/remembered-card';
import { bandWords } from '#core/measures/target-mark';
import { BandFields } from './band-fields';
import { writeTarget } from './write-target';
import './targets.css';
import { targetsWords } from '#core/words/targets';

interface Props {
  readonly reading: string;
  /** Unit as it is printed. */
  readonly unit: string;
}

/** The swimmer's band for one reading: set, changed, given up; and what was aimed at before. */
export function ReadingTarget({ reading, unit }: Props) {
  const session = useOpenSwim();
  const swimmer = useStore(session.known, (state) => state.swimmer);
  const card = useSwim((swim) => swim.card);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [round, setRound] = useState(0);
  if (neverCompared(reading)) return <p className="target-none">{targetsWords('noTargetCanSet')}</p>;
  if (!swimmer) return <p className="target-none">{targetsWords('sayCardWhoSwims')}</p>;
  const target = targetInForce(swimmer, reading);
  const [, ...before] = targetHistory(swimmer, reading);
  const advice = target ? null : targetAdvice(reading, card);
  const set = async (low: number | null, high: number | null): Promise<void> => {
    const from = isoDayOf(Date.now());
    const written = await writeTarget(session.host, swimmer.id, { reading, low, high, from });
    setTrouble(written.ok ? null : written.error);
    if (!written.ok) return;
    const { squad } = session.squad.getState();
    if (squad)
      session.squad.setState({
        squad: {
          ...squad,
          swimmers: squad.swimmers.map((each) => (each.id === swimmer.id ? written.value : each)),
        },
      });
    session.known.setState({ swimmer: written.value });
    setRound((each) => each + 1);
    session.say(
      low === null && high === null
        ? targetsWords('noTargetAnyMore', { name: swimmer.name })
        : targetsWords('target', { name: swimmer.name, band: bandWords(low, high), unit }),
    );
  };
  return (
    <div className="reading-target">
      <BandFields
        key={round}
        unit={unit}
        low={target?.low ?? null}
        high={target?.high ?? null}
        onKeep={(low, high) => void set(low, high)}
      />
      {advice && (
        <button type="button" onClick={() => void set(advice.low, advice.high)}>
          {targetsWords('take', { band: bandWords(advice.low, advice.high), unit, why: advice.why })}
        </button>
      )}
      {target && (
        <button type="button" onClick={() => void set(null, null)}>
          {targetsWords('giveUp')}
        </button>
      )}
      {trouble && (
        <p role="alert">
          {errorWords(trouble).what} {errorWords(trouble).todo}
        </p>
      )}
      {target?.from && <small>{targetsWords('since', { day: dayWords(target.from) })}</small>}
      {before.length > 0 && (
        <small>
          {targetsWords('before', {
            before: before
              .map(
                ({ low, high, from }) =>
                  `${low === null && high === null ? 'none' : bandWords(low, high)}${from ? ` ${targetsWords('from', { day: dayWords(from) })}` : ''}`,
              )
              .join('; '),
          })}
        </small>
      )}
    </div>
  );
}
