import type { GetICUArgs } from '@schummar/icu-type-parser';
import { IntlMessageFormat } from 'intl-messageformat';
import { pseudoMessage, pseudoText } from './pseudo';

type Messages = Readonly<Record<string, string>>;

/** What a message must be given, read from its text: a number where it counts, a text or a number elsewhere. */
type Arguments<Message extends string> = GetICUArgs<
  Message,
  { ICUArgument: string | number; ICUNumberArgument: number; ICUDateArgument: number }
>;

type Given<Message extends string> = keyof Arguments<Message> extends never ? [] : [Arguments<Message>];

/** The names of the marked pieces of a message: `b` in `<b>Film</b> a repeat`. */
type Marked<Message extends string> = Message extends `${string}</${infer Name}>${infer Rest}`
  ? Name | Marked<Rest>
  : never;

/** How a caller draws the marked pieces of a message. */
type Drawn<Message extends string, Node> = Readonly<
  Record<Marked<Message>, (inside: (string | Node)[]) => Node>
>;

/** The messages of one room of the app, and the way to say one. */
export interface Words<Room extends Messages> {
  /** The message in English, with its arguments filled in. */
  <Key extends keyof Room & string>(key: Key, ...given: Given<Room[Key]>): string;
  /** The same for a message with marked pieces: its texts, and what `given` draws for each piece, in order. */
  parts<Key extends keyof Room & string, Node>(
    key: Key,
    given: Arguments<Room[Key]> & Drawn<Room[Key], Node>,
  ): readonly (string | Node)[];
  readonly messages: Room;
}

const locale = 'en';
/** Tests set this before anything is loaded, to see every message long, accented and in brackets. */
const pseudo = (globalThis as { readonly submarkWords?: unknown }).submarkWords === 'pseudo';
/** A message that has neither arguments nor marked pieces needs no parser. */
const plain = (message: string): boolean => !/[{<]/.test(message);

/**
 * One room's catalogue. Messages are in ICU MessageFormat; arguments are typed from the message itself.
 * A message without its arguments does not compile.
 */
export function words<const Room extends Messages>(room: Room): Words<Room> {
  const formats = new Map<string, IntlMessageFormat>();
  const formatOf = (key: string): IntlMessageFormat => {
    const known = formats.get(key);
    if (known) return known;
    const read = new IntlMessageFormat(room[key] ?? key, locale);
    const made = pseudo ? new IntlMessageFormat(pseudoMessage(read.getAst()), locale) : read;
    formats.set(key, made);
    return made;
  };
  const say = (key: string, given?: Readonly<Record<string, string | number>>): string => {
    const message = room[key] ?? key;
    if (plain(message)) return pseudo ? pseudoText(message) : message;
    return String(formatOf(key).format({ ...given }));
  };
  const parts = (key: string, given: object): unknown[] => {
    const said: unknown = formatOf(key).format({ ...given });
    return Array.isArray(said) ? said : [said];
  };
  return Object.assign(say, { parts, messages: room }) as Words<Room>;
}
