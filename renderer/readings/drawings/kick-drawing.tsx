import { Dimension } from './dimension';
import { readingsWords } from '#core/words/readings';

const top = 22;
const bottom = 74;
const period = 92;
const start = 36;

/** Height of the feet against time, with what the reading takes of it. */
export function KickDrawing({ id }: { readonly id: string }) {
  const half = period * 0.42;
  const overSwim = id === 'foot-speed-over-swim';
  let wave = `M${start},${top}`;
  for (let kick = 0; kick < (overSwim ? 1 : 2); kick++) {
    const x = start + kick * period;
    wave += `C${x + half / 2},${top} ${x + half / 2},${bottom} ${x + half},${bottom}`;
    wave += `C${x + half + 24},${bottom} ${x + period - 24},${top} ${x + period},${top}`;
  }
  const down = /^(down|foot-speed-down|foot-speed-over)/.test(id);
  const up = /^(up-kick|foot-speed-up)/.test(id);
  const both = /^(down-up|foot-speed-ratio)/.test(id);
  const speed = id.startsWith('foot-speed');
  return (
    <>
      <path className="drawn-line" d={`M28,90H${overSwim ? 138 : 250}M28,90V10`} />
      <path className="drawn-body" d={wave} />
      {id.startsWith('kick-amplitude') && (
        <>
          <path
            className="drawn-help"
            d={`M${start + half},${top}H${start + period}`}
            strokeDasharray="3 3"
          />
          <Dimension from={[start + half, top]} to={[start + half, bottom]} words="A" shift={[7, 4]} />
        </>
      )}
      {/^kick-(frequency|tempo|rate)/.test(id) && (
        <Dimension
          from={[start, 12]}
          to={[start + period, 12]}
          words={readingsWords('oneKickT')}
          shift={[52, 4]}
        />
      )}
      {(down || both) && !speed && (
        <Dimension
          from={[start, 84]}
          to={[start + half, 84]}
          words={readingsWords('down')}
          shift={[-16, -3]}
        />
      )}
      {(up || both) && !speed && (
        <Dimension
          from={[start + half, 84]}
          to={[start + period, 84]}
          words={readingsWords('up')}
          shift={[0, -3]}
        />
      )}
      {speed && (down || both) && (
        <Dimension
          from={[start + 12, 36]}
          to={[start + 29, 62]}
          words={readingsWords('fastestDown')}
          shift={[-8, -35]}
        />
      )}
      {speed && (up || both) && (
        <Dimension
          from={[start + half + 20, 66]}
          to={[start + half + 36, 36]}
          words={readingsWords('fastestUp')}
          shift={[24, -37]}
        />
      )}
      {overSwim && (
        <>
          <text x={150} y={40} className="drawn-name">
            {readingsWords('over')}
          </text>
          <path className="drawn-asked" d="M182,37H240m-9,-5l9,5l-9,5" />
          <text x={150} y={60} className="drawn-name">
            {readingsWords('swimmingSpeed')}
          </text>
        </>
      )}
      <text x={4} y={52} className="drawn-name">
        {readingsWords('feet')}
      </text>
      <text x={overSwim ? 114 : 222} y={86} className="drawn-name">
        {readingsWords('time')}
      </text>
    </>
  );
}
