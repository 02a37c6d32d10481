import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Looks } from '../../../sample-clips/drawing/draw-body';
import { makeClip } from '../../../sample-clips/make-clip';
import { makeTruth } from '../../../sample-clips/make-truth';
import { seeded } from '../../../sample-clips/model/seeded';
import type { Technique } from '../../../sample-clips/model/technique';
import { card, type Scenario } from '../../../sample-clips/scenario';
import { pip } from '../../../sample-clips/squad-looks';
import { truthSchema } from '../../../sample-clips/truth-schema';
import { split, under } from '../../../sample-clips/usual-camera';
import { butterfly, kick } from '../../../sample-clips/usual-technique';
import type { SeeClip } from './see-clips';

/** Seconds of each, and pictures a second: short, as every picture is drawn and looked at. */
const seconds = 2.6;
const rate = 30;

/** Skin from dark to light, our own figures. */
const skins: readonly Looks['skin'][] = [
  { light: [92, 62, 46], dark: [34, 22, 16] },
  { light: [142, 98, 70], dark: [56, 36, 26] },
  { light: [190, 136, 100], dark: [78, 48, 34] },
  { light: [226, 180, 144], dark: [108, 72, 52] },
  { light: [246, 214, 188], dark: [136, 96, 76] },
];

/** One swimmer of invented looks and technique, in an invented pool, every number drawn from the seed. */
function scenarioOf(seed: number): Scenario {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const usual = seed % 2 === 0 ? kick : butterfly;
  const technique: Technique = {
    ...usual,
    period: usual.period * between(0.85, 1.2),
    startTime: between(0.02, 0.3),
    toeSwing: usual.toeSwing * between(0.75, 1.2),
    waveSpeed: usual.waveSpeed * between(0.85, 1.2),
    speed: usual.speed * between(0.8, 1.05),
    depth: usual === kick ? between(-1, -0.55) : usual.depth,
    size: between(1.75, 2.45),
  };
  const colour = (): readonly [number, number, number] => [
    between(20, 250),
    between(20, 250),
    between(20, 250),
  ];
  const tone = (light: readonly [number, number, number]) => ({
    light: [...light] as [number, number, number],
    dark: light.map((each) => each * 0.35) as [number, number, number],
  });
  const looks: Looks = {
    ...pip,
    skin: skins[seed % skins.length] ?? pip.skin,
    suit: tone(colour()),
    cap: tone(colour()),
    suitFrom: between(1.2, 1.8),
    suitTo: between(2.05, 2.6),
    build: between(0.86, 1.08),
  };
  const base = usual === kick ? under : split;
  const wide = between(0.9, 1.15);
  const camera = {
    ...base,
    width: 960,
    height: 540,
    metresPerPixel: ((base.metresPerPixel * 4) / 3) * wide,
    surfaceRow: Math.round((0.75 * base.surfaceRow) / wide),
    travel: random() < 0.5 ? ('left' as const) : ('right' as const),
  };
  const id = `proof-${seed}`;
  return {
    ...{ id, file: `${id}.mp4`, technique, looks, camera },
    ...{ captureRate: rate, storedRate: rate, pictures: Math.round(rate * seconds), shape: 'plain' },
    card: { ...card, aids: [], arms: technique.arms, stroke: usual === kick ? 'dolphin-kick' : 'butterfly' },
    ...{ marked: 1, lineEvery: 0, withScale: true },
  };
}

/** A drawn swim on which nothing was ever set; drawn once, a minute or less, and kept. */
export async function proofSwim(seed: number): Promise<SeeClip> {
  const scenario = scenarioOf(seed);
  const folder = fileURLToPath(new URL(`../../../.cache/see/${scenario.id}/`, import.meta.url));
  const truthFile = `${folder}truth.json`;
  if (!existsSync(truthFile)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(truthFile, JSON.stringify(makeTruth(scenario, await makeClip(scenario, folder))));
  }
  return {
    name: scenario.id,
    file: `${folder}${scenario.file}`,
    width: scenario.camera.width,
    height: scenario.camera.height,
    truth: truthSchema.parse(JSON.parse(readFileSync(truthFile, 'utf8'))),
    arms: scenario.technique.arms === 'stroking' ? 'stroking' : 'stretched',
    setOn: false,
    empty: false,
    filter: null,
  };
}
