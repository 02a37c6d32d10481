import type { DrawingOp, MeasureWords } from './drawing-op';

/** Left, top, right and bottom of what a drawing can touch; null when it draws nothing. */
export interface DrawingBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box a drawing stays inside, casings and edges included. */
export function drawingBox(drawing: readonly DrawingOp[], measure: MeasureWords): DrawingBox | null {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  const take = (x: number, y: number, reach: number): void => {
    left = Math.min(left, x - reach);
    top = Math.min(top, y - reach);
    right = Math.max(right, x + reach);
    bottom = Math.max(bottom, y + reach);
  };
  for (const each of drawing) {
    switch (each.op) {
      case 'line':
        // joins are round: nothing reaches farther than half the width
        for (const { x, y } of each.points) take(x, y, each.width / 2 + 1);
        break;
      case 'area':
        for (const { x, y } of each.points) take(x, y, (each.edge?.width ?? 0) / 2 + 1);
        break;
      case 'disc':
        take(each.at.x, each.at.y, each.radius + (each.edge?.width ?? 0) / 2 + 1);
        break;
      case 'outline':
        for (const { x, y } of each.contours.flat()) take(x, y, (each.edge?.width ?? 0) / 2 + 1);
        break;
      case 'words': {
        const width = measure(each.words, each.size, each.weight);
        const from =
          each.align === 'centre'
            ? each.at.x - width / 2
            : each.align === 'right'
              ? each.at.x - width
              : each.at.x;
        // letters hang below the base line by about a third of their size, and stand above it by about their size
        const reach = each.size * 0.2 + 2;
        take(from, each.at.y - each.size, reach);
        take(from + width, each.at.y + each.size * 0.35, reach);
        break;
      }
    }
  }
  return right > left ? { left, top, right, bottom } : null;
}
