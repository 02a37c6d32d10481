import type { SKRSContext2D } from '@napi-rs/canvas';
import { drawNumber } from './drawing/draw-number';
import { drawPool, drawSurface } from './drawing/draw-pool';
import { drawBubbles, drawSwimmer } from './drawing/draw-swimmer';
import type { BodyPoints } from './model/swimmer-model';
import type { Scenario } from './scenario';

/** Draws picture `number` of a scenario, taken at real time `time`. */
export function drawPicture(
  context: SKRSContext2D,
  scenario: Scenario,
  bodyAt: (time: number) => BodyPoints,
  number: number,
  time: number,
): void {
  const { camera, technique, looks } = scenario;
  drawPool(context, camera, time);
  drawSwimmer(context, camera, bodyAt(time), technique.size, looks);
  drawBubbles(context, camera, bodyAt, time, technique.kind === 'butterfly' ? 900 : 420);
  drawSurface(context, camera, time);
  drawNumber(context, camera.width, camera.height, number);
}
