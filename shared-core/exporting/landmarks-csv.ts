import type { CameraPath } from '../follow/camera-path';
import { landmarkNames } from '../marks/landmark';
import { poolCarrier, type PoolTransform } from '../scene/pool-transform';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';
import type { Point } from '../units/point';
import { type CsvCell, csvText, sixDigits } from './csv-text';

const head = [
  'frame',
  'frame_shown',
  'seconds',
  'landmark',
  'status',
  'x_px',
  'y_px',
  'x',
  'y',
  'unit',
  'confidence',
  'sd_px',
  'doubtful',
];

/**
 * Landmarks as tidy CSV, a row a landmark of a frame: `marked` by the coach, `hidden` (the coach said it can't be seen;
 * no place), `followed` by the machine with its confidence from 0 to 1, or `seen` by it without a mark and not reviewed, with the
 * standard deviation of one axis (`sd_px`). `x_px`, `y_px` are pixels of the shown
 * picture, y down; `x`, `y` lie along travel and up, in `unit`, from the picture's top left corner: only differences
 * mean something. A camera's movement is taken out of them; where it moved and that is not known, they are empty.
 *
 * @param doubt what speaks against these times (`swimDoubtWords`), said in every row
 */
export function landmarksCsv(
  swim: Pick<Swim, 'postures' | 'followed' | 'seen'>,
  clock: ClipClock,
  transform: PoolTransform,
  camera: CameraPath,
  doubt: string | null,
): string {
  const carry = poolCarrier(transform);
  const inPool = (frame: number, point: Point): Point | null => {
    if (camera.state === 'loose') return null;
    const stood = camera.state === 'carried' ? camera.steady(frame, point) : point;
    return stood && carry(stood);
  };
  const rows: { readonly frame: number; readonly order: number; readonly cells: readonly CsvCell[] }[] = [];
  const put = (
    frame: number,
    landmark: (typeof landmarkNames)[number],
    status: string,
    point: Point | null,
    confidence: CsvCell,
    sd: CsvCell = '',
  ): void => {
    const pool = point && inPool(frame, point);
    const place = [point?.x, point?.y, pool?.x, pool?.y].map((value) =>
      value === undefined ? '' : sixDigits(value),
    );
    rows.push({
      frame,
      order: landmarkNames.indexOf(landmark),
      cells: [
        frame,
        frame + 1,
        sixDigits(realTimeOf(clock, frame)),
        landmark,
        status,
        ...place,
        pool ? transform.unit : '',
        confidence,
        sd,
        doubt ?? '',
      ],
    });
  };
  for (const posture of swim.postures) {
    for (const name of landmarkNames) {
      const point = posture.points[name];
      if (point) put(posture.frame, name, 'marked', point, '');
      else if (posture.hidden.includes(name)) put(posture.frame, name, 'hidden', null, '');
    }
  }
  for (const run of swim.followed)
    run.points.forEach(([x, y, confidence], index) => {
      put(run.frame + index, run.landmark, 'followed', { x, y }, sixDigits(confidence));
    });
  for (const run of swim.seen)
    run.points.forEach(([x, y, sd], index) => {
      put(run.frame + index, run.landmark, 'seen', { x, y }, '', sixDigits(sd));
    });
  rows.sort((a, b) => a.frame - b.frame || a.order - b.order);
  return csvText(
    head,
    rows.map((each) => each.cells),
  );
}
