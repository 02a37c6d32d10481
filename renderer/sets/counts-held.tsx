import { useMemo } from 'react';
import { countsHeld } from '#core/practice/count-held';
import type { Practice } from '#core/practice/practice-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { setsWords } from '#core/words/sets';
import { rich } from '../ui/rich';

interface Props {
  readonly practice: Practice;
  readonly squad: Squad;
}

/** Whether the slow count was held at full effort, repeat by repeat. */
export function CountsHeld({ practice, squad }: Props) {
  const { compared, notCompared } = useMemo(() => countsHeld(practice), [practice]);
  const nameOf = (id: string | null): string =>
    squad.swimmers.find((each) => each.id === id)?.name ?? setsWords('notNamed');
  if (compared.length + notCompared.length === 0) return null;
  return (
    <section className="counts-held">
      <h2>{setsWords('countAtFullEffort')}</h2>
      <ul>
        {compared.map((each) => (
          <li key={each.entryId} data-held={each.verdict}>
            {rich(
              setsWords.parts('countAtFullEffortSlow', {
                value: each.verdict === 'held' ? '✓' : '△',
                nameOf: nameOf(each.swimmerId),
                verdict: each.verdict,
                fullCount: each.fullCount,
                slowCount: each.slowCount,
                b: (inside) => <strong>{inside}</strong>,
              }),
            )}
          </li>
        ))}
      </ul>
      {notCompared.length > 0 && <p>{setsWords('atFullEffort', { notCompared: notCompared.length })}</p>}
    </section>
  );
}
