import { useState } from 'react';
import type { DrillBook } from '#core/practice/drill-file';
import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import { parsePattern, patternCount, patternFaultWords, patternPhrase } from '#core/practice/stroke-pattern';
import { patternAgainstTarget, patternIsEven } from '#core/practice/usual-pattern';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { targetInForce } from '#core/swim-file/target-in-force';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly item: PracticeItem;
  readonly practice: Practice;
  readonly swimmers: readonly Swimmer[];
  readonly book: DrillBook;
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

/** A stroke pattern in words, the count it implies, and that count against each swimmer's own target. */
export function PatternForm({ item, practice, swimmers, book, onChange }: Props) {
  const { pattern } = item;
  const written = pattern ? patternPhrase(pattern.runs) : '';
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? written;
  const read = text.trim() === '' ? null : parsePattern(text);
  const perMetres = pattern?.perMetres ?? null;
  const keep = (): void => {
    setTyped(null);
    if (typed === null || typed === written) return;
    if (typed.trim() === '') onChange({ pattern: null }, setsWords('dropPattern'));
    else if (read?.ok)
      onChange(
        { pattern: { runs: read.runs, perMetres: pattern ? perMetres : practice.poolMetres } },
        setsWords('changePattern'),
      );
  };
  const count = pattern ? patternCount(pattern, item.distanceMetres) : null;
  const even = pattern ? patternIsEven(pattern, item.distanceMetres) : null;
  return (
    <fieldset className="wide pattern-form">
      <legend>{setsWords('strokePattern')}</legend>
      <label className="two">
        {setsWords('strokesOrder')}
        <input
          value={text}
          maxLength={200}
          placeholder={setsWords('n2Right2Left')}
          aria-invalid={read?.ok === false || undefined}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={() => {
            if (read === null || read.ok) keep();
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && (read === null || read.ok)) keep();
          }}
        />
      </label>
      <label>
        {setsWords('usualOnes')}
        <select
          value=""
          onChange={(event) => {
            const usual = book.patterns.find(({ id }) => id === event.target.value);
            if (!usual) return;
            setTyped(null);
            onChange({ pattern: usual.pattern }, setsWords('choosePattern'));
          }}
        >
          <option value="">{setsWords('choose')}</option>
          {book.patterns.map(({ id, label, source }) => (
            <option key={id} value={id} title={source}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {pattern && (
        <label>
          {setsWords('swumOnce')}
          <select
            value={perMetres ?? 'wall'}
            onChange={(event) =>
              onChange(
                {
                  pattern: {
                    ...pattern,
                    perMetres: event.target.value === 'wall' ? null : Number(event.target.value),
                  },
                },
                setsWords('changePattern'),
              )
            }
          >
            {[...new Set([25, 50, practice.poolMetres, ...(perMetres ? [perMetres] : [])])].map((metres) => (
              <option key={metres} value={metres}>
                {metres} m
              </option>
            ))}
            <option value="wall">{setsWords('overOverWall')}</option>
          </select>
        </label>
      )}
      {read?.ok === false && (
        <p className="wide field-fault" role="alert">
          {patternFaultWords(read.fault)}
        </p>
      )}
      {pattern && (
        <ul className="wide pattern-facts">
          <li>
            {count === null
              ? setsWords('noCountMPattern', { distanceMetres: item.distanceMetres })
              : setsWords('strokesM', { count, distanceMetres: item.distanceMetres })}{' '}
            {even === false && setsWords('rightLeftNot')}
            {even === true && setsWords('rightLeftEven')}
          </li>
          {swimmers.map((swimmer) => (
            <li key={swimmer.id}>{againstTarget(item, practice, swimmer)}</li>
          ))}
        </ul>
      )}
    </fieldset>
  );
}

function againstTarget(item: PracticeItem, practice: Practice, swimmer: Swimmer): string {
  if (!item.pattern) return '';
  const found = patternAgainstTarget(item.pattern, practice.poolMetres, swimmer);
  const target = targetInForce(swimmer, 'stroke-count');
  const band = target ? [target.low ?? '…', target.high ?? '…'].join(' to ') : '';
  switch (found.verdict) {
    case 'no-target':
      return setsWords('noTargetStrokes', { name: swimmer.name });
    case 'no-count':
      return setsWords('patternGivesNo', { name: swimmer.name, poolMetres: practice.poolMetres });
    case 'meets-target':
      return setsWords('lengthTargetSays', { name: swimmer.name, perLength: found.perLength, band });
    case 'below-target':
      return setsWords('lengthFewerThan', { name: swimmer.name, perLength: found.perLength, band });
    case 'above-target':
      return setsWords('lengthMoreThan', { name: swimmer.name, perLength: found.perLength, band });
  }
}
