import { expect, test } from '@playwright/test';
import { runKills } from './kills';

test('a kill at any moment leaves whole files and loses no mark older than two seconds', async () => {
  test.setTimeout(180_000);
  const kills = await runKills(4, 8);
  expect(kills.flatMap(({ victim, faults }) => faults.map((fault) => `${victim}: ${fault}`))).toEqual([]);
  expect(kills).toHaveLength(4);
});
