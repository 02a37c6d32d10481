import { useState } from 'react';
import {
  parsePattern,
  patternFaultWords,
  patternPhrase,
  patternStrokes,
} from '#core/practice/stroke-pattern';
import type { UsualPattern } from '#core/practice/usual-pattern';
import { Dialog } from '../ui/dialog';
import { setsWords } from '#core/words/sets';

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
    <Dialog title={pattern.label || setsWords('patternYourOwn')} onCancel={onCancel}>
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
            {setsWords('name')}
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
            {setsWords('strokesOrder')}
            <input
              required
              maxLength={200}
              value={text}
              aria-invalid={!read.ok || undefined}
              onChange={(event) => setText(event.target.value)}
            />
            <small role={read.ok ? undefined : 'alert'}>
              {read.ok
                ? setsWords('strokesOnceThrough', { all: patternStrokes(read.runs).all })
                : patternFaultWords(read.fault)}
            </small>
          </label>
          <label>
            {setsWords('swumOnceMEmpty')}
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
            {setsWords('whereFrom')}
            <input maxLength={200} value={source} onChange={(event) => setSource(event.target.value)} />
          </label>
        </div>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={!read.ok}>
            {setsWords('keep')}
          </button>
          <button type="button" onClick={onCancel}>
            {setsWords('leave2')}
          </button>
        </footer>
      </form>
    </Dialog>
  );
}
