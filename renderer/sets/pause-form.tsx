import { clockWords, secondsOf } from '#core/practice/clock-words';
import type { PracticeItem } from '#core/practice/practice-schema';
import { KeptField } from '../ui/kept-field';
import { Pick } from '../card/pick';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly item: PracticeItem;
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

const pauses = ['none', 'rest', 'send-off'] as const;
const pauseWords = {
  none: setsWords('saidDeck'),
  rest: setsWords('restAfterEach'),
  'send-off': setsWords('startEvery'),
} as const;
/** What a pause starts with when it is first asked for; our default, the coach's to change. */
const firstPauseSeconds = { rest: 20, 'send-off': 60 } as const;

/** The rest after each repeat, or the time each one starts at. */
export function PauseForm({ item, onChange }: Props) {
  return (
    <>
      <Pick
        label={setsWords('pause')}
        value={item.pause?.kind ?? 'none'}
        choices={pauses}
        words={(kind) => pauseWords[kind]}
        onPick={(kind) =>
          onChange(
            {
              pause:
                kind === 'none' ? null : { kind, seconds: item.pause?.seconds ?? firstPauseSeconds[kind] },
            },
            setsWords('changePause'),
          )
        }
      />
      <label>
        {item.pause?.kind === 'send-off' ? setsWords('everyMSs') : setsWords('restMSs')}
        <KeptField
          inputMode="numeric"
          autoComplete="off"
          disabled={item.pause === null}
          value={item.pause?.seconds ?? null}
          textOf={(seconds) => (seconds === null ? '' : clockWords(seconds))}
          readOf={(text) => {
            const seconds = secondsOf(text);
            return seconds !== null && seconds <= 21_600 ? seconds : undefined;
          }}
          onKeep={(seconds) =>
            item.pause &&
            seconds !== null &&
            onChange({ pause: { ...item.pause, seconds } }, setsWords('changePause'))
          }
        />
      </label>
    </>
  );
}
