import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { pluralWords } from '#core/marks/mark-words';
import { neighbours } from '#core/measures/body/phase-lag';
import { Dimension } from './dimension';
import { MassSign } from './mass-sign';

/** A drawn wave along the body, growing toward the toes; `phase` in turns. */
function bodyWave(phase: number): { readonly x: number; readonly y: number }[] {
  return landmarkNames.map((_, i) => {
    const share = i / (landmarkNames.length - 1);
    const amplitude = 6 + 20 * share ** 1.5;
    return { x: 246 - 222 * share, y: 48 + amplitude * Math.sin(2 * Math.PI * (share * 1.1 - phase)) };
  });
}

const path = (points: readonly { readonly x: number; readonly y: number }[]): string =>
  `M${points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}`;

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
          <Dimension from={[24, 88]} to={[24 + crest, 88]} words="to its crest" shift={[-24, -4]} />
        ) : (
          <Dimension from={[24 + crest, 48]} to={[24 + crest, 48 - amplitude]} words="C" shift={[5, 4]} />
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
              the wave
            </text>
          </>
        ) : (
          <Dimension from={[42, 88]} to={[244, 88]} words="one wave" shift={[-24, -4]} />
        )}
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
        travel →
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
  const [from, to] = [70, 96];
  const wave = (crest: number, amplitude: number): string =>
    path(
      Array.from({ length: 71 }, (_, i) => {
        const x = 40 + 3 * i;
        return { x, y: 54 - amplitude * Math.cos((2 * Math.PI * (x - crest)) / 130) };
      }),
    );
  return (
    <>
      <path className="drawn-line" d="M40,92H250M40,92V12" />
      <path className="drawn-help" d={wave(from, 20)} />
      <path className="drawn-body" d={wave(to, 30)} />
      <path className="drawn-help" d={`M${from},34V14M${to},24V14`} />
      <Dimension
        from={[from, 14]}
        to={[to, 14]}
        words={isSpeed ? 'distance in this time' : 'lag'}
        shift={[18, 4]}
      />
      <text x={2} y={40} className="drawn-name">
        {pluralWords[pair[0]]}
      </text>
      <text x={2} y={70} className="drawn-name drawn-second">
        {pluralWords[pair[1]]}
      </text>
      <text x={222} y={88} className="drawn-name">
        time
      </text>
    </>
  );
}
