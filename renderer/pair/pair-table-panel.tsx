import { useEffect, useMemo, useState } from 'react';
import type { PairPart } from '#core/compare/pair-part';
import type { PairRow, PairTable, StrokeChoice } from '#core/compare/pair-table';
import type { Reading } from '#core/measures/reading';
import { doubtsInWords } from '#core/measures/doubtful';
import { formatReading, readingLine } from '#core/measures/format-reading';
import type { OpenSwim } from '../open-swim/open-swim';
import { KickDoubtCaution } from '../export/kick-doubt-caution';
import { groupWords } from '../readings/group-words';
import type { ReadingsOf } from '../open-swim/readings-reader';
import { background } from '../readings/window-background';
import { arrangeDifferences, type DifferenceGroup } from './arrange-differences';
import { differenceText, unlikeSentence, unlikeWords, verdictWords } from './difference-words';
import { usePair, usePairPart } from './pair-session';
import { VerdictSign } from './verdict-sign';
import { pairWords } from '#core/words/pair';

const strokeWords: Readonly<Record<StrokeChoice, string>> = {
  all: '',
  breathing: pairWords('breathingStrokes'),
  'not-breathing': pairWords('strokesWithoutBreath'),
};

function of({ known }: OpenSwim, { swim }: PairPart): ReadingsOf {
  const { swimmer, markingError } = known.getState();
  return { swim, swimmer, markingError };
}

/** Both swims reading by reading, and whether each difference is real. */
export function PairTablePanel() {
  const session = usePair();
  const a = usePairPart(0);
  const b = usePairPart(1);
  const [table, setTable] = useState<PairTable | null>(null);
  // what stands there stays until the two were measured again; a question that a newer one replaces is dropped
  useEffect(() => {
    const leaving = new AbortController();
    const asked = [of(session.swims[0], a), of(session.swims[1], b)] as const;
    void background.ask('pair', asked, leaving.signal).then((found) => {
      if (found) setTable(found);
    });
    return () => leaving.abort();
  }, [session, a, b]);
  const groups = useMemo(() => arrangeDifferences(table?.rows ?? []), [table]);
  const kicks = table?.rows.find(({ definition }) => definition.id === 'kick-frequency');
  const clear = table?.rows.filter(({ verdict }) => verdict === 'clear').length ?? 0;
  const assumed = table?.rows.some(
    ({ first }) => first.status === 'computed' && first.notes.includes('marking-error-assumed'),
  );
  return (
    <aside className="pair-table" aria-label={pairWords('differences')}>
      <header>
        <h2>{`B − A`}</h2>
        <p>
          {table
            ? pairWords('clearCompared', { clear, rows: table.rows.length })
            : pairWords('measuringBoth')}
        </p>
      </header>
      {table && table.unlike.length > 0 && (
        <ul className="pair-unlike" aria-label={pairWords('notAlike2')}>
          {table.unlike.map((each) => (
            <li key={each.kind}>{unlikeSentence(each, [a.swim.card, b.swim.card])}</li>
          ))}
        </ul>
      )}
      {kicks && (
        <>
          <KickDoubtCaution readings={[kicks.first]} slowdown={a.swim.clip.slowdown.factor} of="A" />
          <KickDoubtCaution readings={[kicks.second]} slowdown={b.swim.clip.slowdown.factor} of="B" />
        </>
      )}
      {table && groups.length === 0 && <p className="pair-nothing">{pairWords('nothingCanCompared')}</p>}
      {groups.map((each) => (
        <Group key={each.group} group={each} />
      ))}
      <p className="readings-foot">
        {pairWords('clearZeroLies', {
          value: assumed ? ` ${pairWords('assumedMarkingError')}` : '',
          value2: table?.sameSetUp ? pairWords('bothShareOne') : '',
        })}
      </p>
    </aside>
  );
}

function Group({ group: { group, first, more } }: { readonly group: DifferenceGroup }) {
  const [open, setOpen] = useState(false);
  const rows = open ? [...first, ...more] : first;
  return (
    <section aria-labelledby={`pair-group-${group}`}>
      <h3 id={`pair-group-${group}`}>{groupWords[group]}</h3>
      {rows.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{pairWords('reading')}</th>
              <th scope="col">{`A`}</th>
              <th scope="col">{`B`}</th>
              <th scope="col">{`B − A`}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={`${row.definition.id} ${row.strokes}`} row={row} />
            ))}
          </tbody>
        </table>
      )}
      {more.length > 0 && (
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? pairWords('fewer') : pairWords('more', { more: more.length })}
        </button>
      )}
    </section>
  );
}

function Row({ row }: { readonly row: PairRow }) {
  const { definition, strokes, first, second, verdict, because } = row;
  const text = differenceText(row);
  return (
    <tr
      className={`verdict-${verdict}`}
      data-reading={definition.id}
      data-strokes={strokes}
      data-verdict={verdict}
    >
      <th scope="row" title={definition.definition}>
        {definition.label}
        {strokes !== 'all' && <small>{strokeWords[strokes]}</small>}
      </th>
      <td>
        <Value reading={first} digits={definition.digits} />
      </td>
      <td>
        <Value reading={second} digits={definition.digits} />
      </td>
      <td data-difference={row.difference?.value}>
        {text && (
          <span className="pair-difference">
            <strong>{text.value}</strong> <span className="spread">{text.spread}</span>
            {text.doubtful && <em className="pair-doubtful">{text.doubt}</em>}
          </span>
        )}
        <span className="pair-verdict">
          <VerdictSign verdict={verdict} />
          {verdict === 'unlike' ? `unlike: ${unlikeWords(because)}` : verdictWords[verdict]}
        </span>
      </td>
    </tr>
  );
}

function Value({ reading, digits }: { readonly reading: Reading; readonly digits: number }) {
  if (reading.status === 'missing') return <span title={pairWords('notHadFromMarks')}>–</span>;
  const text = formatReading(reading, digits);
  return (
    <span title={[readingLine(text), ...doubtsInWords(reading)].join(' · ')}>
      {text.value} <small>{text.unit}</small>
      {text.doubtful && <em className="pair-doubtful">{text.doubt}</em>}
    </span>
  );
}
