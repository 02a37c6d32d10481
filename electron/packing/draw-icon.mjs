// Draws Submark's icon in every size and file that the three systems ask for: npm run icon.
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createCanvas } from '@napi-rs/canvas';

const folder = fileURLToPath(new URL('.', import.meta.url));

/** Deep water as in the app's own look, a marked body line, and the mark that times it. */
const colours = { top: '#1383a3', bottom: '#083d50', surface: '#a9dbe6', line: '#ffffff', toes: '#ffb454' };

/** The body line in a square of side 1, hands at 0 to toes at 1: a wave that grows toward the feet. */
function bodyAt(along) {
  const height = 0.03 + 0.17 * along ** 1.2;
  return { x: 0.17 + 0.64 * along, y: 0.57 - height * Math.sin(2 * Math.PI * (1.08 * along - 0.03)) };
}
/** Nine, as in the app. */
const landmarks = Array.from({ length: 9 }, (_, n) => bodyAt(n / 8));

/** The icon as a square of so many pixels. Small ones have a bolder line and only the marks that can be told apart. */
export function drawIcon(pixels) {
  const canvas = createCanvas(pixels, pixels);
  const context = canvas.getContext('2d');
  context.scale(pixels, pixels);
  const small = pixels <= 48;
  const edge = small ? 0.02 : 0.06;
  const water = context.createLinearGradient(0, edge, 0, 1 - edge);
  water.addColorStop(0, colours.top);
  water.addColorStop(1, colours.bottom);
  context.fillStyle = water;
  context.beginPath();
  context.roundRect(edge, edge, 1 - 2 * edge, 1 - 2 * edge, 0.2);
  context.fill();
  context.lineCap = 'round';
  context.lineJoin = 'round';
  if (!small) {
    context.strokeStyle = colours.surface;
    context.lineWidth = 0.022;
    context.beginPath();
    context.moveTo(0.2, 0.245);
    context.lineTo(0.8, 0.245);
    context.stroke();
  }
  context.strokeStyle = colours.line;
  context.lineWidth = small ? 0.11 : 0.078;
  context.beginPath();
  for (let step = 0; step <= 100; step++) {
    const { x, y } = bodyAt(step / 100);
    context.lineTo(x, y);
  }
  context.stroke();
  landmarks.forEach((point, n) => {
    const last = n === landmarks.length - 1;
    if (small && !last) return;
    context.fillStyle = last ? colours.toes : colours.bottom;
    context.beginPath();
    context.arc(point.x, point.y, last ? (small ? 0.13 : 0.085) : 0.018, 0, 2 * Math.PI);
    context.fill();
  });
  return canvas.toBuffer('image/png');
}

/** An ICO file of PNG pictures, each of at most 256 pixels. */
export function icoOf(pictures) {
  const head = Buffer.alloc(6 + 16 * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.length;
  pictures.forEach(({ pixels, png }, n) => {
    const at = 6 + 16 * n;
    // 256 is written as 0
    head.writeUInt8(pixels % 256, at);
    head.writeUInt8(pixels % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.length;
  });
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** An ICNS file of PNG pictures, each under the type macOS has for its size. */
export function icnsOf(pictures) {
  const parts = pictures.map(({ type, png }) => {
    const head = Buffer.alloc(8);
    head.write(type, 'latin1');
    head.writeUInt32BE(png.length + 8, 4);
    return Buffer.concat([head, png]);
  });
  const head = Buffer.alloc(8);
  head.write('icns', 'latin1');
  head.writeUInt32BE(8 + parts.reduce((sum, part) => sum + part.length, 0), 4);
  return Buffer.concat([head, ...parts]);
}

/** Sizes for Linux' icon folders. */
export const linuxSizes = [16, 32, 48, 64, 128, 256, 512];
/** Sizes Windows asks for, from its tray to its largest icons. */
export const windowsSizes = [16, 24, 32, 48, 64, 128, 256];
/** macOS' types of PNG pictures and their sizes, those for dense screens among them. */
export const macTypes = {
  ic11: 32,
  ic12: 64,
  ic07: 128,
  ic13: 256,
  ic08: 256,
  ic14: 512,
  ic09: 512,
  ic10: 1024,
};

/** Every file of the icon by its place in this folder. */
export function iconFiles() {
  const drawn = new Map();
  const png = (pixels) => {
    if (!drawn.has(pixels)) drawn.set(pixels, drawIcon(pixels));
    return drawn.get(pixels);
  };
  return {
    ...Object.fromEntries(linuxSizes.map((size) => [`icons/${size}x${size}.png`, png(size)])),
    'icon.ico': icoOf(windowsSizes.map((pixels) => ({ pixels, png: png(pixels) }))),
    'icon.icns': icnsOf(Object.entries(macTypes).map(([type, pixels]) => ({ type, png: png(pixels) }))),
  };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  mkdirSync(path.join(folder, 'icons'), { recursive: true });
  for (const [name, bytes] of Object.entries(iconFiles())) writeFileSync(path.join(folder, name), bytes);
}
