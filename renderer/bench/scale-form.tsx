import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useState } from 'react';
import { setScene } from '../open-swim/scene-commands';
import { endLine } from '../stage/tools/line-tool';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { lengthPresets } from './length-presets';
import { numberTyped } from '../ui/number-typed';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

/** Asks how long the drawn length is, and how sure the coach is of it. */
export function ScaleForm() {
  const session = useOpenSwim();
  const keyOf = useKeyOf();
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
      aria-label={benchWords('knownLength')}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') endLine(session);
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (usable) keep();
      }}
    >
      <strong>{benchWords('howLong')}</strong>
      <div className="scale-fields">
        <label>
          {benchWords('metres')}
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
          {benchWords('giveOrTakeMetres')}
          <input
            inputMode="decimal"
            value={spread}
            placeholder="0"
            onChange={(event) => setSpread(event.target.value)}
          />
        </label>
        <label>
          {benchWords('orMarkPool')}
          <select value={preset ?? ''} title={chosen?.source} onChange={(event) => take(event.target.value)}>
            <option value="">{benchWords('choose')}</option>
            {lengthPresets.map((each) => (
              <option key={each.id} value={each.id}>
                {each.words}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className={chosen?.caution ? 'scale-caution' : undefined} role="status">
        {chosen?.caution ?? benchWords('measurePlaneSwimmer')}
      </p>
      <div className="question-answers">
        <button type="submit" disabled={!usable}>
          {benchWords('setLength')}
        </button>
        <button type="button" className="quiet" onClick={() => endLine(session)}>
          {rich(benchWords.parts('cancelEsc', { key: keyOf('put-away'), kbd: keyCap }))}
        </button>
      </div>
    </form>
  );
}
