import type { FromDecoderWorker, ToDecoderWorker } from './decoder-message';

let decoder: VideoDecoder | null = null;
let turn = 0;
let fed = 0;

const say = (message: FromDecoderWorker, transfer: Transferable[] = []): void =>
  self.postMessage(message, { transfer });

function died(which: number): void {
  if (which !== turn) return;
  if (decoder && decoder.state !== 'closed') decoder.close();
  decoder = null;
  say({ kind: 'died', turn: which });
}

function makeDecoder(): VideoDecoder {
  const made = new VideoDecoder({
    output: (picture) => {
      if (decoder === made) say({ kind: 'picture', turn, picture }, [picture]);
      else picture.close();
    },
    error: () => {
      if (decoder === made) died(turn);
    },
  });
  made.ondequeue = () => {
    if (decoder === made) say({ kind: 'taken', turn, taken: fed - made.decodeQueueSize });
  };
  return made;
}

function obey(message: ToDecoderWorker): void {
  switch (message.kind) {
    case 'begin':
      turn = message.turn;
      fed = 0;
      if (decoder && decoder.state !== 'closed') decoder.reset();
      else decoder = makeDecoder();
      decoder.configure(message.config);
      return;
    case 'decode':
      // what was on its way to a decoder that has died meanwhile
      if (decoder?.state !== 'configured') return;
      decoder.decode(new EncodedVideoChunk(message.chunk));
      fed += 1;
      return;
    case 'flush': {
      const { id } = message;
      const flushed = decoder?.state === 'configured' ? decoder.flush() : Promise.resolve();
      // a decoder made ready anew, closed or dead ends its flush with an error: that it ended is all there is to say
      flushed.then(
        () => say({ kind: 'flushed', id }),
        () => say({ kind: 'flushed', id }),
      );
      return;
    }
    case 'ping':
      say({ kind: 'alive' });
      return;
    case 'close':
      if (decoder && decoder.state !== 'closed') decoder.close();
      decoder = null;
  }
}

self.onmessage = ({ data }: MessageEvent<ToDecoderWorker>): void => {
  try {
    obey(data);
  } catch (problem) {
    // a picture or a configuration that the decoder refuses outright
    if (!(problem instanceof DOMException) && !(problem instanceof TypeError)) throw problem;
    died(turn);
  }
};
