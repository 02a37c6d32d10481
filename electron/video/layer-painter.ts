import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import { drawingBox } from '#core/drawing/drawing-box';
import type { DrawingOp, MeasureWords } from '#core/drawing/drawing-op';
import { measureOn, paint } from '#core/drawing/paint';
import { type Layer, layerFromRgba } from './layer';

/** Paints drawings as layers for the planes of one video. */
export interface LayerPainter {
  readonly measure: MeasureWords;
  /** The layer of a drawing; null when it draws nothing inside the picture. */
  paint(drawing: readonly DrawingOp[]): Layer | null;
  /** The same, kept under a name: painted anew only when the drawing under that name has changed. */
  again(name: string, drawing: readonly DrawingOp[]): Layer | null;
}

/** Sizes of papers: powers of two from 16 on, so that a handful serves every layer. */
const nextSize = (length: number): number => 2 ** Math.max(4, Math.ceil(Math.log2(length)));

export function createLayerPainter(width: number, height: number): LayerPainter {
  // reading pixels back costs by the size of the whole canvas: each layer is painted on one hardly larger than itself
  const papers = new Map<string, SKRSContext2D>();
  const paperFor = (across: number, down: number): SKRSContext2D => {
    const [w, h] = [nextSize(across), nextSize(down)];
    const known = papers.get(`${w} ${h}`) ?? createCanvas(w, h).getContext('2d');
    papers.set(`${w} ${h}`, known);
    return known;
  };
  const widths = new Map<string, number>();
  const plain = measureOn(paperFor(16, 16));
  // measuring takes longer than painting, and the same words come again on every picture
  const measure: MeasureWords = (words, size, weight) => {
    const key = `${weight} ${size} ${words}`;
    const known = widths.get(key);
    if (known !== undefined) return known;
    if (widths.size > 5000) widths.clear();
    const found = plain(words, size, weight);
    widths.set(key, found);
    return found;
  };
  const kept = new Map<string, { readonly drawing: string; readonly layer: Layer | null }>();

  const toLayer = (drawing: readonly DrawingOp[]): Layer | null => {
    const box = drawingBox(drawing, measure);
    if (!box) return null;
    const left = Math.max(0, 2 * Math.floor(box.left / 2));
    const top = Math.max(0, 2 * Math.floor(box.top / 2));
    const right = Math.min(width, 2 * Math.ceil(box.right / 2));
    const bottom = Math.min(height, 2 * Math.ceil(box.bottom / 2));
    if (right <= left || bottom <= top) return null;
    const place = { left, top, width: right - left, height: bottom - top };
    const context = paperFor(place.width, place.height);
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, place.width, place.height);
    context.translate(-left, -top);
    paint(context, drawing);
    const { data } = context.getImageData(0, 0, place.width, place.height);
    return layerFromRgba(data, place);
  };

  return {
    measure,
    paint: toLayer,
    again(name, drawing) {
      const text = JSON.stringify(drawing);
      const found = kept.get(name);
      if (found?.drawing === text) return found.layer;
      const layer = toLayer(drawing);
      kept.set(name, { drawing: text, layer });
      return layer;
    },
  };
}
