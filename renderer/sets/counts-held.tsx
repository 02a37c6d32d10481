import { useMemo } from 'react';
import { countsHeld } from '#core/practice/count-held';
import type { Practice } from '#core/practice/practice-schema';
import type { Squad } from '#core/swim-file/squad-schema';

interface Props {
  readonly practice: Practice;
  readonly squad: Squad;
}

/** Whether the slow count was held at full effort, repeat by repeat. */
export function CountsHeld({ practice, squad }: Props) {
  const { compared, notCompared } = useMemo(() => countsHeld(practice), [practice]);
  const nameOf = (id: string | null): string =>
    squad.swimmers.find((each) => each.id === id)?.name ?? 'Not named';
  if (compared.length + notCompared.length === 0) return null;
  return (
    <section className="counts-held">
      <h2>Count at full effort</h2>
      <ul>
        {compared.map((each) => (
          <li key={each.entryId} data-held={each.verdict}>
            {each.verdict === 'held' ? '✓' : '△'} {nameOf(each.swimmerId)} <strong>{each.verdict}</strong> the
            count: {each.fullCount} at full effort, {each.slowCount} slow.
          </li>
        ))}
      </ul>
      {notCompared.length > 0 && (
        <p>
          {notCompared.length} at full effort can’t be judged yet: a count, or a slow repeat of the same work
          with one, is missing.
        </p>
      )}
    </section>
  );
}
