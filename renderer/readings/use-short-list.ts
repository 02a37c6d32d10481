import { useMemo } from 'react';
import { useStore } from 'zustand';
import { shortListFor } from '#core/measures/short-list';
import { useSwim } from '../open-swim/open-swim';
import { shortListStore } from './kept-short-lists';

/** The readings of the open swim's drill that the coach sees first, in order. */
export function useShortList(): readonly string[] {
  const card = useSwim((swim) => swim.card);
  const kept = useStore(shortListStore, ({ lists }) => lists);
  return useMemo(() => shortListFor(card, kept), [card, kept]);
}
