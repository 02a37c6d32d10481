import { useState } from 'react';
import type { DrillBook } from '#core/practice/drill-file';
import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import { parsePattern, patternCount, patternFaultWords, patternPhrase } from '#core/practice/stroke-pattern';
import { patternAgainstTarget, patternIsEven } from '#core/practice/usual-pattern';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { targetInForce } from '#core/swim-file/target-in-force';

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
    if (typed.trim() === '') onChange({ pattern: null }, 'drop the pattern');
    else if (read?.ok)
      onChange(
        { pattern: { runs: read.runs, perMetres: pattern ? perMetres : practice.poolMetres } },
        'change the pattern',
      );
  };
  const count = pattern ? patternCount(pattern, item.distanceMetres) : null;
  const even = pattern ? patternIsEven(pattern, item.distanceMetres) : null;
  return (
    <fieldset className="wide pattern-form">
      <legend>Stroke pattern</legend>
      <label className="two">
        Strokes in order
        <input
          value={text}
          maxLength={200}
          placeholder="2 right 2 left 4 both"
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
        Usual ones
        <select
          value=""
          onChange={(event) => {
            const usual = book.patterns.find(({ id }) => id === event.target.value);
            if (!usual) return;
            setTyped(null);
            onChange({ pattern: usual.pattern }, 'choose a pattern');
          }}
        >
          <option value="">Choose…</option>
          {book.patterns.map(({ id, label, source }) => (
            <option key={id} value={id} title={source}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {pattern && (
        <label>
          Swum once in
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
                'change the pattern',
              )
            }
          >
            {[...new Set([25, 50, practice.poolMetres, ...(perMetres ? [perMetres] : [])])].map((metres) => (
              <option key={metres} value={metres}>
                {metres} m
              </option>
            ))}
            <option value="wall">Over and over to the wall</option>
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
              ? `No count for ${item.distanceMetres} m: the pattern does not come out whole there.`
              : `${count} strokes for ${item.distanceMetres} m.`}{' '}
            {even === false && 'Right and left are not even.'}
            {even === true && 'Right and left are even.'}
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
      return `${swimmer.name}: no target for strokes a length is set.`;
    case 'no-count':
      return `${swimmer.name}: the pattern gives no count for one length of ${practice.poolMetres} m.`;
    case 'meets-target':
      return `✓ ${swimmer.name}: ${found.perLength} a length, as the target says (${band}).`;
    case 'below-target':
      return `▽ ${swimmer.name}: ${found.perLength} a length, fewer than the target (${band}): each stroke must carry farther.`;
    case 'above-target':
      return `△ ${swimmer.name}: ${found.perLength} a length, more than the target (${band}).`;
  }
}
