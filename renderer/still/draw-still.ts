import { bodyChain, landmarkNames } from '#core/marks/landmark';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import { angleLabels } from '../stage/joint-angles';
import { bodyPartOf, casing, partColour, partShape } from '../stage/landmark-look';
import { placeLabels, pointsAlong } from '../stage/place-labels';
import type { FramePicture } from '../video/frame-source';
import type { StillContent } from './still-content';

type Paper = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** Our default: letters are this share of the picture's shorter side, and never under 11 pixels. */
const letterShare = 0.026;

const letters = (weight: 400 | 600, size: number): string =>
  `${weight} ${size}px system-ui, "DejaVu Sans", sans-serif`;

/** White letters with a dark edge: legible on any water. */
function write(
  paper: Paper,
  words: string,
  x: number,
  y: number,
  size: number,
  weight: 400 | 600 = 400,
): number {
  paper.font = letters(weight, size);
  paper.textBaseline = 'alphabetic';
  paper.lineJoin = 'round';
  paper.strokeStyle = casing;
  paper.lineWidth = Math.max(3, size * 0.28);
  paper.strokeText(words, x, y);
  paper.fillStyle = '#ffffff';
  paper.fillText(words, x, y);
  return paper.measureText(words).width;
}

/** Shortens words to a width with an ellipsis, measured in the paper's present font. */
function fitted(paper: Paper, words: string, width: number, size: number, weight: 400 | 600): string {
  paper.font = letters(weight, size);
  if (paper.measureText(words).width <= width) return words;
  let cut = words;
  while (cut.length > 1 && paper.measureText(`${cut}…`).width > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}

function drawBodyLine(paper: Paper, posture: Posture, unit: number): void {
  const chain = bodyChain.flatMap((name) => {
    const point = posture.points[name];
    return point ? [point] : [];
  });
  for (const [colour, width] of [
    [casing, unit * 0.42],
    ['#ffffff', unit * 0.16],
  ] as const) {
    paper.beginPath();
    for (const point of chain) paper.lineTo(point.x, point.y);
    paper.strokeStyle = colour;
    paper.lineWidth = width;
    paper.lineCap = 'round';
    paper.lineJoin = 'round';
    paper.stroke();
  }
  for (const name of landmarkNames) {
    const point = posture.points[name];
    if (!point) continue;
    const part = bodyPartOf(name);
    const r = unit * 0.34;
    paper.beginPath();
    if (partShape[part] === 'circle') paper.arc(point.x, point.y, r, 0, 2 * Math.PI);
    else if (partShape[part] === 'square') paper.rect(point.x - r * 0.9, point.y - r * 0.9, r * 1.8, r * 1.8);
    else {
      const corners = partShape[part] === 'diamond' ? 4 : 3;
      for (let corner = 0; corner < corners; corner++) {
        const turn = (2 * Math.PI * corner) / corners - Math.PI / 2;
        paper.lineTo(point.x + 1.25 * r * Math.cos(turn), point.y + 1.25 * r * Math.sin(turn));
      }
      paper.closePath();
    }
    paper.strokeStyle = casing;
    paper.lineWidth = unit * 0.2;
    paper.stroke();
    paper.fillStyle = partColour[part];
    paper.fill();
  }
}

function drawAngles(paper: Paper, posture: Posture, swim: Pick<Swim, 'scene' | 'card'>, size: number): void {
  const labels = angleLabels(posture, swim);
  paper.font = letters(400, size);
  const boxes = labels.map(({ at, words }) => ({
    at: posture.points[at] ?? { x: 0, y: 0 },
    width: paper.measureText(words).width,
    height: size * 1.2,
  }));
  const marks = landmarkNames.flatMap((name) => posture.points[name] ?? []);
  const line = bodyChain.flatMap((name) => posture.points[name] ?? []);
  placeLabels(boxes, [...marks, ...pointsAlong(line, size * 0.5)], size * 0.8).forEach((centre, index) => {
    const words = labels[index]?.words ?? '';
    write(paper, words, centre.x - (boxes[index]?.width ?? 0) / 2, centre.y + size * 0.35, size);
  });
}

/** Draws a still at the picture's own size: film, body line, angles and words. */
export function drawStill(
  paper: Paper,
  picture: FramePicture,
  marks: { readonly posture: Posture | null; readonly swim: Pick<Swim, 'scene' | 'card'> },
  content: StillContent,
): void {
  const { width, height } = picture;
  picture.draw(paper, 0, 0, width, height);
  const size = Math.max(11, Math.round(Math.min(width, height) * letterShare));
  const edge = size * 1.1;
  const line = size * 1.45;
  if (marks.posture) {
    drawBodyLine(paper, marks.posture, size);
    drawAngles(paper, marks.posture, marks.swim, size * 0.9);
  }
  const room = width - 2 * edge;
  let y = edge + size;
  write(paper, fitted(paper, content.title, room, size * 1.15, 600), edge, y, size * 1.15, 600);
  y += line;
  write(paper, fitted(paper, content.facts, room, size * 0.9, 400), edge, y, size * 0.9);
  if (content.invented) {
    y += line;
    write(paper, 'Invented swim, for demonstration', edge, y, size * 0.9, 600);
  }
  // readings end just above the foot line
  const foot = height - edge;
  const footWords = content.event ? `${content.event} · ${content.where}` : content.where;
  write(paper, fitted(paper, footWords, room, size, 600), edge, foot, size, 600);
  paper.font = letters(400, size);
  const labels = Math.min(
    room * 0.6,
    Math.max(0, ...content.readings.map((each) => paper.measureText(each.label).width)),
  );
  content.readings.forEach((each, index) => {
    const at = foot - line * (content.readings.length - index) - size * 0.3;
    write(paper, fitted(paper, each.label, labels + 1, size, 400), edge, at, size);
    write(paper, each.value, edge + labels + size, at, size, 600);
  });
}
