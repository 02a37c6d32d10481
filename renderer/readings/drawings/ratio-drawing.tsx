import { Dimension } from './dimension';

/** Numbers made of others: each is drawn where it is taken on the swimmer. */
export function RatioDrawing({ id }: { readonly id: string }) {
  return (
    <>
      <path className="drawn-body" d="M240,44C190,40 160,46 130,44S70,60 28,30" />
      <path className="drawn-help" d="M240,44C190,48 160,42 130,44S70,34 28,68" />
      <Dimension from={[28, 30]} to={[28, 68]} words={id === 'strouhal' ? 'A · f' : 'f'} shift={[6, 4]} />
      <path className="drawn-asked" d="M206,22H250m-10,-5l10,5l-10,5" />
      <text x={190} y={26} className="drawn-name">
        U
      </text>
      {id === 'froude' && (
        <>
          <path className="drawn-asked" d="M170,78H90m10,-5l-10,5l10,5" />
          <text x={176} y={82} className="drawn-name">
            c, the wave
          </text>
        </>
      )}
    </>
  );
}
