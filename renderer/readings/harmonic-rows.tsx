import { type ReactNode, useId, useState } from 'react';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { pluralWords } from '#core/marks/mark-words';
import type { ReadingRowData } from './arrange-readings';
import { readingsWords } from '#core/words/readings';

interface Props {
  readonly rows: readonly ReadingRowData[];
  readonly list: (rows: readonly ReadingRowData[]) => ReactNode;
}

/** Harmonics of one landmark at a time: all nine at once would drown the group they belong to. */
export function HarmonicRows({ rows, list }: Props) {
  const id = useId();
  const [chosen, setChosen] = useState<LandmarkName | ''>('');
  const of = (name: LandmarkName): readonly ReadingRowData[] =>
    rows.filter(({ definition }) => definition.id.endsWith(`-${name}`));
  const there = landmarkNames.filter((name) => of(name).length > 0);
  return (
    <>
      <p className="harmonic-choice">
        <label htmlFor={id}>{readingsWords('harmonics')}</label>
        <select
          id={id}
          value={chosen}
          onChange={(event) => setChosen(landmarkNames.find((name) => name === event.target.value) ?? '')}
        >
          <option value="">{readingsWords('choosePoint')}</option>
          {there.map((name) => (
            <option key={name} value={name}>
              {pluralWords[name]}
            </option>
          ))}
        </select>
      </p>
      {chosen && <ul>{list(of(chosen))}</ul>}
    </>
  );
}
