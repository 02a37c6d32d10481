/** Does one thing for each of many, so many at a time, answers in their order. Enough to keep a disk busy, no more. */
export async function inParallel<T, R>(
  all: readonly T[],
  atATime: number,
  work: (one: T) => Promise<R>,
): Promise<R[]> {
  const answers = new Array<R>(all.length);
  let next = 0;
  const worker = async (): Promise<void> => {
    for (let at = next++; at < all.length; at = next++) answers[at] = await work(all[at] as T);
  };
  await Promise.all(Array.from({ length: Math.min(atATime, all.length) }, worker));
  return answers;
}
