/** The words with a capital to begin with, as on a label. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
