import { useKeyOf, useTip } from '../ui/use-tip';
import { type SceneLineItem, sceneWords, setScene } from '../open-swim/scene-commands';
import { endLine, startLine } from '../stage/tools/line-tool';
import type { Scene } from '#core/swim-file/swim-schema';
import { endPoints, startPoints, straightKey } from '../stage/tools/points-tool';
import { endStill, startStill } from '../stage/tools/still-tool';
import type { ViewState } from '../open-swim/view-store';
import { type OpenSwim, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { PadSection } from './pad-section';
import { benchWords } from '#core/words/bench';

const lines: readonly {
  readonly item: SceneLineItem;
  readonly words: string;
  readonly dash: string;
}[] = [
  { item: 'level', words: benchWords('level'), dash: '6 3' },
  { item: 'surface', words: benchWords('surface'), dash: '1.5 4' },
  { item: 'scale', words: benchWords('length'), dash: '' },
];

interface MorePad {
  readonly id: string;
  readonly words: string;
  readonly title: string;
  readonly path: string;
  readonly run: (session: OpenSwim) => void;
  /** A tick or how many; empty when there is none. */
  readonly isSet: (scene: Scene) => string;
  readonly isOn: (view: Pick<ViewState, 'tool' | 'asksCamera'>) => boolean;
}

const more: readonly MorePad[] = [
  {
    id: 'plane',
    words: benchWords('rectangle'),
    title: sceneWords.plane,
    path: 'M-9,-5 L8,-7 L9,6 L-8,7Z',
    run: (session) =>
      session.view.getState().tool === 'plane' ? endPoints(session) : startPoints(session, 'plane'),
    isSet: ({ plane }) => (plane ? '✓' : ''),
    isOn: ({ tool }) => tool === 'plane',
  },
  {
    id: 'straight',
    words: benchWords('straight'),
    title: benchWords('linesStraightPool'),
    path: 'M-9,3 Q0,-8 9,3',
    run: straightKey,
    isSet: ({ straights }) => (straights.length > 0 ? String(straights.length) : ''),
    isOn: ({ tool }) => tool === 'straight',
  },
  {
    id: 'camera',
    words: benchWords('camera'),
    title: sceneWords.camera,
    path: 'M-9,-5 h11 v10 h-11Z M2,0 L9,-5 V5Z',
    run: ({ view }) => view.setState({ asksCamera: !view.getState().asksCamera }),
    isSet: ({ camera }) => (camera.metres !== null || camera.fartherMetres !== null ? '✓' : ''),
    isOn: ({ asksCamera }) => asksCamera,
  },
  {
    id: 'still',
    words: benchWords('stillThing'),
    title: benchWords('thingStandsStill'),
    path: 'M-9,0 H-3 M3,0 H9 M0,-9 V-3 M0,3 V9',
    run: (session) => (session.view.getState().tool === 'still' ? endStill(session) : startStill(session)),
    isSet: ({ still }) => (still.length > 0 ? String(still.flat().length) : ''),
    isOn: ({ tool }) => tool === 'still',
  },
];

/** What ties the picture to the pool. A tick shows what is set. */
export function ScenePads() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const scene = useSwim((swim) => swim.scene);
  const tool = useView((state) => state.tool);
  const asksTravel = useView((state) => state.asksTravel);
  const asksCamera = useView((state) => state.asksCamera);
  const view = { tool, asksCamera };
  const done =
    scene.travel !== null && scene.scale !== null && (scene.level !== null || scene.surface !== null);
  const travel = (way: 'left' | 'right'): void => {
    session.view.setState({ asksTravel: false });
    session.document.run(setScene('travel', scene.travel === way ? null : way));
  };
  return (
    <PadSection
      label={benchWords('scene')}
      words={benchWords('scene')}
      open={
        !done || asksTravel || lines.some(({ item }) => item === tool) || more.some(({ isOn }) => isOn(view))
      }
      done={done ? '✓' : ''}
    >
      <fieldset
        className={`travel${asksTravel ? ' pointed-out' : ''}`}
        aria-label={benchWords('directionTravel')}
      >
        <button
          type="button"
          aria-pressed={scene.travel === 'left'}
          onClick={() => travel('left')}
          title={benchWords('swimmerGoesLeft')}
        >
          {benchWords('goesLeft')}
        </button>
        <button
          type="button"
          aria-pressed={scene.travel === 'right'}
          onClick={() => travel('right')}
          title={benchWords('swimmerGoesRight')}
        >
          {benchWords('goesRight')}
        </button>
      </fieldset>
      {lines.map(({ item, words, dash }) => (
        <button
          key={item}
          type="button"
          className="pad"
          aria-pressed={tool === item}
          onClick={() => (tool === item ? endLine(session) : startLine(session, item))}
          title={tip(`scene-${item}`, sceneWords[item])}
          aria-label={
            scene[item]
              ? benchWords('setKey', { scene: sceneWords[item], keyOf: keyOf(`scene-${item}`) })
              : benchWords('notSetKey', { scene: sceneWords[item], keyOf: keyOf(`scene-${item}`) })
          }
        >
          <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
            <line x1="-9" x2="9" y1="0" y2="0" stroke="currentColor" strokeWidth="2" strokeDasharray={dash} />
            {item === 'scale' && <path d="M-9,-4 V4 M9,-4 V4" stroke="currentColor" strokeWidth="2" />}
          </svg>
          <span className="pad-words">{words}</span>
          <span className="pad-count">{scene[item] ? '✓' : ''}</span>
          <kbd>{keyOf(`scene-${item}`)}</kbd>
        </button>
      ))}
      <PadSection
        label={benchWords('moreOfScene')}
        words={benchWords('moreOfScene')}
        open={more.some((pad) => pad.isOn(view) || pad.isSet(scene) !== '')}
        done=""
      >
        {more.map(({ id, words, title, path, run, isSet, isOn }) => (
          <button
            key={id}
            type="button"
            className="pad"
            aria-pressed={isOn(view)}
            onClick={() => run(session)}
            title={tip(`scene-${id}`, title)}
            aria-label={benchWords(isSet(scene) === '' ? 'notSetKeyTitle' : 'setKeyTitle', {
              title,
              keyOf: keyOf(`scene-${id}`),
            })}
          >
            <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
              <path d={path} fill="none" stroke="currentColor" strokeWidth="2" />
            </svg>
            <span className="pad-words">{words}</span>
            <span className="pad-count">{isSet(scene)}</span>
            <kbd>{keyOf(`scene-${id}`)}</kbd>
          </button>
        ))}
      </PadSection>
    </PadSection>
  );
}
