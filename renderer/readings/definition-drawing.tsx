import type { ReadingDefinition } from '#core/measures/reading';
import { BodyDrawing } from './drawings/body-drawing';
import { KickDrawing } from './drawings/kick-drawing';
import { RatioDrawing } from './drawings/ratio-drawing';
import { TimingDrawing } from './drawings/timing-drawing';
import { WaveDrawing } from './drawings/wave-drawing';
import { WayDrawing } from './drawings/way-drawing';
import './definition-drawing.css';
import { readingsWords } from '#core/words/readings';

function drawingOf({ id, group }: ReadingDefinition) {
  if (id === 'strouhal' || id === 'froude') return <RatioDrawing id={id} />;
  if (id === 'distance-per-kick') return <WayDrawing id={id} />;
  switch (group) {
    case 'timing':
      return <TimingDrawing id={id} />;
    case 'kick':
      return <KickDrawing id={id} />;
    case 'body-wave':
      return <WaveDrawing id={id} />;
    case 'posture':
      return <BodyDrawing id={id} />;
    case 'speed':
    case 'stroke':
    case 'course':
      return <WayDrawing id={id} />;
  }
}

/** The definition of a reading, drawn: a made-up swimmer or stroke, and on it what is measured. */
export function DefinitionDrawing({ definition }: { readonly definition: ReadingDefinition }) {
  return (
    <svg
      className="definition-drawing"
      viewBox="0 0 260 96"
      role="img"
      aria-label={readingsWords('drawingWhatMeasured', { brief: definition.brief })}
      data-drawing={definition.id}
    >
      {drawingOf(definition)}
    </svg>
  );
}
