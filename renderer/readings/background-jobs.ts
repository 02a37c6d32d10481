import { pairTable } from '#core/compare/pair-table';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Drill } from '#core/practice/drill-schema';
import { seasonSwim } from '#core/practice/season-swim';
import type { ReadingsOf } from '../open-swim/readings-reader';

const contextOf = (of: ReadingsOf) => readingContext(of.swim, of);

/** What can be asked of the worker that measures whole swims beside the window. Pure; what goes in and out can be cloned. */
const backgroundJobs = {
  readings: (of: ReadingsOf) => computeReadings(contextOf(of)),
  season: ({ of, drills }: { readonly of: ReadingsOf; readonly drills: readonly Drill[] }) =>
    seasonSwim(of.swim, computeReadings(contextOf(of)), drills),
  pair: ([a, b]: readonly [ReadingsOf, ReadingsOf]) => pairTable(contextOf(a), contextOf(b)),
};

export type JobKind = keyof typeof backgroundJobs;
export type JobInput<K extends JobKind> = Parameters<(typeof backgroundJobs)[K]>[0];
export type JobAnswer<K extends JobKind> = ReturnType<(typeof backgroundJobs)[K]>;

/** To the worker: one job. */
export type BackgroundJob = { [K in JobKind]: { readonly kind: K; readonly input: JobInput<K> } }[JobKind];

/** Does a job in the thread it is called in. */
export function doJob(job: BackgroundJob): JobAnswer<JobKind> {
  switch (job.kind) {
    case 'readings':
      return backgroundJobs.readings(job.input);
    case 'season':
      return backgroundJobs.season(job.input);
    case 'pair':
      return backgroundJobs.pair(job.input);
  }
}
