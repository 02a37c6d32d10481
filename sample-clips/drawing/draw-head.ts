import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Body } from '../model/swimmer-model';
import type { Looks, Project } from './draw-body';

const rgb = (tone: readonly number[]): string => `rgb(${tone.join(',')})`;

/**
 * Head in profile with cap and goggles. Drawn in its own frame: u toward the crown, v toward the face, metres for a body
 * of 2.3 m, the ear at the origin.
 */
export function drawHead(
  context: SKRSContext2D,
  body: Body,
  looks: Looks,
  scale: number,
  belly: 1 | -1,
  project: Project,
): void {
  const face = body.crown - (belly * Math.PI) / 2;
  const at = (u: number, v: number): readonly [number, number] => {
    const p = project({
      x: body.ear.x + scale * (u * Math.cos(body.crown) + v * Math.cos(face)),
      y: body.ear.y + scale * (u * Math.sin(body.crown) + v * Math.sin(face)),
    });
    return [p.x, p.y];
  };
  const curve = (
    c1: readonly [number, number],
    c2: readonly [number, number],
    to: readonly [number, number],
  ): void => context.bezierCurveTo(...at(...c1), ...at(...c2), ...at(...to));
  const high = project({ x: body.ear.x, y: body.ear.y + 0.12 * scale });
  const low = project({ x: body.ear.x, y: body.ear.y - 0.12 * scale });
  const shade = (light: readonly number[], dark: readonly number[]) => {
    const fill = context.createLinearGradient(0, high.y, 0, low.y);
    fill.addColorStop(0.1, rgb(light));
    fill.addColorStop(0.95, rgb(dark));
    return fill;
  };
  // face and neck
  context.fillStyle = shade(looks.skin.light, looks.skin.dark);
  context.beginPath();
  context.moveTo(...at(0.1, -0.03));
  curve([0.12, 0.03], [0.1, 0.07], [0.06, 0.085]); // forehead
  curve([0.045, 0.09], [0.035, 0.088], [0.03, 0.086]); // brow
  curve([0.012, 0.1], [-0.002, 0.114], [-0.008, 0.108]); // nose
  curve([-0.014, 0.1], [-0.016, 0.096], [-0.022, 0.094]);
  curve([-0.03, 0.102], [-0.036, 0.1], [-0.04, 0.094]); // upper lip
  curve([-0.046, 0.099], [-0.053, 0.098], [-0.058, 0.09]); // lower lip
  curve([-0.07, 0.096], [-0.084, 0.09], [-0.088, 0.076]); // chin
  curve([-0.088, 0.05], [-0.082, 0.03], [-0.095, 0.02]); // jaw
  curve([-0.12, 0.01], [-0.13, 0], [-0.14, -0.02]);
  curve([-0.13, -0.06], [-0.1, -0.07], [-0.06, -0.075]); // nape
  curve([0, -0.1], [0.08, -0.09], [0.1, -0.03]);
  context.closePath();
  context.fill();
  // cap
  context.fillStyle = shade(looks.cap.light, looks.cap.dark);
  context.beginPath();
  context.moveTo(...at(0.052, 0.09));
  curve([0.095, 0.085], [0.128, 0.04], [0.118, -0.02]);
  curve([0.11, -0.085], [0.03, -0.115], [-0.045, -0.086]);
  curve([-0.05, -0.06], [-0.04, -0.03], [-0.022, -0.012]);
  curve([0.005, 0.008], [0.03, 0.04], [0.052, 0.09]);
  context.closePath();
  context.fill();
  // ear half under the cap
  context.fillStyle = rgb(
    looks.skin.light.map((c, k) => Math.round(0.6 * c + 0.4 * (looks.skin.dark[k] ?? 0))),
  );
  context.beginPath();
  context.moveTo(...at(0.006, 0.008));
  curve([0.004, -0.014], [-0.022, -0.016], [-0.03, 0]);
  curve([-0.03, 0.012], [-0.01, 0.016], [0.006, 0.008]);
  context.fill();
  // goggles and their strap
  const pixel = Math.hypot(at(0.01, 0)[0] - at(0, 0)[0], at(0.01, 0)[1] - at(0, 0)[1]) / 0.01;
  context.strokeStyle = 'rgba(16,22,30,0.85)';
  context.lineWidth = Math.max(1.2, 0.011 * pixel);
  context.beginPath();
  context.moveTo(...at(0.034, 0.066));
  curve([0.045, 0.02], [0.045, -0.04], [0.03, -0.088]);
  context.stroke();
  context.fillStyle = 'rgba(14,24,38,0.95)';
  context.beginPath();
  context.moveTo(...at(0.044, 0.088));
  curve([0.05, 0.075], [0.044, 0.062], [0.03, 0.06]);
  curve([0.014, 0.06], [0.008, 0.07], [0.012, 0.086]);
  curve([0.018, 0.098], [0.036, 0.1], [0.044, 0.088]);
  context.fill();
  context.fillStyle = 'rgba(150,210,235,0.8)';
  context.beginPath();
  context.arc(...at(0.034, 0.083), Math.max(0.7, 0.006 * pixel), 0, 2 * Math.PI);
  context.fill();
  // mouth
  context.strokeStyle = 'rgba(110,44,40,0.7)';
  context.lineWidth = Math.max(1, 0.005 * pixel);
  context.beginPath();
  context.moveTo(...at(-0.043, 0.094));
  context.lineTo(...at(-0.046, 0.076));
  context.stroke();
  if (!looks.snorkel) return;
  context.strokeStyle = '#e8c13c';
  context.lineCap = 'round';
  context.lineWidth = Math.max(2, 0.024 * pixel);
  context.beginPath();
  context.moveTo(...at(-0.05, 0.1));
  curve([-0.05, 0.15], [0.05, 0.15], [0.12, 0.1]);
  curve([0.17, 0.06], [0.2, -0.08], [0.16, -0.36]);
  context.stroke();
}
