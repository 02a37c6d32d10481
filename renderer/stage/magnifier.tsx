import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { bodyChain, landmarkNames } from '#core/marks/landmark';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { landmarkWords } from '#core/marks/mark-words';
import { postureOn } from '../open-swim/selectors';
import { bodyPartOf, casing, partColour } from '#core/drawing/landmark-look';
import { type Size, type StageView, toStage } from '../open-swim/stage-view';
import { stageWords } from '#core/words/stage';

const diameter = 148;
const times = 4;

/** The picture around the point being placed, four times as large as on the stage, out of the finger's way. */
export function Magnifier({ view, size }: { readonly view: StageView; readonly size: Size }) {
  const session = useOpenSwim();
  const source = useStore(session.film, (state) => state.source);
  const dragging = useView((state) => state.dragging);
  const tool = useView((state) => state.tool);
  const nextLandmark = useView((state) => state.nextLandmark);
  const selection = useView((state) => state.selection);
  const at = useView((state) => state.crosshair ?? state.pointer);
  const shownFrame = useView((state) => state.shownFrame);
  const posture = useSwim((swim) => (shownFrame === null ? null : postureOn(swim, shownFrame)));
  const canvas = useRef<HTMLCanvasElement>(null);
  const drawing = tool !== 'point' && tool !== 'look';
  const placing = dragging || (tool === 'body-line' ? nextLandmark !== null : drawing);
  const wanted = placing && at !== null && source !== null && shownFrame !== null;

  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!wanted || !at || !context || shownFrame === null) return;
    const ratio = window.devicePixelRatio || 1;
    const side = Math.round(diameter * ratio);
    if (context.canvas.width !== side) {
      context.canvas.width = side;
      context.canvas.height = side;
    }
    const scale = view.scale * times * ratio;
    const x = (value: number): number => (value - at.x) * scale + side / 2;
    const y = (value: number): number => (value - at.y) * scale + side / 2;
    context.fillStyle = '#04090c';
    context.fillRect(0, 0, side, side);
    context.imageSmoothingEnabled = scale < 6;
    const picture = source?.held(shownFrame);
    if (picture) picture.draw(context, x(0), y(0), picture.width * scale, picture.height * scale);
    if (posture) {
      context.beginPath();
      for (const name of bodyChain) {
        const point = posture.points[name];
        if (point) context.lineTo(x(point.x), y(point.y));
      }
      context.strokeStyle = casing;
      context.lineWidth = 3 * ratio;
      context.stroke();
      context.strokeStyle = '#ffffff';
      context.lineWidth = 1 * ratio;
      context.stroke();
      for (const name of landmarkNames) {
        const point = posture.points[name];
        if (!point || Math.hypot(point.x - at.x, point.y - at.y) < 0.5) continue;
        context.fillStyle = partColour[bodyPartOf(name)];
        context.beginPath();
        context.arc(x(point.x), y(point.y), 4 * ratio, 0, 2 * Math.PI);
        context.fill();
      }
    }
    for (const [colour, width] of [
      [casing, 4],
      ['#ffffff', 1.5],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = width * ratio;
      context.beginPath();
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        context.moveTo(side / 2 + dx * 5 * ratio, side / 2 + dy * 5 * ratio);
        context.lineTo(side / 2 + dx * 22 * ratio, side / 2 + dy * 22 * ratio);
      }
      context.stroke();
    }
  }, [wanted, at, view, source, shownFrame, posture]);

  if (!wanted || !at) return null;
  // in the corner farther from the pointer, so that it never covers what it magnifies
  const on = toStage(view, at);
  const corner = on.x > size.width / 2 ? { left: 16 } : { right: 16 };
  const name =
    dragging && selection.kind === 'landmark'
      ? landmarkWords[selection.landmark]
      : tool === 'body-line' && nextLandmark
        ? landmarkWords[nextLandmark]
        : tool === 'plane'
          ? stageWords('corner')
          : tool === 'straight'
            ? stageWords('pointLine')
            : tool === 'still'
              ? stageWords('stillThing')
              : stageWords('lineEnd');
  return (
    <div className="magnifier" style={corner} aria-hidden="true">
      <canvas ref={canvas} style={{ width: diameter, height: diameter }} />
      <span>
        {name}, {times}×
      </span>
    </div>
  );
}
