import { expect, test } from '@playwright/test';
import { activities } from './kill-activities';
import { runKills } from './kills';

test('a kill during any work leaves whole files, loses no mark older than two seconds, and is no conflict', async () => {
  test.setTimeout(240_000);
  const kills = await runKills(activities.length, 8);
  expect(
    kills.flatMap(({ victim, activity, faults }) =>
      faults.map((fault) => `${victim}, ${activity}: ${fault}`),
    ),
  ).toEqual([]);
  expect(kills.map(({ activity }) => activity)).toEqual(activities);
});
