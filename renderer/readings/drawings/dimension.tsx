/** A length with a stop at each end, as on a plan, and its letter beside it. */
export function Dimension(props: {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly words?: string;
  /** Shift of the words from the middle. */
  readonly shift?: readonly [number, number];
}) {
  const { from, to, words, shift = [6, 4] } = props;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [nx, ny] =
    length > 0 ? [(-4 * (to[1] - from[1])) / length, (4 * (to[0] - from[0])) / length] : [0, 0];
  const stop = ([x, y]: readonly [number, number]): string => `M${x - nx},${y - ny}L${x + nx},${y + ny}`;
  return (
    <g className="drawn-asked">
      <path d={`M${from[0]},${from[1]}L${to[0]},${to[1]}${stop(from)}${stop(to)}`} />
      {words && (
        <text x={(from[0] + to[0]) / 2 + shift[0]} y={(from[1] + to[1]) / 2 + shift[1]}>
          {words}
        </text>
      )}
    </g>
  );
}
