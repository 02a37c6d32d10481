import { Glyph } from '../../score/glyph';
import { Dimension } from './dimension';
import { MassSign } from './mass-sign';
import { readingsWords } from '#core/words/readings';

/** Way along travel against time: slope, strokes and kicks on it, or the course from the wall. */
export function WayDrawing({ id }: { readonly id: string }) {
  if (id.startsWith('underwater')) return <CourseDrawing id={id} />;
  const swing = id === 'speed-variation' || id === 'speed-lowest' || id === 'speed-highest';
  if (swing)
    return (
      <>
        <path className="drawn-line" d="M28,90H250M28,90V20" />
        <path className="drawn-help" d="M28,48H250" />
        <path
          className="drawn-body"
          d="M28,48C44,16 56,16 72,48S100,80 116,48S146,16 160,48S190,80 204,48S234,16 246,44"
        />
        {id === 'speed-variation' ? (
          <Dimension from={[60, 24]} to={[60, 72]} words={readingsWords('sdAboutMean')} shift={[14, 38]} />
        ) : (
          <circle
            className="drawn-asked"
            cx={id === 'speed-lowest' ? 94 : 50}
            cy={id === 'speed-lowest' ? 70 : 25}
            r={6}
          />
        )}
        <text x={4} y={14} className="drawn-name">
          {readingsWords('speed')}
        </text>
        <text x={222} y={86} className="drawn-name">
          {readingsWords('time')}
        </text>
      </>
    );
  const marks = id === 'speed-marks';
  const step = /^(distance-per-kick|stroke-(rate|length|index)|breathing|stroke-count)/.test(id);
  const kind = id === 'distance-per-kick' ? 'kick-top' : 'entry';
  const at = [56, 118, 180, 242];
  return (
    <>
      <path className="drawn-line" d="M28,90H250M28,90V20" />
      <path className="drawn-body" d="M36,84L246,20" />
      {!step && <Dimension from={[96, 66]} to={[206, 66]} words={readingsWords('time')} shift={[-4, 14]} />}
      {!step && <Dimension from={[206, 66]} to={[206, 32]} words={readingsWords('metres')} shift={[6, 4]} />}
      {step &&
        at.map((x) => (
          <g key={x} transform={`translate(${x},${84 - ((x - 36) * 64) / 210})`}>
            <Glyph kind={id === 'breathing-every' && x === 118 ? 'breath' : kind} scale={0.8} />
          </g>
        ))}
      {id === 'stroke-count' && (
        <Dimension from={[56, 86]} to={[242, 86]} words={readingsWords('howMany')} shift={[-28, -4]} />
      )}
      {id === 'breathing-every' && (
        <Dimension from={[56, 86]} to={[180, 86]} words={readingsWords('strokesBreath')} shift={[-48, -4]} />
      )}
      {(id === 'stroke-rate' || id === 'stroke-index') && (
        <Dimension from={[118, 84]} to={[180, 84]} words="T" shift={[-3, -5]} />
      )}
      {(id === 'stroke-length' || id === 'stroke-index' || id === 'distance-per-kick') && (
        <Dimension from={[196, 59]} to={[196, 40]} words={readingsWords('metres')} shift={[6, 4]} />
      )}
      {id === 'speed-centre-of-mass' && <MassSign at={{ x: 141, y: 52 }} />}
      <text x={4} y={14} className="drawn-name">
        {marks
          ? readingsWords('marks')
          : id === 'speed-hip'
            ? readingsWords('wayHips')
            : readingsWords('way')}
      </text>
    </>
  );
}

const thirds = ['first', 'middle', 'last'] as const;

const wordsOfCourse = (id: string): string =>
  id === 'underwater-kicks'
    ? readingsWords('howManyKicks')
    : id.includes('speed')
      ? readingsWords('metresTime')
      : readingsWords('kicksSecond');

function CourseDrawing({ id }: { readonly id: string }) {
  const kicks = id.includes('kick');
  const third = thirds.findIndex((each) => id.endsWith(`${each}-third`));
  return (
    <>
      <path className="drawn-wall" d="M18,8V90" />
      <path className="drawn-water" d="M18,20q12,-5 24,0t24,0t24,0t24,0t24,0t24,0t24,0t24,0t24,0" />
      <path
        className={kicks ? 'drawn-body' : 'drawn-help'}
        d={
          kicks
            ? 'M24,60q8,-14 16,0t16,0t16,0t16,0t16,0t16,0t16,0t16,0t16,0t16,-4t16,-20'
            : 'M24,60C90,74 160,60 200,20'
        }
      />
      <g transform="translate(24,60)">
        <Glyph kind="push-off" scale={0.8} />
      </g>
      <g transform="translate(202,20)">
        <Glyph kind="breakout" scale={0.9} />
      </g>
      {third >= 0 && <path className="drawn-asked" d={`M${24 + (third * 178) / 3},14V78m${178 / 3},0V14`} />}
      <Dimension
        from={[24, 86]}
        to={[202, 86]}
        words={id.includes('distance') ? 'metres' : id.includes('time') ? 'seconds' : wordsOfCourse(id)}
        shift={[-40, -5]}
      />
    </>
  );
}
