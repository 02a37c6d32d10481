import { useState } from 'react';
import {
  parsePattern,
  patternFaultWords,
  patternPhrase,
  patternStrokes,
} from '#core/practice/stroke-pattern';
import type { UsualPattern } from '#core/practice/usual-pattern';
import { Dialog } from '../ui/dialog';

interface Props {
  readonly pattern: UsualPattern;
  readonly onKeep: (pattern: UsualPattern) => Promise<void>;
  readonly onCancel: () => void;
}

/** A stroke pattern that is offered when practice is planned. */
export function PatternDialog({ pattern, onKeep, onCancel }: Props) {
  const [label, setLabel] = useState(pattern.label);
  const [text, setText] = useState(patternPhrase(pattern.pattern.runs));
  const [metres, setMetres] = useState(pattern.pattern.perMetres);
  const [source, setSource] = useState(pattern.source);
  const read = parsePattern(text);
  return (
    <Dialog title={pattern.label || 'A pattern of your own'} onCancel={onCancel}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (!read.ok) return;
          void onKeep({
            id: pattern.id,
            label: label.trim(),
            pattern: { runs: read.runs, perMetres: metres },
            source: source.trim() || 'my own',
          });
        }}
      >
        <div className="card-form card-form-two">
          <label className="wide">
            Name
            <input
              required
              data-first-focus
              pattern=".*\S.*"
              maxLength={120}
              value={label}
              onChange={(event) => setLabel(event.target.value)}
            />
          </label>
          <label className="wide">
            Strokes in order
            <input
              required
              maxLength={200}
              value={text}
              aria-invalid={!read.ok || undefined}
              onChange={(event) => setText(event.target.value)}
            />
            <small role={read.ok ? undefined : 'alert'}>
              {read.ok
                ? `${patternStrokes(read.runs).all} strokes once through`
                : patternFaultWords(read.fault)}
            </small>
          </label>
          <label>
            Swum once in, m (empty: over and over)
            <input
              type="number"
              min="1"
              max="10000"
              step="any"
              defaultValue={metres ?? ''}
              onChange={(event) => {
                const asked = event.target.valueAsNumber;
                setMetres(asked > 0 && asked <= 10_000 ? asked : null);
              }}
            />
          </label>
          <label>
            Where it is from
            <input maxLength={200} value={source} onChange={(event) => setSource(event.target.value)} />
          </label>
        </div>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={!read.ok}>
            Keep
          </button>
          <button type="button" onClick={onCancel}>
            Leave as it was
          </button>
        </footer>
      </form>
    </Dialog>
  );
}
