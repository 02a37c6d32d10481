import { doJob, type BackgroundJob } from './background-jobs';

self.addEventListener('message', ({ data }: MessageEvent<BackgroundJob>) => {
  self.postMessage(doJob(data));
});
