import { type SceneLineItem, sceneWords, setScene } from '../state/scene-commands';
import { endLine, startLine } from '../stage/tools/line-tool';
import { useBench, useSwim, useView } from './bench-session';

const lines: readonly {
  readonly item: SceneLineItem;
  readonly words: string;
  readonly key: string;
  readonly dash: string;
}[] = [
  { item: 'level', words: 'Level', key: '1', dash: '6 3' },
  { item: 'surface', words: 'Surface', key: '2', dash: '1.5 4' },
  { item: 'scale', words: 'Length', key: '3', dash: '' },
];

/** What ties the picture to the pool. A tick shows what is set. */
export function ScenePads() {
  const session = useBench();
  const scene = useSwim((swim) => swim.scene);
  const tool = useView((state) => state.tool);
  const asksTravel = useView((state) => state.asksTravel);
  const travel = (way: 'left' | 'right'): void => {
    session.view.setState({ asksTravel: false });
    session.document.run(setScene('travel', scene.travel === way ? null : way));
  };
  return (
    <section aria-label="Scene">
      <h2>Scene</h2>
      <fieldset className={`travel${asksTravel ? ' pointed-out' : ''}`} aria-label="Direction of travel">
        <button
          type="button"
          aria-pressed={scene.travel === 'left'}
          onClick={() => travel('left')}
          title="The swimmer goes to the left of the picture"
        >
          ← goes left
        </button>
        <button
          type="button"
          aria-pressed={scene.travel === 'right'}
          onClick={() => travel('right')}
          title="The swimmer goes to the right of the picture"
        >
          goes right →
        </button>
      </fieldset>
      {lines.map(({ item, words, key, dash }) => (
        <button
          key={item}
          type="button"
          className="pad"
          aria-pressed={tool === item}
          onClick={() => (tool === item ? endLine(session) : startLine(session, item))}
          title={`${sceneWords[item]} (${key})`}
          aria-label={`${sceneWords[item]}, ${scene[item] ? 'set' : 'not set'}, key ${key}`}
        >
          <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
            <line x1="-9" x2="9" y1="0" y2="0" stroke="currentColor" strokeWidth="2" strokeDasharray={dash} />
            {item === 'scale' && <path d="M-9,-4 V4 M9,-4 V4" stroke="currentColor" strokeWidth="2" />}
          </svg>
          <span className="pad-words">{words}</span>
          <span className="pad-count">{scene[item] ? '✓' : ''}</span>
          <kbd>{key}</kbd>
        </button>
      ))}
    </section>
  );
}
