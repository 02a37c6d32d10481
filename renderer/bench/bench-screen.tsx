import { catalogue } from '#core/measures/families';
import type { HostClient } from '../host/host-client';
import { openFrameSource } from '../video/open-frame-source';
import { startReader } from '../open-swim/start-reader';
import { type BenchParts, OpenedBench } from './opened-bench';

export interface BenchScreenProps {
  readonly swimId: string;
  readonly host: HostClient;
  readonly onLeave: () => void;
  /** A short message to the coach that goes away by itself. */
  readonly say: (words: string) => void;
}

const parts: BenchParts = { openFrameSource, startReader, catalogue };

/** The screen where one swim is reviewed. */
export function BenchScreen(props: BenchScreenProps) {
  return <OpenedBench {...props} parts={parts} />;
}
