import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import { burstsOf, drawBubbles } from './drawing/draw-bubbles';
import { drawGlare } from './drawing/draw-glare';
import { drawNumber } from './drawing/draw-number';
import { drawPool } from './drawing/draw-pool';
import { drawSurface } from './drawing/draw-surface';
import { drawSwimmer } from './drawing/draw-swimmer';
import { swimmerModel } from './model/swimmer-model';
import { trueEvents } from './model/true-events';
import type { Scenario } from './scenario';

export type DrawPicture = (context: SKRSContext2D, number: number, time: number) => void;

/** A painter of a scenario's pictures: picture `number`, taken at real time `time`. Each is drawn from nothing. */
export function pictureDrawer(scenario: Scenario): DrawPicture {
  const { camera, technique, looks } = scenario;
  const length = scenario.pictures / scenario.captureRate + 1;
  const bodyAt = swimmerModel(technique);
  const bursts = burstsOf(
    trueEvents(bodyAt, length, technique.kind),
    bodyAt,
    length,
    scenario.trouble?.bubbles ?? 1,
  );
  const sheet = createCanvas(camera.width, camera.height);
  return (context, number, time) => {
    drawPool(context, camera, time);
    drawSwimmer(context, sheet, camera, technique, looks, bodyAt, time, scenario.trouble?.farLag);
    drawBubbles(context, camera, bursts, bodyAt, time);
    drawSurface(context, camera, time);
    if (scenario.trouble?.glare) drawGlare(context, camera, scenario.trouble.glare, time);
    drawNumber(context, camera.width, camera.height, number);
  };
}
