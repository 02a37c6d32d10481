import { Label, Tag, Text } from 'react-konva';
import { casing } from '#core/drawing/landmark-look';

interface Props {
  readonly x: number;
  readonly y: number;
  readonly words: string;
  readonly colour?: string;
  /** Where the label lies from its point. */
  readonly side?: 'right' | 'left' | 'centre';
}

/** Size of the letters, CSS pixels: never smaller, however small the swimmer. */
export const labelLetters = 13;
/** Our estimate of a letter's mean width at this size, for placing; the tag itself measures exactly. */
const letter = 7.1;
export const labelSize = (words: string): { readonly width: number; readonly height: number } => ({
  width: words.length * letter + 12,
  height: 23,
});

/** Words on the picture, on a dark plate. */
export function CasedLabel({ x, y, words, colour = '#ffffff', side = 'right' }: Props) {
  const { width, height } = labelSize(words);
  const left = side === 'right' ? x + 12 : side === 'left' ? x - 12 - width : x - width / 2;
  const top = y - height / 2;
  return (
    <Label x={Math.round(left)} y={Math.round(top)} listening={false}>
      <Tag fill={casing} opacity={0.8} cornerRadius={5} />
      <Text
        text={words}
        fill={colour}
        fontSize={labelLetters}
        fontFamily="system-ui, 'DejaVu Sans', sans-serif"
        padding={5}
      />
    </Label>
  );
}
