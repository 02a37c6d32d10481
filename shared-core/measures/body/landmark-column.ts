import type { LandmarkName } from '../../marks/landmark';
import { type PoolTransform, poolCarrier } from '../../scene/pool-transform';
import type { Posture } from '../../swim-file/swim-schema';
import { type PoolPoint, poolPoint } from '../../units/brand';

/** A landmark's places in the pool plane, posture by posture; NaN where it isn't known. */
export interface LandmarkColumn {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Whether it is known on every posture. */
  readonly whole: boolean;
}

/** Columns, not a point object for each mark: a minute of traces holds tens of thousands of them. */
export type LandmarkColumns = Readonly<Record<LandmarkName, LandmarkColumn>>;

/** Every landmark's places in the pool plane. Cost: linear in points. */
export function landmarkColumns(flat: readonly Posture[], transform: PoolTransform): LandmarkColumns {
  const carry = poolCarrier(transform);
  const column = (name: LandmarkName): LandmarkColumn => {
    const x: number[] = [];
    const y: number[] = [];
    let whole = true;
    for (const { points } of flat) {
      const point = points[name];
      const at = point && carry(point);
      whole &&= at !== undefined;
      x.push(at ? at.x : Number.NaN);
      y.push(at ? at.y : Number.NaN);
    }
    return { x, y, whole };
  };
  return {
    fingertip: column('fingertip'),
    wrist: column('wrist'),
    elbow: column('elbow'),
    shoulder: column('shoulder'),
    ear: column('ear'),
    hip: column('hip'),
    knee: column('knee'),
    ankle: column('ankle'),
    toe: column('toe'),
  };
}

/** A landmark of one posture in the pool plane; undefined where it isn't known. */
export function pointAt(column: LandmarkColumn, place: number): PoolPoint | undefined {
  const [x, y] = [column.x[place], column.y[place]];
  return x === undefined || y === undefined || Number.isNaN(x) ? undefined : poolPoint(x, y);
}
