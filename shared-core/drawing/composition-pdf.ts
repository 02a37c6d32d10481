import {
  appendBezierCurve,
  closePath,
  fill,
  LineCapStyle,
  LineJoinStyle,
  lineTo,
  moveTo,
  PDFDocument,
  type PDFFont,
  type PDFOperator,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rgb,
  setDashPattern,
  setFillingColor,
  setGraphicsState,
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingColor,
  stroke,
  TextRenderingMode,
} from '@cantoo/pdf-lib';
import * as fontkit from 'fontkit';
import type { Point } from '../units/point';
import type { Composition } from './composition';
import type { DrawingOp, Edge } from './drawing-op';
import { casingWidth } from './paint';
import type { Letters } from './pdf-letters';

export interface PdfFacts {
  readonly title: string;
  /** Written into the file as its day of making. */
  readonly madeAt: Date;
}

/**
 * A composition as a PDF of one page, its units taken as points: the same drawing that the painter puts on a canvas, with
 * the letters embedded (only those used) and every film picture as the JPEG given for it, in the order of `pictures`.
 */
export async function compositionPdf(
  composition: Composition,
  jpegs: readonly Uint8Array[],
  letters: Letters,
  facts: PdfFacts,
): Promise<Uint8Array> {
  const { width, height } = composition;
  const file = await PDFDocument.create({ updateMetadata: false });
  file.registerFontkit(fontkit as unknown as Parameters<PDFDocument['registerFontkit']>[0]);
  file.setTitle(facts.title, { showInWindowTitleBar: true });
  file.setProducer('Submark');
  file.setCreationDate(facts.madeAt);
  file.setModificationDate(facts.madeAt);
  // no ligatures: the words are measured letter by letter
  const plain = { subset: true, features: { liga: false, kern: false, calt: false } };
  const fonts = {
    400: await file.embedFont(letters.bytes[400], plain),
    600: await file.embedFont(letters.bytes[600], plain),
  };
  const page = file.addPage([width, height]);
  page.drawRectangle({ x: 0, y: 0, width, height, color: colourOf(composition.ground) });
  for (const [index, { at }] of composition.pictures.entries()) {
    const jpeg = jpegs[index];
    if (!jpeg) continue;
    const image = await file.embedJpg(jpeg);
    page.drawImage(image, { x: at.x, y: height - at.y - at.height, width: at.width, height: at.height });
  }
  const pen = new Pen(page, height, fonts);
  for (const op of composition.over) pen.draw(op);
  return file.save({ useObjectStreams: false });
}

/** A circle as four curves: how far their handles reach, as a share of the radius (4/3 · (√2 − 1)). */
const handle = (4 / 3) * (Math.SQRT2 - 1);

class Pen {
  constructor(
    private readonly page: PDFPage,
    private readonly height: number,
    private readonly fonts: Readonly<Record<400 | 600, PDFFont>>,
  ) {}

  draw(op: DrawingOp): void {
    switch (op.op) {
      case 'line':
        this.shape(op.opacity, [
          setStrokingColor(colourOf(op.colour)),
          setLineWidth(op.width),
          setLineCap(op.cap === 'butt' ? LineCapStyle.Butt : LineCapStyle.Round),
          setDashPattern([...(op.dash ?? [])], 0),
          ...this.path(op.points),
          stroke(),
        ]);
        return;
      case 'area':
        this.filled([...this.path(op.points), closePath()], op.fill, op.edge, op.opacity);
        return;
      case 'disc':
        this.filled(this.circle(op.at, op.radius), op.fill, op.edge, op.opacity);
        return;
      case 'outline':
        this.filled(
          op.contours.flatMap((contour) => [...this.path(contour), closePath()]),
          op.fill,
          op.edge,
          1,
        );
        return;
      case 'words':
        this.words(op);
    }
  }

  private words(op: Extract<DrawingOp, { op: 'words' }>): void {
    if (op.words === '') return;
    const font = this.fonts[op.weight];
    const width = font.widthOfTextAtSize(op.words, op.size);
    const left = op.align === 'centre' ? width / 2 : op.align === 'right' ? width : 0;
    const at = { x: op.at.x - left, y: this.height - op.at.y, font, size: op.size };
    if (op.casing !== null) {
      this.page.pushOperators(pushGraphicsState(), setLineJoin(LineJoinStyle.Round));
      this.page.drawText(op.words, {
        ...at,
        color: colourOf(op.casing),
        strokeColor: colourOf(op.casing),
        strokeWidth: casingWidth(op.size),
        renderMode: TextRenderingMode.FillAndOutline,
      });
      this.page.pushOperators(popGraphicsState());
    }
    this.page.drawText(op.words, { ...at, color: colourOf(op.colour) });
  }

  /** Edge first and the fill over it, as the painter has it. */
  private filled(
    path: readonly PDFOperator[],
    colour: string | null,
    edge: Edge | undefined,
    opacity: number | undefined,
  ): void {
    if (edge)
      this.shape(opacity, [
        setStrokingColor(colourOf(edge.colour)),
        setLineWidth(edge.width),
        setDashPattern([], 0),
        ...path,
        stroke(),
      ]);
    if (colour !== null) this.shape(opacity, [setFillingColor(colourOf(colour)), ...path, fill()]);
  }

  private shape(opacity: number | undefined, operators: readonly PDFOperator[]): void {
    const state =
      opacity === undefined || opacity === 1
        ? []
        : [
            setGraphicsState(
              this.page.node.newExtGState(
                'GS',
                this.page.doc.context.obj({ Type: 'ExtGState', ca: opacity, CA: opacity }),
              ),
            ),
          ];
    this.page.pushOperators(
      pushGraphicsState(),
      setLineJoin(LineJoinStyle.Round),
      ...state,
      ...operators,
      popGraphicsState(),
    );
  }

  private path(points: readonly Point[]): readonly PDFOperator[] {
    return points.map(({ x, y }, index) =>
      index === 0 ? moveTo(x, this.height - y) : lineTo(x, this.height - y),
    );
  }

  private circle(at: Point, radius: number): readonly PDFOperator[] {
    const { x } = at;
    const y = this.height - at.y;
    const k = radius * handle;
    return [
      moveTo(x + radius, y),
      appendBezierCurve(x + radius, y + k, x + k, y + radius, x, y + radius),
      appendBezierCurve(x - k, y + radius, x - radius, y + k, x - radius, y),
      appendBezierCurve(x - radius, y - k, x - k, y - radius, x, y - radius),
      appendBezierCurve(x + k, y - radius, x + radius, y - k, x + radius, y),
      closePath(),
    ];
  }
}

/** "#rrggbb" as a PDF's colour. */
function colourOf(hex: string): ReturnType<typeof rgb> {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map(
    (at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255,
  );
  return rgb(red, green, blue);
}
