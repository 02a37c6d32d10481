import { useState } from 'react';
import { setScene } from '../open-swim/scene-commands';
import { endPoints, planeCorners } from '../stage/tools/points-tool';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { numberTyped } from '../ui/number-typed';

/** Asks how long the two sides of the drawn rectangle are. */
export function PlaneForm() {
  const session = useOpenSwim();
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
      aria-label="Known rectangle"
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') endPoints(session);
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (usable) keep();
      }}
    >
      <strong>How large is the rectangle?</strong>
      <div className="scale-fields">
        <label>
          along the pool, metres
          <input
            inputMode="decimal"
            // biome-ignore lint/a11y/noAutofocus: the form is the answer to the corners just placed
            autoFocus
            value={along}
            onChange={(event) => setAlong(event.target.value)}
          />
        </label>
        <label>
          up and down, metres
          <input inputMode="decimal" value={up} onChange={(event) => setUp(event.target.value)} />
        </label>
      </div>
      <p>
        The first side you drew, corner one to two, is the one along the pool. The rectangle must lie in the
        plane the swimmer goes in: a frame held under water over the line, not the wall behind. While it is
        set it gives the scale, and the known length is not used.
      </p>
      <div className="question-answers">
        <button type="submit" disabled={!usable}>
          Set the rectangle
        </button>
        <button type="button" className="quiet" onClick={() => endPoints(session)}>
          Cancel <kbd>Esc</kbd>
        </button>
      </div>
    </form>
  );
}
