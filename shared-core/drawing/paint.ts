import type { Point } from '../units/point';
import type { DrawingOp, MeasureWords } from './drawing-op';
import type { Paper } from './paper';

/** One family from the system, as everywhere in the app. */
const systemFamily = 'system-ui, "DejaVu Sans", sans-serif';
const lettersOf = (size: number, weight: 400 | 600, family = systemFamily): string =>
  `${weight} ${size}px ${family}`;
const casingShare = 0.28;
const leastCasing = 2;

/** Width of the edge round letters of a size, and never too thin to be seen. */
export const casingWidth = (size: number): number => Math.max(leastCasing, size * casingShare);

/** How wide words are on a paper, in the system's letters or those of `family`. */
export function measureOn(paper: Paper, family?: string): MeasureWords {
  return (words, size, weight) => {
    paper.font = lettersOf(size, weight, family);
    return paper.measureText(words).width;
  };
}

/** Paints a drawing from back to front; leaves the paper's own state as it was. */
export function paint(paper: Paper, drawing: readonly DrawingOp[], family?: string): void {
  paper.save();
  paper.lineJoin = 'round';
  for (const each of drawing) paintOne(paper, each, family);
  paper.restore();
}

function paintOne(paper: Paper, each: DrawingOp, family: string | undefined): void {
  switch (each.op) {
    case 'line':
      paper.globalAlpha = each.opacity ?? 1;
      paper.strokeStyle = each.colour;
      paper.lineWidth = each.width;
      paper.lineCap = each.cap ?? 'round';
      paper.setLineDash([...(each.dash ?? [])]);
      trace(paper, each.points);
      paper.stroke();
      paper.setLineDash([]);
      return;
    case 'area':
      paper.globalAlpha = each.opacity ?? 1;
      trace(paper, each.points);
      paper.closePath();
      fillAndEdge(paper, each.fill, each.edge);
      return;
    case 'disc':
      paper.globalAlpha = each.opacity ?? 1;
      paper.beginPath();
      paper.arc(each.at.x, each.at.y, each.radius, 0, 2 * Math.PI);
      paper.closePath();
      fillAndEdge(paper, each.fill, each.edge);
      return;
    case 'outline':
      paper.globalAlpha = 1;
      paper.beginPath();
      for (const contour of each.contours) {
        along(paper, contour);
        paper.closePath();
      }
      fillAndEdge(paper, each.fill, each.edge);
      return;
    case 'words':
      paper.globalAlpha = 1;
      paper.font = lettersOf(each.size, each.weight, family);
      paper.textBaseline = 'alphabetic';
      paper.textAlign = each.align === 'centre' ? 'center' : (each.align ?? 'left');
      if (each.casing !== null) {
        paper.strokeStyle = each.casing;
        paper.lineWidth = casingWidth(each.size);
        paper.strokeText(each.words, each.at.x, each.at.y);
      }
      paper.fillStyle = each.colour;
      paper.fillText(each.words, each.at.x, each.at.y);
  }
}

function trace(paper: Paper, points: readonly Point[]): void {
  paper.beginPath();
  along(paper, points);
}

function along(paper: Paper, points: readonly Point[]): void {
  points.forEach(({ x, y }, index) => {
    if (index === 0) paper.moveTo(x, y);
    else paper.lineTo(x, y);
  });
}

/** Edge first and fill over it, so that half of the edge lies outside the shape, as a casing. */
function fillAndEdge(
  paper: Paper,
  fill: string | null,
  edge: { readonly colour: string; readonly width: number } | undefined,
): void {
  if (edge) {
    paper.strokeStyle = edge.colour;
    paper.lineWidth = edge.width;
    paper.stroke();
  }
  if (fill !== null) {
    paper.fillStyle = fill;
    paper.fill();
  }
}
