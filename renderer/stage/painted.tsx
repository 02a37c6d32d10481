import { Shape } from 'react-konva';
import type { DrawingOp } from '#core/drawing/drawing-op';
import { paint } from '#core/drawing/paint';

/** A drawing on the stage, by the painter that also draws what is saved and printed. */
export function Painted({ drawing }: { readonly drawing: readonly DrawingOp[] }) {
  return <Shape listening={false} sceneFunc={(context) => paint(context._context, drawing)} />;
}
