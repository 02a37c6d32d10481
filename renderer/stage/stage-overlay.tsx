import { Layer, Stage as KonvaStage } from 'react-konva';
import { useStore } from 'zustand';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { emptyScene } from '#core/swim-file/swim-schema';
import { followedOf } from '../open-swim/follow-selectors';
import { SeenDrawing } from './seen-drawing';
import { postureOn } from '../open-swim/selectors';
import { BodyLineDrawing } from './body-line-drawing';
import { CrosshairDrawing } from './crosshair-drawing';
import { FollowedDrawing } from './followed-drawing';
import { PlaneDrawing } from './plane-drawing';
import { SceneDrawing } from './scene-drawing';
import { StillDrawing } from './still-drawing';
import type { Size, StageView } from '../open-swim/stage-view';
import { guessedHeight } from '#core/drawing/swimmer-size';
import { shownWhileMarking } from './shown-while-marking';

/** Marks of the frame that is on the stage, drawn over its picture; never those of the frame still being decoded. */
export function StageOverlay({ view, size }: { readonly view: StageView; readonly size: Size }) {
  const shownFrame = useView((state) => state.shownFrame ?? state.frame);
  const selection = useView((state) => state.selection);
  const draft = useView((state) => state.draftLine);
  const tool = useView((state) => state.tool);
  const points = useView((state) => state.draftPoints);
  const crosshair = useView((state) => state.crosshair);
  const showAngles = useView((state) => state.showAngles && !state.dragging);
  const asked = useStore(useOpenSwim().follow, (state) => state.asked);
  const showScene = useView((state) => state.showScene);
  const bare = useView((state) => state.bare);
  const swim = useSwim((each) => each);
  const passing = useView((state) => state.passStep !== null);
  const posture = postureOn(swim, shownFrame);
  const followed = followedOf(swim).get(shownFrame);
  if (bare) return null;
  const editingScene = tool === 'level' || tool === 'surface' || tool === 'scale';
  const { scene: showsScene, body: showsBody, rest: showsRest } = shownWhileMarking(tool, passing);
  const tall = guessedHeight(swim);
  const height = tall && tall * view.scale;
  const scene = showScene && showsScene;
  return (
    <KonvaStage width={size.width} height={size.height} listening={false} className="stage-overlay">
      <Layer listening={false}>
        <SceneDrawing
          scene={scene || editingScene ? swim.scene : emptyScene}
          draft={draft}
          view={view}
          selection={selection}
          editing={editingScene}
        />
        <PlaneDrawing
          selection={selection}
          scene={scene || tool === 'plane' || tool === 'straight' ? swim.scene : emptyScene}
          draft={tool === 'plane' || tool === 'straight' ? { item: tool, points } : null}
          view={view}
        />
        {(scene || tool === 'still') && (
          <StillDrawing still={swim.scene.still} frame={shownFrame} view={view} />
        )}
        {showsRest && <SeenDrawing frame={shownFrame} view={view} height={height} />}
        {followed && showsBody && (
          <FollowedDrawing
            followed={followed}
            posture={posture}
            view={view}
            height={height}
            asked={asked?.frame === shownFrame ? asked.landmark : null}
          />
        )}
        {posture && showsBody && (
          <BodyLineDrawing
            posture={posture}
            swim={swim}
            view={view}
            size={size}
            selection={selection}
            showAngles={showAngles && showsRest}
            height={height}
          />
        )}
        {crosshair && <CrosshairDrawing at={crosshair} view={view} />}
      </Layer>
    </KonvaStage>
  );
}
