import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useState } from 'react';
import { offPlaneError } from '#core/scene/off-plane';
import { setScene } from '../open-swim/scene-commands';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { numberTyped } from '../ui/number-typed';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

const text = (value: number | null): string => (value === null ? '' : String(value));
const percent = (share: number): string =>
  `${share > 0 ? '+' : share < 0 ? '−' : ''}${Math.abs(100 * share).toFixed(1)} %`;

/** Off-plane error from which lengths are said to be far off. Our default. */
const farOff = 0.1;

/** Where camera and swimmer were against the plane that the scale was laid in. */
export function CameraForm() {
  const session = useOpenSwim();
  const open = useView((state) => state.asksCamera);
  const camera = useSwim((swim) => swim.scene.camera);
  if (!open) return null;
  return <Fields key={`${camera.metres} ${camera.fartherMetres}`} session={session} camera={camera} />;
}

function Fields({
  session,
  camera,
}: {
  readonly session: ReturnType<typeof useOpenSwim>;
  readonly camera: { readonly metres: number | null; readonly fartherMetres: number | null };
}) {
  const keyOf = useKeyOf();
  const [distance, setDistance] = useState(text(camera.metres));
  const [farther, setFarther] = useState(text(camera.fartherMetres));
  const close = (): void => session.view.setState({ asksCamera: false });
  const metres = distance.trim() === '' ? null : numberTyped(distance);
  const fartherMetres = farther.trim() === '' ? null : numberTyped(farther);
  const behind = metres !== null && fartherMetres !== null && metres + fartherMetres <= 0;
  const usable =
    (metres === null || (metres > 0 && metres <= 200)) &&
    (fartherMetres === null || (fartherMetres >= -50 && fartherMetres <= 50)) &&
    !behind;
  const error =
    usable && metres !== null && fartherMetres !== null
      ? offPlaneError(metres, metres + fartherMetres)
      : null;
  return (
    <form
      className="scale-form"
      aria-label={benchWords('cameraDistance')}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') close();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (!usable) return;
        session.document.run(setScene('camera', { metres, fartherMetres }));
        close();
      }}
    >
      <strong>{benchWords('howFarDistance')}</strong>
      <div className="scale-fields">
        <label>
          {benchWords('cameraKnownLength')}
          <input
            inputMode="decimal"
            // biome-ignore lint/a11y/noAutofocus: the form is the answer to the pad just pressed
            autoFocus
            value={distance}
            onChange={(event) => setDistance(event.target.value)}
          />
        </label>
        <label>
          {benchWords('swimmerFartherThan')}
          <input inputMode="decimal" value={farther} onChange={(event) => setFarther(event.target.value)} />
        </label>
      </div>
      <p role="status" className={error !== null && Math.abs(error) >= farOff ? 'scene-warning' : undefined}>
        {behind
          ? benchWords('swimmerWouldBehind')
          : error === null
            ? benchWords('knownLengthNearer')
            : error === 0
              ? benchWords('samePlaneLengths')
              : Math.abs(error) >= farOff
                ? benchWords('withoutLengthsWould', { percent: percent(error) })
                : benchWords('withoutLengthsWouldRead', { percent: percent(error) })}
      </p>
      <div className="question-answers">
        <button type="submit" disabled={!usable}>
          {benchWords('setDistance')}
        </button>
        <button type="button" className="quiet" onClick={close}>
          {rich(benchWords.parts('cancelEsc', { key: keyOf('put-away'), kbd: keyCap }))}
        </button>
      </div>
    </form>
  );
}
