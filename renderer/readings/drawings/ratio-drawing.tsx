import { Dimension } from './dimension';
import { bodyWave, path } from './drawn-body-wave';
import { readingsWords } from '#core/words/readings';

/** Numbers made of others: each is drawn where it is taken on the swimmer. */
export function RatioDrawing({ id }: { readonly id: string }) {
  const isStrouhal = id === 'strouhal';
  const tail = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875].map(
    (phase) => bodyWave(phase).at(-1)?.y ?? 48,
  );
  return (
    <>
      <path className="drawn-body" d={path(bodyWave(0))} />
      <path className="drawn-help" d={path(bodyWave(0.5))} />
      <path className="drawn-asked" d="M206,14H250m-9,-5l9,5l-9,5" />
      <text x={192} y={18} className="drawn-name">
        {`U`}
      </text>
      {isStrouhal ? (
        <>
          <Dimension from={[24, Math.min(...tail)]} to={[24, Math.max(...tail)]} />
          <text x={32} y={90} className="drawn-name">
            {readingsWords('fTimesSecond')}
          </text>
        </>
      ) : (
        <>
          <path className="drawn-asked" d="M170,86H90m9,-5l-9,5l9,5" />
          <text x={176} y={90} className="drawn-name">
            {readingsWords('cWave')}
          </text>
        </>
      )}
    </>
  );
}
