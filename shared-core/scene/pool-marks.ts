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

const rules =
  'World Aquatics facilities rules (clause numbers differ by edition); training pools often differ: measure';

export const poolMarks: readonly PoolMark[] = [
  {
    id: 'red-floats',
    label: 'Wall to end of red floats',
    metres: 5,
    metresSd: 0.05,
    plane: 'lane-rope',
    source: rules,
  },
  {
    id: 'float-15',
    label: 'Wall to 15 m float',
    metres: 15,
    metresSd: 0.05,
    plane: 'lane-rope',
    source: rules,
  },
  {
    id: 'float-25',
    label: 'Wall to 25 m float',
    metres: 25,
    metresSd: 0.05,
    plane: 'lane-rope',
    source: rules,
  },
  {
    id: 'floor-line-end',
    label: 'Wall to end of floor line',
    metres: 2,
    metresSd: 0.05,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'floor-line-50',
    label: 'Floor line, 50 m pool',
    metres: 46,
    metresSd: 0.1,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'floor-line-25',
    label: 'Floor line, 25 m pool',
    metres: 21,
    metresSd: 0.1,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'floor-cross-line',
    label: 'Cross line at the end of the floor line',
    metres: 1,
    metresSd: 0.02,
    plane: 'across',
    source: rules,
  },
  {
    id: 'floor-line-width',
    label: 'Width of the floor line (0.2 to 0.3 m)',
    metres: 0.25,
    // 0.2 to 0.3 m is all the rule says: a flat spread of 0.1 m has this standard deviation
    metresSd: 0.1 / Math.sqrt(12),
    plane: 'across',
    source: rules,
  },
  { id: 'flags', label: 'Wall to flags', metres: 5, metresSd: 0.05, plane: 'swimmer', source: rules },
  { id: 'lane-width', label: 'Lane width', metres: 2.5, metresSd: 0.05, plane: 'across', source: rules },
  {
    id: 'pool-25',
    label: 'Length of a 25 m pool',
    metres: 25,
    metresSd: 0.02,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'pool-50',
    label: 'Length of a 50 m pool',
    metres: 50,
    metresSd: 0.02,
    plane: 'swimmer',
    source: rules,
  },
  {
    id: 'pool-25-yards',
    label: 'Length of a 25 yd pool',
    metres: 22.86,
    metresSd: 0.02,
    plane: 'swimmer',
    source: '25 yd × 0.9144 m by definition of the yard',
  },
];

/** The pool mark with this id; null for an id this build doesn't know. */
export function poolMarkById(id: string): PoolMark | null {
  return poolMarks.find((mark) => mark.id === id) ?? null;
}
