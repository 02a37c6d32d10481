import { useState } from 'react';
import { setScene } from '../open-swim/scene-commands';
import { endLine } from '../stage/tools/line-tool';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { lengthPresets } from './length-presets';
import { numberTyped } from '../ui/number-typed';

/** Asks how long the drawn length is, and how sure the coach is of it. */
export function ScaleForm() {
  const session = useOpenSwim();
  const draft = useView((state) => state.draftLine);
  const set = useSwim((swim) => swim.scene.scale);
  const [metres, setMetres] = useState('');
  const [spread, setSpread] = useState('');
  const [preset, setPreset] = useState<string | null>(null);
  if (draft?.item !== 'scale' || draft.open) return null;
  const length = numberTyped(metres);
  const half = spread.trim() === '' ? 0 : numberTyped(spread);
  const usable = length > 0 && length <= 200 && half >= 0 && half <= 10;
  const chosen = lengthPresets.find((each) => each.id === preset);
  const take = (id: string): void => {
    const found = lengthPresets.find((each) => each.id === id);
    setPreset(found?.id ?? null);
    if (!found) return;
    setMetres(String(found.metres));
    setSpread(String(found.giveOrTake));
  };
  const keep = (): void => {
    session.document.run(
      setScene('scale', {
        line: { a: draft.a, b: draft.b },
        metres: length,
        // the coach's "give or take" is read as two standard deviations, our convention
        metresSd: half / 2,
        preset,
        frame: session.view.getState().frame,
      }),
    );
    setMetres('');
    setSpread('');
    setPreset(null);
    endLine(session);
  };
  return (
    <form
      className="scale-form"
      aria-label="Known length"
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') endLine(session);
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (usable) keep();
      }}
    >
      <strong>How long is it?</strong>
      <div className="scale-fields">
        <label>
          Metres
          <input
            inputMode="decimal"
            // biome-ignore lint/a11y/noAutofocus: the form is the answer to the line just drawn
            autoFocus
            value={metres}
            placeholder={set ? String(set.metres) : ''}
            onChange={(event) => {
              setMetres(event.target.value);
              setPreset(null);
            }}
          />
        </label>
        <label>
          give or take, metres
          <input
            inputMode="decimal"
            value={spread}
            placeholder="0"
            onChange={(event) => setSpread(event.target.value)}
          />
        </label>
        <label>
          or a mark of the pool
          <select value={preset ?? ''} title={chosen?.source} onChange={(event) => take(event.target.value)}>
            <option value="">choose</option>
            {lengthPresets.map((each) => (
              <option key={each.id} value={each.id}>
                {each.words}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className={chosen?.caution ? 'scale-caution' : undefined} role="status">
        {chosen?.caution ??
          'Measure in the plane the swimmer goes in, in the water. Your pool may differ from the rules: your own measure is better.'}
      </p>
      <div className="question-answers">
        <button type="submit" disabled={!usable}>
          Set the length
        </button>
        <button type="button" className="quiet" onClick={() => endLine(session)}>
          Cancel <kbd>Esc</kbd>
        </button>
      </div>
    </form>
  );
}
