import { poolWords } from '../words/pool';

/** A length between things found in a pool, to fill the scale field with. The coach's own measure rules. */
export interface PoolMark {
  readonly id: string;
  readonly label: string;
  readonly metres: number;
  /** Standard deviation put beside it until the coach has measured: pools differ. Our default. */
  readonly metresSd: number;
  /** Whether the two ends lie in the swimmer's own plane when filmed from the side. */
  readonly plane: 'swimmer' | 'lane-rope' | 'across';
  readonly source: string;
}

const rules = poolWords('worldAquaticsFacilities');

export const poolMarks: readonly PoolMark[] = [
  {
    id: 'red-floats',
    label: poolWords('wallEndRedFloats'),
    metres: 5,
    metresSd: 0.05,
    plane: 'lane-rope',
    source: rules,
  },
  {
    id: 'float-15',
    label: poolWords('wall15MFloat'),
    metres: 15,
    metresSd: 0.05,
    plane: 'lane-rope',
    source: rules,
  },
  {
    id: 'float-25',
    label: poolWords('wall25MFloat'),
    metres: 25,
    metresSd: 0.05,
    plane: 'lane-rope',
    source: rules,
  },
  {
    id: 'floor-line-end',
    label: poolWords('wallEndFloor'),
    metres: 2,
    metresSd: 0.05,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'floor-line-50',
    label: poolWords('floorLine50M'),
    metres: 46,
    metresSd: 0.1,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'floor-line-25',
    label: poolWords('floorLine25M'),
    metres: 21,
    metresSd: 0.1,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'floor-cross-line',
    label: poolWords('crossLineAtEnd'),
    metres: 1,
    metresSd: 0.02,
    plane: 'across',
    source: rules,
  },
  {
    id: 'floor-line-width',
    label: poolWords('widthFloorLine'),
    metres: 0.25,
    // 0.2 to 0.3 m is all the rule says: a flat spread of 0.1 m has this standard deviation
    metresSd: 0.1 / Math.sqrt(12),
    plane: 'across',
    source: rules,
  },
  { id: 'flags', label: poolWords('wallFlags'), metres: 5, metresSd: 0.05, plane: 'swimmer', source: rules },
  {
    id: 'lane-width',
    label: poolWords('laneWidth'),
    metres: 2.5,
    metresSd: 0.05,
    plane: 'across',
    source: rules,
  },
  {
    id: 'pool-25',
    label: poolWords('length25MPool'),
    metres: 25,
    metresSd: 0.02,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'pool-50',
    label: poolWords('length50MPool'),
    metres: 50,
    metresSd: 0.02,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'pool-25-yards',
    label: poolWords('length25YdPool'),
    metres: 22.86,
    metresSd: 0.02,
    plane: 'swimmer',
    source: poolWords('n25Yd09144M'),
  },
];

/** The pool mark with this id; null for an id this build doesn't know. */
export function poolMarkById(id: string): PoolMark | null {
  return poolMarks.find((mark) => mark.id === id) ?? null;
}
