import { Dimension } from './dimension';

const top = 22;
const bottom = 74;
const period = 92;
const start = 36;

/** Height of the feet against time, with what the reading takes of it. */
export function KickDrawing({ id }: { readonly id: string }) {
  const half = period * 0.42;
  let wave = `M${start},${top}`;
  for (let kick = 0; kick < 2; kick++) {
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
      <path className="drawn-line" d="M28,90H250M28,90V10" />
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
        <Dimension from={[start, 12]} to={[start + period, 12]} words="one kick, T" shift={[8, 12]} />
      )}
      {(down || both) && !speed && (
        <Dimension from={[start, 84]} to={[start + half, 84]} words="down" shift={[-16, -3]} />
      )}
      {(up || both) && !speed && (
        <Dimension from={[start + half, 84]} to={[start + period, 84]} words="up" shift={[0, -3]} />
      )}
      {speed && (down || both) && (
        <Dimension from={[start + 12, 36]} to={[start + 29, 62]} words="fastest down" shift={[10, 0]} />
      )}
      {speed && (up || both) && (
        <Dimension
          from={[start + half + 20, 66]}
          to={[start + half + 36, 36]}
          words="fastest up"
          shift={[12, 12]}
        />
      )}
      {id === 'foot-speed-over-swim' && (
        <>
          <path className="drawn-asked" d="M150,96H232m-9,-4l9,4l-9,4" />
          <text x={128} y={14} className="drawn-name">
            over the swimmer’s speed
          </text>
        </>
      )}
      <text x={4} y={52} className="drawn-name">
        feet
      </text>
      <text x={222} y={86} className="drawn-name">
        time
      </text>
    </>
  );
}
