import { noTags } from '#core/swim-file/condition-tags';
import { cardSchema, type SwimCard } from '#core/swim-file/swim-schema';

/** What is likely the same on the next clip; the date comes from the file, and a note and the conditions of a trial belong to one swim. */
const rememberedSchema = cardSchema.omit({ date: true, note: true, conditions: true, invented: true });
type Remembered = Pick<
  SwimCard,
  | 'swimmerId'
  | 'swimmerName'
  | 'stroke'
  | 'drill'
  | 'arms'
  | 'sideUp'
  | 'aids'
  | 'effort'
  | 'distanceMetres'
  | 'view'
>;

const storageKey = 'submark.last-card';
const plain: Remembered = {
  swimmerId: null,
  swimmerName: '',
  stroke: 'butterfly',
  drill: '',
  arms: 'stroking',
  sideUp: 'front',
  aids: [],
  effort: null,
  distanceMetres: null,
  view: 'side',
};

function parse(text: string | null): Remembered {
  if (text === null) return plain;
  try {
    const read = rememberedSchema.safeParse(JSON.parse(text));
    return read.success ? read.data : plain;
  } catch (error) {
    // a default that can't be read is worth no message: the plain one does
    if (error instanceof SyntaxError) return plain;
    throw error;
  }
}

/** The local calendar day of a moment, as a card writes it. */
export function isoDayOf(time: number): string {
  const date = new Date(time);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** A card to begin with: as the last import was filled in, on the day the clip was made. */
export function firstCard(
  storage: Pick<Storage, 'getItem'>,
  day: string,
  isInSquad: (swimmerId: string) => boolean,
): SwimCard {
  const last = parse(storage.getItem(storageKey));
  const gone = last.swimmerId !== null && !isInSquad(last.swimmerId);
  return {
    ...last,
    ...(gone ? { swimmerId: null, swimmerName: '' } : {}),
    date: day,
    conditions: noTags,
    note: '',
    invented: false,
  };
}

export function rememberCard(storage: Pick<Storage, 'setItem'>, card: SwimCard): void {
  const { date: _date, note: _note, conditions: _conditions, invented: _invented, ...kept } = card;
  storage.setItem(storageKey, JSON.stringify(kept));
}
