import type { Looks } from './drawing/draw-body';

/** How the invented swimmers look. */
export const pip: Looks = {
  skin: { light: [244, 205, 174], dark: [128, 84, 62] },
  suit: { light: [52, 82, 138], dark: [10, 18, 40] },
  cap: { light: [250, 252, 252], dark: [132, 152, 164] },
  suitFrom: 1.22,
  suitTo: 2.36,
  build: 0.9,
  fins: false,
  snorkel: false,
};
export const juno: Looks = {
  skin: { light: [190, 136, 100], dark: [78, 48, 34] },
  suit: { light: [140, 44, 88], dark: [38, 8, 26] },
  cap: { light: [252, 208, 84], dark: [150, 102, 22] },
  suitFrom: 1.24,
  suitTo: 2.06,
  build: 0.94,
  fins: false,
  snorkel: false,
};
export const ansel: Looks = {
  skin: { light: [236, 192, 156], dark: [116, 76, 54] },
  suit: { light: [30, 96, 84], dark: [6, 28, 26] },
  cap: { light: [232, 84, 70], dark: [112, 24, 22] },
  suitFrom: 1.78,
  suitTo: 2.68,
  build: 1.02,
  fins: false,
  snorkel: false,
};
