import { eventFamilies } from '#core/measures/events/event-families';
import { contextOf, markInstants, type TrueInstant } from '../../shared-core/measures/drawn-swim';
import { seeded } from '../../../sample-clips/model/seeded';

/** One minute of butterfly, fully marked, filmed at 60 a second: how long all event readings take, context included. */
const period = 1.1;
const instants: TrueInstant[] = [];
for (let i = 0; i < 60 / period; i++) {
  const at = 0.5 + i * period;
  instants.push({ kind: 'entry', time: at }, { kind: 'catch', time: at + 0.3 });
  instants.push({ kind: 'shoulder', time: at + 0.52 }, { kind: 'exit', time: at + 0.77 });
  instants.push({ kind: 'kick-top', time: at + 0.02 }, { kind: 'kick-bottom', time: at + 0.24 });
  instants.push({ kind: 'kick-top', time: at + 0.55 }, { kind: 'kick-bottom', time: at + 0.76 });
  instants.push({ kind: 'breath', time: at + 0.66 });
}
const film = { rate: 60, slowdown: 1, uneven: 0, eventSd: 0.01 };
const swim = markInstants(instants, film, seeded(1));
const times: number[] = [];
for (let i = 0; i < 60; i++) {
  const start = performance.now();
  const context = contextOf(swim, 0.01);
  for (const family of eventFamilies) family.read(context);
  times.push(performance.now() - start);
}
const sorted = times.slice(10).sort((a, b) => a - b);
console.log(
  `${instants.length} events: quickest ${sorted[0]?.toFixed(2)} ms, median ${sorted[25]?.toFixed(2)} ms, slowest ${sorted.at(-1)?.toFixed(2)} ms`,
);
