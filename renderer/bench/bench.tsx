import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { definitionOn } from '#core/measures/definition-on';
import type { ReadingDefinition } from '#core/measures/reading';
import { ReadingsPanel } from '../readings/readings-panel';
import { Stage } from '../stage/stage';
import { StagePrompt } from '../stage/stage-prompt';
import { guideOn } from '../stage/tools/body-line-tool';
import { ExportDialog } from '../export/export-dialog';
import { StillDialog } from '../still/still-dialog';
import { BenchBar } from './bench-bar';
import { benchCommands } from './bench-commands';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { CameraForm } from './camera-form';
import { BenchVideo } from './bench-video';
import { CardDialog } from './card-dialog';
import { ChosenMark } from './chosen-mark';
import { CopyNotice } from '../film/copy-notice';
import { FilmTroubleCard } from '../film/film-trouble';
import { LowerPart } from './lower-part';
import { MarkPads } from './mark-pads';
import { NextStep } from './next-step';
import { MarkQuestion } from './mark-question';
import { PassPrompt } from './pass-prompt';
import { PlaneForm } from './plane-form';
import { ScaleForm } from './scale-form';
import { StepControls } from '../film/step-controls';
import { FollowPanel } from '../follow/follow-panel';
import { QuestionForm } from '../follow/question-form';
import { ReviewForm } from '../follow/review-form';
import { followCommands } from '../follow/follow-commands';
import { seeCommands } from '../see/see-commands';
import { useStopSeeing } from '../see/use-stop-seeing';
import { useCameraLook } from '../camera/use-camera-look';
import { useFollowAnswers } from '../follow/use-follow-answers';
import { useStore } from 'zustand';
import { useCommandKeys } from '../ui/use-command-keys';
import { useBarePicture } from './use-bare-picture';
import { useSpaceToPlay } from '../film/use-space-to-play';
import '../film/film-messages.css';
import './pads.css';
import '../film/steps.css';
import './bench.css';
import { benchWords } from '#core/words/bench';

interface Props {
  readonly catalogue: readonly ReadingDefinition[];
  readonly onLeave: () => void;
  readonly onRelinked: () => void;
  /** Opens the blind pass in which marks are made again. */
  readonly onRemark: () => void;
}

/** The bench with a swim on it. */
export function Bench({ catalogue, onLeave, onRelinked, onRemark }: Props) {
  const session = useOpenSwim();
  const [still, setStill] = useState(false);
  const [video, setVideo] = useState(false);
  const [exporting, setExporting] = useState(false);
  const middle = useRef<HTMLElement>(null);
  const [card, setCard] = useState(false);
  const sideUp = useSwim((swim) => swim.card.sideUp);
  const told = useMemo(
    () => catalogue.map((definition) => definitionOn(definition, { sideUp })),
    [catalogue, sideUp],
  );
  const openCard = useCallback(() => setCard(true), []);
  const openStill = useCallback(() => setStill(true), []);
  const openVideo = useCallback(() => setVideo(true), []);
  const openExport = useCallback(() => setExporting(true), []);
  const commands = useMemo(
    () =>
      benchCommands(session, {
        openStill,
        openVideo,
        openExport,
        openRemarking: onRemark,
        stageSize: () => {
          const stage = middle.current?.querySelector('.stage-surface');
          return { width: stage?.clientWidth ?? 1, height: stage?.clientHeight ?? 1 };
        },
      }),
    [session, openStill, openVideo, openExport, onRemark],
  );
  const following = useMemo(() => [...seeCommands(session), ...followCommands(session)], [session]);
  const followOpen = useStore(session.follow, (state) => state.open);
  useCommandKeys(benchWords('followPropose'), following);
  useCommandKeys(benchWords('bench'), commands);
  useFollowAnswers();
  useCameraLook();
  useStopSeeing();
  const loop = useView((state) => state.loop);
  useSpaceToPlay(loop ?? undefined);
  useBarePicture();

  // a step to another frame starts that frame's own guided pass
  const frame = useView((state) => state.frame);
  const laying = useView((state) => state.tool === 'body-line');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the frame is the reason to ask again
  useEffect(() => {
    if (laying) guideOn(session);
  }, [frame, laying, session]);

  return (
    <div className="bench">
      <BenchBar
        onLeave={onLeave}
        onCard={openCard}
        onStill={openStill}
        onVideo={openVideo}
        onExport={openExport}
      />
      <MarkPads />
      <main className="bench-middle" ref={middle}>
        <Stage>
          <FilmTroubleCard onRelinked={onRelinked} />
          <CopyNotice />
        </Stage>
        <StepControls />
        <LowerPart />
      </main>
      <div className="bench-side">
        <PassPrompt />
        <StagePrompt />
        <QuestionForm />
        <ReviewForm />
        <MarkQuestion />
        <ChosenMark />
        <ScaleForm />
        <PlaneForm />
        <CameraForm />
        {followOpen ? (
          <FollowPanel />
        ) : (
          <ReadingsPanel
            catalogue={told}
            onAskSlowdown={openCard}
            onRemark={onRemark}
            next={<NextStep catalogue={told} />}
          />
        )}
      </div>
      {card && <CardDialog onClose={() => setCard(false)} />}
      {exporting && (
        <ExportDialog
          onClose={() => setExporting(false)}
          onVideo={() => {
            setExporting(false);
            openVideo();
          }}
        />
      )}
      {video && <BenchVideo onClose={() => setVideo(false)} />}
      {still && <StillDialog catalogue={told} onClose={() => setStill(false)} />}
    </div>
  );
}
