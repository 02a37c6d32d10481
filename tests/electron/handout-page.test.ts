import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Composition, Rect } from '#core/drawing/composition';
import type { DrawingOp } from '#core/drawing/drawing-op';
import { type ExportSource, exportSource } from '#core/exporting/export-source';
import { composeHandout } from '#core/handout/compose-handout';
import { firstHandout } from '#core/handout/first-handout';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import { makeHandout } from '#electron/export/make-handout';
import { letterFile, lettersFor } from '#electron/export/more-letters';

const library = fileURLToPath(new URL('../../sample-clips/library/', import.meta.url));
const home = path.join(library, 'swims', 'sample-butterfly-together');
let folder: string;
let source: ExportSource;
let clip: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-page-'));
  const swim = parseSwim(await readFile(path.join(home, 'swim.json'), 'utf8'));
  const squad = parseSquad(await readFile(path.join(library, 'squad.json'), 'utf8'));
  if (!swim.ok || !squad.ok || swim.value.clip.place.kind !== 'inside') throw new Error('a sample');
  clip = path.join(home, swim.value.clip.place.name);
  const swimmer = squad.value.swimmers.find(({ id }) => id === swim.value.card.swimmerId) ?? null;
  source = exportSource(swim.value, { swimmer, markingError: null });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const named = (swimmerName: string): ExportSource => ({
  ...source,
  swim: { ...source.swim, card: { ...source.swim.card, swimmerName } },
});
const outlines = (ops: readonly DrawingOp[]) => ops.flatMap((op) => (op.op === 'outline' ? [op] : []));

describe('the letters of the handout', () => {
  it('are there for names in the scripts that coaches write', async () => {
    for (const name of ['髙橋 さくら', '王小明', '김민준', 'محمد علي', 'प्रिया शर्मा', 'נועה', 'สมชาย'])
      expect([name, (await lettersFor(name)).missing(name)]).toEqual([name, []]);
    expect((await lettersFor('𓀀')).missing('𓀀')).toEqual(['𓀀']);
  });

  it('take Han letters from the language that stands beside them', async () => {
    expect(path.basename((await letterFile('直')) ?? '')).toMatch(/^noto-sans-sc-/);
    expect(path.basename((await letterFile('直さ')) ?? '')).toMatch(/^noto-sans-jp-/);
    expect(path.basename((await letterFile('直김')) ?? '')).toMatch(/^noto-sans-kr-/);
  });

  it('keep their own measure and place, and leave plain words as they are', async () => {
    const letters = await lettersFor('Bo 王小明');
    const op: DrawingOp = {
      op: 'words',
      words: 'Bo 王小明',
      at: { x: 100, y: 50 },
      size: 20,
      weight: 400,
      colour: '#000000',
      casing: null,
      align: 'right',
    };
    const [latin, ...han] = letters.outlined([op]);
    expect(
      outlines(han)
        .map(({ words }) => words)
        .join(''),
    ).toBe('王小明');
    expect(latin).toMatchObject({ op: 'words', words: 'Bo ' });
    // three full-width letters are three times as wide as they are high
    expect(letters.measure('王小明', 20, 400)).toBeCloseTo(60, 5);
    const xs = outlines(han).flatMap(({ contours }) => contours.flat().map(({ x }) => x));
    expect(Math.min(...xs)).toBeGreaterThan(40);
    expect(Math.max(...xs)).toBeLessThan(100);
    const plain = { ...op, words: 'Bo' };
    expect(letters.outlined([plain])).toEqual([plain]);
  });

  it('of Arabic are joined and run from right to left, both words of a name', async () => {
    const letters = await lettersFor('محمد علي');
    const page = composeHandout(firstHandout(source, 'a4'), named('محمد علي'), letters.measure);
    const shapes = outlines(letters.outlined(page.over));
    expect(shapes.map(({ words }) => words)).toEqual(['محمد علي']);
    // shaped as joined letters, not one by one
    const alone = [...'محمد'].reduce((sum, letter) => sum + letters.measure(letter, 30, 600), 0);
    expect(Math.abs(letters.measure('محمد', 30, 600) - alone)).toBeGreaterThan(1);
    // read from the right: the second word begins at the left end, the first follows it
    const [whole] = shapes;
    const op: DrawingOp = {
      op: 'words',
      words: 'علي',
      at: { x: 42, y: 68 },
      size: 30,
      weight: 600,
      colour: '#0b1a20',
      casing: null,
    };
    const [second] = outlines(letters.outlined([op]));
    const ends = ({ contours }: NonNullable<typeof second>) => contours.map((each) => each[0]?.x.toFixed(3));
    if (!whole || !second) throw new Error('both are outlines');
    expect(ends(whole).slice(0, second.contours.length)).toEqual(ends(second));
  });
});

/** Grey values of a page as another program prints it, 2 pixels a point. */
async function greyPage(pdf: Uint8Array, name: string): Promise<(at: Rect) => number[]> {
  const file = path.join(folder, `${name}.pdf`);
  await writeFile(file, pdf);
  await execa('pdftoppm', ['-r', '144', '-gray', '-png', '-singlefile', file, path.join(folder, name)]);
  const image = await loadImage(path.join(folder, `${name}.png`));
  const canvas = createCanvas(image.width, image.height);
  const context = canvas.getContext('2d');
  context.drawImage(image, 0, 0);
  return ({ x, y, width, height }) => {
    const { data } = context.getImageData(2 * x, 2 * y, Math.max(1, 2 * width), Math.max(1, 2 * height));
    return Array.from({ length: data.length / 4 }, (_, n) => data[4 * n] ?? 0);
  };
}

/** Contrast of two greys as WCAG 2 has it: from 1, none, to 21. */
function contrast(one: number, other: number): number {
  const light = (grey: number): number => {
    const share = grey / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  const [low, high] = [light(one), light(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const wordsOf = ({ over }: Composition) =>
  over.flatMap((op) => (op.op === 'words' && op.casing === null && op.words !== '' ? [op] : []));

describe('the handout printed in grey', () => {
  it('keeps every word, each target band and its ends apart from the paper', async () => {
    const handout = { ...firstHandout(source, 'letter'), cue: 'Kick as the hands go in' };
    const made = await makeHandout(
      handout,
      source,
      { file: clip, clip: source.swim.clip },
      new Date('2026-05-20T10:00:00Z'),
    );
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    const grey = await greyPage(made.value.pdf, 'page');
    const letters = await lettersFor('');
    const page = composeHandout(handout, source, letters.measure);
    const words = wordsOf(page);
    expect(words.map(({ words: text }) => text)).toEqual(
      expect.arrayContaining(['On target', 'Think of this']),
    );
    for (const op of words) {
      const width = letters.measure(op.words, op.size, op.weight);
      const x =
        op.align === 'right' ? op.at.x - width : op.align === 'centre' ? op.at.x - width / 2 : op.at.x;
      const seen = grey({ x, y: op.at.y - op.size * 0.75, width, height: op.size * 0.75 });
      expect([op.words, contrast(Math.min(...seen), Math.max(...seen)) > 4.5]).toEqual([op.words, true]);
    }
    const areas = page.over.flatMap((op) => (op.op === 'area' && op.fill === '#b9c8cf' ? [op.points] : []));
    expect(areas.length).toBeGreaterThan(0);
    for (const points of areas) {
      const [left, right] = [points[0]?.x ?? 0, points[1]?.x ?? 0];
      const top = points[0]?.y ?? 0;
      const band = grey({ x: left + 3, y: top + 1, width: 1, height: 1 })[0] ?? 255;
      expect(contrast(band, 255)).toBeGreaterThan(1.5);
      // its ends: dark lines (the value may stand on one of them)
      for (const end of [left, right]) {
        const darkest = Math.min(...grey({ x: end - 1, y: top - 1, width: 2, height: 1 }));
        expect(contrast(darkest, 255)).toBeGreaterThan(4.5);
        expect(contrast(darkest, band)).toBeGreaterThan(3);
      }
    }
  });
});
