/** The sign of a centre of mass: a quartered disc. */
export function MassSign({ at }: { readonly at: { readonly x: number; readonly y: number } }) {
  return (
    <g transform={`translate(${at.x.toFixed(1)},${at.y.toFixed(1)})`}>
      <circle className="drawn-body" r={5.5} />
      <path className="drawn-mass" d="M0,0V-5.5A5.5,5.5 0 0 1 5.5,0ZM0,0V5.5A5.5,5.5 0 0 1 -5.5,0Z" />
    </g>
  );
}
