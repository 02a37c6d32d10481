import { catalogue } from '#core/measures/families';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { targetInForce } from '#core/swim-file/target-in-force';
import { dayWords } from '#core/swim-file/card-words';
import { readingLabel } from './season-words';
import { seasonWords } from '#core/words/season';

type Target = Swimmer['targets'][number];

function bandWords({ low, high }: Target): string {
  const text = (value: number): string => String(value).replace('-', '−');
  if (high === null)
    return low === null ? seasonWords('givenUp') : seasonWords('atLeast', { text: text(low) });
  return low === null
    ? seasonWords('atMost', { text: text(high) })
    : seasonWords('to', { text: text(low), text2: text(high) });
}

/** Every band the coach set, by reading, the latest first; the one that rules is said to. */
export function TargetHistory({ swimmer }: { readonly swimmer: Swimmer }) {
  const order = new Map(catalogue.map(({ id }, at) => [id, at]));
  const readings = [...new Set(swimmer.targets.map(({ reading }) => reading))].sort(
    (a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0),
  );
  if (readings.length === 0)
    return <p className="caution">{seasonWords('noTargetSetOne', { name: swimmer.name })}</p>;
  return (
    <dl className="target-history">
      {readings.map((reading) => {
        const rules = targetInForce(swimmer, reading);
        const history = swimmer.targets
          .filter((each) => each.reading === reading)
          .sort((a, b) => ((a.from ?? '') < (b.from ?? '') ? 1 : -1));
        return (
          <div key={reading}>
            <dt>{readingLabel(reading)}</dt>
            {history.map((target) => (
              <dd key={`${target.from} ${target.low} ${target.high}`}>
                {bandWords(target)}{' '}
                <small>
                  {target.from
                    ? seasonWords('since', { day: dayWords(target.from) })
                    : seasonWords('sinceBeforeDays')}
                  {target === rules ? seasonWords('force') : ''}
                </small>
              </dd>
            ))}
          </div>
        );
      })}
    </dl>
  );
}
