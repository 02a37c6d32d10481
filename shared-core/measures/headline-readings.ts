import type { Swim } from '../swim-file/swim-schema';
import type { MarkingError } from '../uncertainty/marking-error';
import { isDoubtful } from './doubtful';
import { readingContext } from './compute-readings';
import { kickRhythmReadings } from './events/kick-rhythm';
import { timingReadings } from './events/timing';
import { guardReadings } from './guard-readings';

const headlines = ['kick-frequency', 'kick1-top-to-entry', 'kick2-bottom-to-exit'];

/**
 * The few readings a swim's card on the shelf shows; only those that can be computed. `half`: half of the 95 % width.
 *
 * @param markingError the coach's own; null takes the assumed one
 */
export function headlineReadings(
  swim: Swim,
  markingError: MarkingError | null,
): { id: string; value: number; half: number; unit: string; doubtful: boolean }[] {
  const context = readingContext({ ...swim, postures: [], seen: [] }, { swimmer: null, markingError });
  const read = [...kickRhythmReadings(context), ...timingReadings(context)];
  return guardReadings(context, read).flatMap((reading) =>
    reading.status === 'computed' && headlines.includes(reading.id)
      ? [
          {
            id: reading.id,
            value: reading.value,
            half: (reading.interval.high - reading.interval.low) / 2,
            unit: reading.unit,
            doubtful: isDoubtful(reading),
          },
        ]
      : [],
  );
}
