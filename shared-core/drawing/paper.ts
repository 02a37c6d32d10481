/**
 * What is drawn on: the part of a 2D canvas that the painter uses. A canvas of the window is one, and so is the host's.
 * Styles are read by nobody here, so they may be of any type.
 */
export interface Paper {
  fillStyle: unknown;
  strokeStyle: unknown;
  lineWidth: number;
  lineCap: string;
  lineJoin: string;
  globalAlpha: number;
  font: string;
  textAlign: string;
  textBaseline: string;
  save(): void;
  restore(): void;
  beginPath(): void;
  closePath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  arc(x: number, y: number, radius: number, from: number, to: number): void;
  stroke(): void;
  fill(): void;
  setLineDash(lengths: number[]): void;
  strokeText(words: string, x: number, y: number): void;
  fillText(words: string, x: number, y: number): void;
  measureText(words: string): { readonly width: number };
}
