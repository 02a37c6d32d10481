import type { LandmarkName } from '../marks/landmark';

/** Which part of the body a landmark speaks for: it decides colour and shape together. */
export type BodyPart = 'hands' | 'trunk' | 'head' | 'feet';

const parts: Readonly<Record<LandmarkName, BodyPart>> = {
  fingertip: 'hands',
  wrist: 'hands',
  elbow: 'hands',
  shoulder: 'trunk',
  ear: 'head',
  hip: 'trunk',
  knee: 'feet',
  ankle: 'feet',
  toe: 'feet',
};

export const bodyPartOf = (landmark: LandmarkName): BodyPart => parts[landmark];

/** Okabe & Ito 2008; the picture is never themed, so neither are the marks on it. */
export const partColour: Readonly<Record<BodyPart, string>> = {
  hands: '#e69f00',
  trunk: '#ffffff',
  head: '#cc79a7',
  feet: '#56b4e9',
};

export type PartShape = 'diamond' | 'square' | 'circle' | 'triangle';
export const partShape: Readonly<Record<BodyPart, PartShape>> = {
  hands: 'diamond',
  trunk: 'square',
  head: 'circle',
  feet: 'triangle',
};

/** Dark edge under every line and letter on the picture: it reads on bright and on dark water. */
export const casing = '#001018';
