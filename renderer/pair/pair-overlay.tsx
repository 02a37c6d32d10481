import { useMemo } from 'react';
import { Layer, Stage as KonvaStage } from 'react-konva';
import { useStore } from 'zustand';
import type { PairPart } from '#core/compare/pair-part';
import { withoutSeen } from '#core/drawing/shown-line';
import { type LaidLine, layBodyLine, mirrorLaid } from '#core/compare/lay-body-line';
import { mirrorSwim } from '#core/compare/mirror-swim';
import { followedOf } from '../open-swim/follow-selectors';
import { BodyLineDrawing } from '../stage/body-line-drawing';
import { FollowedDrawing } from '../stage/followed-drawing';
import { guessedHeight } from '#core/drawing/swimmer-size';
import { SeenPoints } from '../stage/seen-drawing';
import type { Size, StageView } from '../open-swim/stage-view';
import { postureOn } from '../open-swim/selectors';
import { nothingSelected } from '../open-swim/view-store';
import { LaidLineDrawing } from './laid-line-drawing';
import { usePair, usePairPart, usePairView } from './pair-session';
import type { Which } from './pair-view';
import { pairWords } from '#core/words/pair';

/** The frame whose picture a stage shows. */
export function useShownFrame(which: Which): number {
  return useStore(usePair().swims[which].view, (state) => state.shownFrame ?? state.frame);
}

/** The body line of B where it lies on the picture of A, or why it can't be laid. */
export type LaidB =
  | { readonly kind: 'off' }
  | { readonly kind: 'laid'; readonly over: NonNullable<ReturnType<typeof layBodyLine>> }
  | { readonly kind: 'without'; readonly words: string };

function lineOf({ swim, context, lines }: PairPart, frame: number): LaidLine | null {
  const line = lines.get(frame);
  const posture = line && withoutSeen(line);
  if (!posture) return null;
  return {
    posture,
    scene: swim.scene,
    width: swim.clip.width,
    bodyLength: context.bodyLength?.pixels ?? null,
  };
}

/** B's body line on A's picture (mirrored as A is), at the frames shown. */
export function useLaidLine(): LaidB {
  const lay = usePairView((state) => state.lay);
  const mirrored = usePairView((state) => state.mirrored);
  const a = usePairPart(0);
  const b = usePairPart(1);
  const frameA = useShownFrame(0);
  const frameB = useShownFrame(1);
  return useMemo((): LaidB => {
    if (lay === null) return { kind: 'off' };
    const onto = lineOf(a, frameA);
    const other = lineOf(b, frameB);
    if (!onto || !other) {
      const lacking = [...(onto ? [] : ['A']), ...(other ? [] : ['B'])].join(' and ');
      return { kind: 'without', words: pairWords('noBodyLineHere', { lacking }) };
    }
    const over = layBodyLine(other, mirrored[0] ? mirrorLaid(onto) : onto, lay);
    return over ? { kind: 'laid', over } : { kind: 'without', words: pairWords('notMarkedBoth', { lay }) };
  }, [lay, mirrored, a, b, frameA, frameB]);
}

interface Props {
  readonly which: Which;
  readonly view: StageView;
  readonly size: Size;
  readonly laid: LaidB;
}

/** Marks of the frame a stage shows, as the bench draws them, in the mirror where the picture is. */
export function PairOverlay({ which, view, size, laid }: Props) {
  const part = usePairPart(which);
  const frame = useShownFrame(which);
  const mirrored = usePairView((state) => state.mirrored[which]);
  const seen = useMemo(() => (mirrored ? mirrorSwim(part.swim) : part.swim), [part, mirrored]);
  const posture = postureOn(seen, frame);
  const followed = followedOf(seen).get(frame);
  const tall = guessedHeight(part.swim);
  const height = tall && tall * view.scale;
  const over = which === 0 && laid.kind === 'laid' ? laid.over : null;
  return (
    <KonvaStage width={size.width} height={size.height} listening={false} className="stage-overlay">
      <Layer listening={false}>
        {over && <LaidLineDrawing posture={over.posture} view={view} />}
        <SeenPoints swim={seen} frame={frame} view={view} height={height} />
        {followed && <FollowedDrawing followed={followed} posture={posture} view={view} height={height} />}
        {posture && (
          <BodyLineDrawing
            posture={posture}
            swim={seen}
            view={view}
            height={height}
            size={size}
            selection={nothingSelected}
            showAngles={over === null}
          />
        )}
      </Layer>
    </KonvaStage>
  );
}
