import type { LandmarkName } from '../../../marks/landmark';
import { type PoolTransform, poolCarrier } from '../../../scene/pool-transform';
import type { Posture } from '../../../swim-file/swim-schema';
import type { Point } from '../../../units/point';

/** A landmark's places in the pool plane, posture by posture; NaN where it isn't known. */
export interface LandmarkColumn {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Whether it is known on every posture. */
  readonly whole: boolean;
}

/** Columns, not a point object for each mark: a minute of traces holds tens of thousands of them. */
export type LandmarkColumns = Readonly<Record<LandmarkName, LandmarkColumn>>;

interface Filling {
  readonly x: number[];
  readonly y: number[];
  whole: boolean;
}

const empty = (): Filling => ({ x: [], y: [], whole: true });

/** Every landmark's places in the pool plane. Cost: linear in points. */
export function landmarkColumns(flat: readonly Posture[], transform: PoolTransform): LandmarkColumns {
  const carry = poolCarrier(transform);
  const lay = (column: Filling, point: Point | undefined): void => {
    const at = point && carry(point);
    if (!at) column.whole = false;
    column.x.push(at ? at.x : Number.NaN);
    column.y.push(at ? at.y : Number.NaN);
  };
  const columns = {
    fingertip: empty(),
    wrist: empty(),
    elbow: empty(),
    shoulder: empty(),
    ear: empty(),
    hip: empty(),
    knee: empty(),
    ankle: empty(),
    toe: empty(),
  } satisfies Record<LandmarkName, Filling>;
  for (const { points } of flat) {
    // by name and not in a loop over names: looking up a name that varies takes several times as long
    lay(columns.fingertip, points.fingertip);
    lay(columns.wrist, points.wrist);
    lay(columns.elbow, points.elbow);
    lay(columns.shoulder, points.shoulder);
    lay(columns.ear, points.ear);
    lay(columns.hip, points.hip);
    lay(columns.knee, points.knee);
    lay(columns.ankle, points.ankle);
    lay(columns.toe, points.toe);
  }
  return columns;
}

/** A landmark of one posture in the pool plane; undefined where it isn't known. */
export function pointAt(column: LandmarkColumn, place: number): Point | undefined {
  const [x, y] = [column.x[place], column.y[place]];
  return x === undefined || y === undefined || Number.isNaN(x) ? undefined : { x, y };
}
