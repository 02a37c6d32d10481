import { keyCap } from '../ui/key-cap';
import { useLayoutEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { markPhrase } from '#core/marks/mark-words';
import { plainMark } from '#core/swim-file/swim-schema';
import type { RemarkingAnswer } from '#core/uncertainty/remarking-entries';
import type { MomentItem } from '#core/uncertainty/remarking-plan';
import type { Command } from '../ui/command';
import { useCommandKeys } from '../ui/use-command-keys';
import { useKeyOf, useTip } from '../ui/use-tip';
import { playCommand } from './play-command';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { whenShown } from '../open-swim/stepping';
import { useSpaceToPlay } from '../film/use-space-to-play';
import { Stage } from '../stage/stage';
import { remarkingWords } from '#core/words/remarking';
import { rich } from '../ui/rich';

interface Props {
  readonly item: MomentItem;
  readonly onAnswer: (answer: RemarkingAnswer) => void;
}

/** One moment to find again in a short loop that says neither its frames nor its time. */
export function MomentStep({ item, onAnswer }: Props) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const frame = useView((state) => state.frame);
  const playing = useView((state) => state.playing);
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const loop = useMemo(() => ({ first: item.first, last: item.last }), [item]);
  useSpaceToPlay(loop);
  // at once with what is drawn: a coach who stops the loop right away must not see it start again
  useLayoutEffect(() => {
    if (hasFilm) session.view.setState({ playing: true });
    return () => session.view.setState({ playing: false });
  }, [session, hasFilm]);

  const { step, mark, commands } = useMemo(() => {
    const to = (wanted: number, towards: -1 | 1): void =>
      session.view.setState({
        frame: Math.min(item.last, Math.max(item.first, wanted)),
        playing: false,
        towards,
      });
    const by = (frames: -1 | 1): void => to(session.view.getState().frame + frames, frames);
    const here = async (): Promise<void> => {
      session.view.setState({ playing: false });
      const { frame: marked } = session.view.getState();
      if (await whenShown(session)) onAnswer({ frame: marked });
      else session.say(remarkingWords('pictureNotThere'));
    };
    const command = (id: string, label: string, keys: readonly string[], run: Command['run']): Command => ({
      id,
      label,
      keys,
      kind: 'view',
      run,
    });
    return {
      step: by,
      mark: here,
      commands: [
        command('remark-back', remarkingWords('oneFrameBack'), ['ArrowLeft'], () => by(-1)),
        command('remark-on', remarkingWords('oneFrame'), ['ArrowRight'], () => by(1)),
        command('remark-first', remarkingWords('startLoop'), ['Home'], () => to(item.first, -1)),
        command('remark-mark', remarkingWords('markPicture'), ['Enter'], here),
        playCommand(session, remarkingWords('playLoopOrStop')),
      ],
    };
  }, [session, item, onAnswer]);
  useCommandKeys(remarkingWords('markAgain'), commands);

  const phrase = markPhrase({ ...plainMark, kind: item.kind, hand: item.hand });
  return (
    <>
      <output className="stage-prompt">
        <strong>{remarkingWords('findAgain', { phrase })}</strong>
        <span>{remarkingWords('stepItsPicture')}</span>
      </output>
      <Stage wholePicture />
      <section className="remark-controls" aria-label={remarkingWords('stepThroughLoop')}>
        <button
          type="button"
          onClick={() => step(-1)}
          title={tip('remark-back', remarkingWords('oneFrameBack'))}
        >
          {remarkingWords('frame')}
        </button>
        <button
          type="button"
          className="remark-play"
          aria-pressed={playing}
          onClick={() => session.view.setState({ playing: !playing })}
          title={tip('remark-play', remarkingWords('playLoopOrStop'))}
        >
          {playing ? '❙❙ Stop' : '▶ Loop'}
        </button>
        <button type="button" onClick={() => step(1)} title={tip('remark-on', remarkingWords('oneFrame'))}>
          {remarkingWords('frame2')}
        </button>
        <input
          type="range"
          min={item.first}
          max={item.last}
          value={frame}
          aria-label={remarkingWords('placeLoop')}
          aria-valuetext={remarkingWords('loop', {
            frame: Math.round((100 * (frame - item.first)) / (item.last - item.first)),
          })}
          onChange={(event) =>
            session.view.setState({ frame: Number(event.target.value), playing: false, towards: 0 })
          }
        />
        <button
          type="button"
          className="remark-mark"
          onClick={() => void mark()}
          title={tip('remark-mark', remarkingWords('mark'))}
        >
          {rich(remarkingWords.parts('markPicture2', { key: keyOf('remark-mark'), kbd: keyCap }))}
        </button>
      </section>
    </>
  );
}
