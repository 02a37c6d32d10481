import type { IntlMessageFormat } from 'intl-messageformat';

type Message = ReturnType<IntlMessageFormat['getAst']>;
type Piece = Message[number];

const plainLetters = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const accentedLetters = 'áƀçđéƒǧĥíĵķłɱñóƥɋŕšţúṽŵẋýžÁɃÇĐÉƑǦĤÍĴĶŁṀÑÓƤɊŔŠŢÚṼŴẊÝŽ';
const accents = new Map([...plainLetters].map((letter, at) => [letter, [...accentedLetters][at] ?? letter]));
/** How much longer than English a message becomes: about what German or Finnish needs. */
const longer = 0.4;

/** A text with accents on its letters and its vowels doubled until it is 40 % longer; brackets show where it ends. */
export function pseudoText(text: string): string {
  return `[${stretched(text)}]`;
}

/** The same for a message of several pieces: its arguments stay as they are. */
export function pseudoMessage(message: Message): Message {
  return [{ type: 0, value: '[' } as Piece, ...message.map(accented), { type: 0, value: ']' } as Piece];
}

function accented(piece: Piece): Piece {
  if ('children' in piece) return { ...piece, children: piece.children.map(accented) };
  if ('options' in piece) {
    const options = Object.entries(piece.options).map(([name, option]) => [
      name,
      { ...option, value: option.value.map(accented) },
    ]);
    return { ...piece, options: Object.fromEntries(options) } as Piece;
  }
  return piece.type === 0 ? ({ ...piece, value: stretched(piece.value) } as Piece) : piece;
}

function stretched(text: string): string {
  let missing = Math.ceil(text.trim().length * longer);
  const letters = [...text].map((letter) => {
    const now = accents.get(letter) ?? letter;
    if (missing <= 0 || !/[aeiouy]/i.test(letter)) return now;
    missing -= 1;
    return now + now;
  });
  const end = /\s*$/.exec(text)?.[0] ?? '';
  return `${letters.join('').trimEnd()}${'·'.repeat(Math.max(0, missing))}${end}`;
}
