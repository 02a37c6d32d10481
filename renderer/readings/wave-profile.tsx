import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { ReadingRowData } from './arrange-readings';
import { readingsWords } from '#core/words/readings';

interface Props {
  readonly rows: readonly ReadingRowData[];
}

/** Our default: fewer landmarks than this make no profile. */
const leastDrawn = 3;

const isUndulation = (row: ReadingRowData): boolean =>
  landmarkNames.some((landmark) => row.definition.id === `undulation-${landmark}`);

export const hasProfile = (rows: readonly ReadingRowData[]): boolean =>
  rows.filter(isUndulation).length >= leastDrawn;

const short: Readonly<Record<LandmarkName, string>> = {
  fingertip: readingsWords('tip'),
  wrist: readingsWords('wrist'),
  elbow: readingsWords('elbow'),
  shoulder: 'shoul.',
  ear: readingsWords('ear'),
  hip: readingsWords('hip'),
  knee: readingsWords('knee'),
  ankle: readingsWords('ankle'),
  toe: readingsWords('toe'),
};

/** Undulation amplitude along the body, fingertip to toe, each with its interval; absent ones leave a gap. */
export function WaveProfile({ rows }: Props) {
  const found = landmarkNames.flatMap((landmark, place) => {
    const row = rows.find(({ definition }) => definition.id === `undulation-${landmark}`);
    return row?.reading.status === 'computed' ? [{ landmark, place, reading: row.reading }] : [];
  });
  if (found.length < leastDrawn) return null;
  const largest = Math.max(...found.map(({ reading }) => reading.interval.high));
  const x = (place: number): number => 18 + place * 32;
  const y = (value: number): number => 66 - (Math.max(0, value) / largest) * 56;
  return (
    <svg
      className="wave-profile"
      viewBox="0 0 292 86"
      role="img"
      aria-label={readingsWords('undulationAlongBody')}
    >
      <path
        d={`M${found.map(({ place, reading }) => `${x(place)},${y(reading.value)}`).join('L')}`}
        className="profile-line"
      />
      {found.map(({ landmark, place, reading }) => (
        <g key={landmark}>
          <line
            x1={x(place)}
            x2={x(place)}
            y1={y(reading.interval.low)}
            y2={y(reading.interval.high)}
            className="profile-spread"
          />
          <circle cx={x(place)} cy={y(reading.value)} r={3.6} className="profile-dot" />
          <text x={x(place)} y={82}>
            {short[landmark]}
          </text>
        </g>
      ))}
    </svg>
  );
}
