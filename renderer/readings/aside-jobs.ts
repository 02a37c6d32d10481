import { pairTable } from '#core/compare/pair-table';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Drill } from '#core/practice/drill-schema';
import { seasonSwim } from '#core/practice/season-swim';
import type { ReadingsOf } from '../open-swim/readings-reader';

const contextOf = (of: ReadingsOf) => readingContext(of.swim, of);

/** What can be asked of the worker that measures whole swims beside the window. Pure; what goes in and out can be cloned. */
const asideJobs = {
  readings: (of: ReadingsOf) => computeReadings(contextOf(of)),
  season: ({ of, drills }: { readonly of: ReadingsOf; readonly drills: readonly Drill[] }) =>
    seasonSwim(of.swim, computeReadings(contextOf(of)), drills),
  pair: ([a, b]: readonly [ReadingsOf, ReadingsOf]) => pairTable(contextOf(a), contextOf(b)),
};

export type AsideKind = keyof typeof asideJobs;
export type AsideInput<K extends AsideKind> = Parameters<(typeof asideJobs)[K]>[0];
export type AsideAnswer<K extends AsideKind> = ReturnType<(typeof asideJobs)[K]>;

/** To the worker: one job. */
export type ToAside = { [K in AsideKind]: { readonly kind: K; readonly input: AsideInput<K> } }[AsideKind];

/** Does a job in the thread it is called in. */
export function doAside(job: ToAside): AsideAnswer<AsideKind> {
  switch (job.kind) {
    case 'readings':
      return asideJobs.readings(job.input);
    case 'season':
      return asideJobs.season(job.input);
    case 'pair':
      return asideJobs.pair(job.input);
  }
}
