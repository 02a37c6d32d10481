import { useCallback, useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { ScreenProps } from '../ui/screen-props';
import { shelfRoute } from '../ui/use-route';
import { OpeningFailed } from '../ui/opening-failed';
import { createPair, type OpenPair } from './create-pair';
import { Pair } from './pair';
import { PairContext } from './pair-session';
import { pairWords } from '#core/words/pair';

type Opening =
  | { readonly kind: 'opening' }
  | { readonly kind: 'open'; readonly open: OpenPair }
  | { readonly kind: 'failed'; readonly error: HostError };

interface Props extends ScreenProps {
  readonly first: string;
  readonly second: string;
}

/** Opens two swims, keeps them open while they are on screen, and closes them whichever way the coach goes. */
export function PairScreen({ first, second, host, say, go }: Props) {
  const [opening, setOpening] = useState<Opening>({ kind: 'opening' });
  const [round, setRound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round opens the same swims again
  useEffect(() => {
    const leaving = new AbortController();
    let open: OpenPair | null = null;
    const start = async (): Promise<void> => {
      const result = await createPair({ host, ids: [first, second], say, signal: leaving.signal });
      if (!result.ok) {
        if (!leaving.signal.aborted) setOpening({ kind: 'failed', error: result.error });
        return;
      }
      open = result.value;
      if (leaving.signal.aborted) await open.close();
      else setOpening({ kind: 'open', open });
    };
    void start();
    return () => {
      leaving.abort();
      void open?.close();
      setOpening({ kind: 'opening' });
    };
  }, [first, second, host, say, round]);
  const again = useCallback(() => setRound((each) => each + 1), []);
  const leave = useCallback(() => go(shelfRoute), [go]);
  const swap = useCallback(() => go({ screen: 'pair', ids: [second, first] }), [go, first, second]);

  if (opening.kind === 'failed')
    return <OpeningFailed error={opening.error} onAgain={again} onShelf={leave} />;
  if (opening.kind === 'opening')
    return <output className="bench-opening">{pairWords('openingBothSwims')}</output>;
  return (
    <PairContext value={opening.open.session}>
      <Pair
        onLeave={leave}
        onBench={(which) => go({ screen: 'bench', ids: [which === 0 ? first : second] })}
        onSwap={swap}
        onRelinked={again}
      />
    </PairContext>
  );
}
