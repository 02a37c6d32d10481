import { doAside, type ToAside } from './aside-jobs';

self.addEventListener('message', ({ data }: MessageEvent<ToAside>) => {
  self.postMessage(doAside(data));
});
