import { mean, rollup } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { daysBetween } from '#core/practice/days-between';
import type { SeasonLine } from '#core/practice/season-change';

const width = 104;
const height = 30;
const edge = 5;

/** A reading of a season as a small line: a dot a swim, the line through each day's mean, the latest larger and with its 95 % interval. Words beside it say the same. */
export function SparkLine({ line }: { readonly line: SeasonLine }) {
  const [first, latest] = [line.points[0], line.points.at(-1)];
  if (!first || !latest) return null;
  const { low, high } = latest.reading.interval ?? { low: latest.reading.value, high: latest.reading.value };
  const values = [...line.points.map(({ reading }) => reading.value), low, high];
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  const after = (day: string): number => daysBetween(first.day, day) ?? 0;
  const days = Math.max(1, after(latest.day));
  const x = scaleLinear([0, days], [edge, width - edge]);
  // a line that never moves runs through the middle
  const y = scaleLinear(greatest > least ? [least, greatest] : [least - 1, least + 1], [height - edge, edge]);
  const places = line.points.map(({ day, reading, swimId }) => ({
    swimId,
    x: first.day === latest.day ? width / 2 : x(after(day)),
    y: y(reading.value),
  }));
  // swims of one day lie over one another: the line goes through their mean
  const byDay = rollup(
    places,
    (of) => of.map((at) => at.y),
    (at) => at.x,
  );
  const end = places.at(-1);
  return (
    <svg className="spark-line" width={width} height={height} aria-hidden="true">
      <polyline points={[...byDay].map(([x, ys]) => `${x},${mean(ys)}`).join(' ')} />
      {places.slice(0, -1).map((at) => (
        <circle key={at.swimId} cx={at.x} cy={at.y} r="2" />
      ))}
      {end && <path d={`M${end.x},${y(low)}V${y(high)}`} />}
      {end && <circle className="latest" cx={end.x} cy={end.y} r="3.6" />}
    </svg>
  );
}
