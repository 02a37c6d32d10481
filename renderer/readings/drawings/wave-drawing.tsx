import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { pluralWords } from '#core/marks/mark-words';
import { neighbours } from '#core/measures/body/wave/phase-lag';
import { Dimension } from './dimension';
import { bodyWave, path } from './drawn-body-wave';
import { MassSign } from './mass-sign';
import { readingsWords } from '#core/words/readings';

const sine = (cycles: number, amplitude: number): string =>
  path(
    Array.from({ length: 73 }, (_, i) => ({
      x: 24 + 3 * i,
      y: 48 - amplitude * Math.cos((2 * Math.PI * cycles * i) / 72),
    })),
  );

/** How the wave runs: heights of one point, harmonics of its movement, speed and length along the body. */
export function WaveDrawing({ id }: { readonly id: string }) {
  const harmonic = /^harmonic-(phase-|share-)?(\d)/.exec(id);
  if (harmonic) {
    const order = Number(harmonic[2]);
    const amplitude = 26;
    const crest = 216 / order;
    return (
      <>
        <path className="drawn-line" d="M24,48H246" />
        <path className="drawn-help" d={sine(1, 34)} />
        <path className="drawn-body" d={sine(order, amplitude)} />
        <text x={4} y={14} className="drawn-name">
          {pluralWords[landmarkNames.find((name) => id.endsWith(`-${name}`)) ?? 'hip']}
        </text>
        {harmonic[1] === 'phase-' ? (
          <Dimension
            from={[24, 88]}
            to={[24 + crest, 88]}
            words={readingsWords('itsCrest')}
            shift={[order === 1 ? -96 : -24, -4]}
          />
        ) : (
          <Dimension
            from={[24 + crest, 48]}
            to={[24 + crest, 48 - amplitude]}
            words="C"
            shift={order === 1 ? [5, 4] : [-4, -18]}
          />
        )}
      </>
    );
  }
  const pair = neighbours.find((each) => id.endsWith(`-${each.join('-')}`));
  if (pair) return <LagDrawing pair={pair} isSpeed={id.startsWith('wave-speed')} />;
  if (id === 'body-wave-length' || id === 'body-wave-speed') {
    return (
      <>
        <path className="drawn-body" d={path(bodyWave(0))} />
        <path className="drawn-help" d={path(bodyWave(0.2))} />
        {id === 'body-wave-speed' ? (
          <>
            <path className="drawn-asked" d="M190,14H90m10,-5l-10,5l10,5" />
            <text x={196} y={18} className="drawn-name">
              {readingsWords('wave')}
            </text>
          </>
        ) : (
          <Dimension from={[42, 88]} to={[244, 88]} words={readingsWords('oneWave')} shift={[-24, -4]} />
        )}
        <text x={206} y={id === 'body-wave-speed' ? 92 : 14} className="drawn-name">
          {readingsWords('travel')}
        </text>
      </>
    );
  }
  const found = landmarkNames.findIndex((name) => id.endsWith(`-${name}`));
  // the centre of mass is drawn between shoulders and hips
  const ofMass = found < 0;
  const [place, other] = ofMass
    ? [landmarkNames.indexOf('shoulder'), landmarkNames.indexOf('hip')]
    : [found, found];
  const poses = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875].map(bodyWave);
  const heights = poses.map((pose) => ((pose[place]?.y ?? 48) + (pose[other]?.y ?? 48)) / 2);
  const x = ((poses[0]?.[place]?.x ?? 0) + (poses[0]?.[other]?.x ?? 0)) / 2;
  return (
    <>
      {poses.map((pose, i) => (
        <path key={path(pose)} className={i === 0 ? 'drawn-body' : 'drawn-help'} d={path(pose)} />
      ))}
      <Dimension from={[x, Math.min(...heights)]} to={[x, Math.max(...heights)]} />
      {ofMass && <MassSign at={{ x, y: heights[0] ?? 48 }} />}
      <text x={206} y={92} className="drawn-name">
        {readingsWords('travel')}
      </text>
    </>
  );
}

/** Heights of two neighbours against time: the second crests later, by the lag; the wave's way between them for a speed. */
function LagDrawing(props: {
  readonly pair: readonly [LandmarkName, LandmarkName];
  readonly isSpeed: boolean;
}) {
  const { pair, isSpeed } = props;
  const axis = 62;
  const crests = [92, 118] as const;
  const height = (x: number, crest: number, amplitude: number): number =>
    54 - amplitude * Math.cos((2 * Math.PI * (x - crest)) / 124);
  const wave = (crest: number, amplitude: number): string =>
    path(
      Array.from({ length: 63 }, (_, i) => ({ x: axis + 3 * i, y: height(axis + 3 * i, crest, amplitude) })),
    );
  return (
    <>
      <path className="drawn-line" d={`M${axis},92H250M${axis},92V12`} />
      <path className="drawn-help" d={wave(crests[0], 20)} />
      <path className="drawn-body" d={wave(crests[1], 30)} />
      <path className="drawn-help" d={`M${crests[0]},34V14M${crests[1]},24V14`} />
      <Dimension
        from={[crests[0], 14]}
        to={[crests[1], 14]}
        words={isSpeed ? readingsWords('wayAlongTravel') : 'lag'}
        shift={[18, 4]}
      />
      {pair.map((name, i) => (
        <text key={name} x={axis - 5} y={i === 0 ? 56 : 76} textAnchor="end" className="drawn-name">
          {pluralWords[name]}
        </text>
      ))}
      <text x={224} y={88} className="drawn-name">
        {readingsWords('time')}
      </text>
    </>
  );
}
