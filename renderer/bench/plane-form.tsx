import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useState } from 'react';
import { setScene } from '../open-swim/scene-commands';
import { endPoints, planeCorners } from '../stage/tools/points-tool';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { numberTyped } from '../ui/number-typed';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

/** Asks how long the two sides of the drawn rectangle are. */
export function PlaneForm() {
  const session = useOpenSwim();
  const keyOf = useKeyOf();
  const tool = useView((state) => state.tool);
  const points = useView((state) => state.draftPoints);
  const set = useSwim((swim) => swim.scene.plane);
  const [along, setAlong] = useState(set ? String(set.alongMetres) : '');
  const [up, setUp] = useState(set ? String(set.upMetres) : '');
  if (tool !== 'plane' || points.length < planeCorners) return null;
  const [alongMetres, upMetres] = [numberTyped(along), numberTyped(up)];
  const usable = alongMetres > 0 && alongMetres <= 200 && upMetres > 0 && upMetres <= 200;
  const keep = (): void => {
    const [a, b, c, d] = points;
    if (!a || !b || !c || !d) return;
    session.document.run(
      setScene('plane', {
        corners: [a, b, c, d],
        alongMetres,
        upMetres,
        frame: session.view.getState().frame,
      }),
    );
    endPoints(session);
  };
  return (
    <form
      className="scale-form"
      aria-label={benchWords('knownRectangle')}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') endPoints(session);
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (usable) keep();
      }}
    >
      <strong>{benchWords('howLargeRectangle')}</strong>
      <div className="scale-fields">
        <label>
          {benchWords('alongPoolMetres')}
          <input
            inputMode="decimal"
            // biome-ignore lint/a11y/noAutofocus: the form is the answer to the corners just placed
            autoFocus
            value={along}
            onChange={(event) => setAlong(event.target.value)}
          />
        </label>
        <label>
          {benchWords('upDownMetres')}
          <input inputMode="decimal" value={up} onChange={(event) => setUp(event.target.value)} />
        </label>
      </div>
      <p>{benchWords('firstSideYou')}</p>
      <div className="question-answers">
        <button type="submit" disabled={!usable}>
          {benchWords('setRectangle')}
        </button>
        <button type="button" className="quiet" onClick={() => endPoints(session)}>
          {rich(benchWords.parts('cancelEsc', { key: keyOf('put-away'), kbd: keyCap }))}
        </button>
      </div>
    </form>
  );
}
