declare module 'webvtt-parser' {
  class WebVTTParser {
    parse(
      text: string,
      mode?: 'captions' | 'metadata' | 'chapters',
    ): {
      readonly cues: readonly {
        readonly id: string;
        readonly startTime: number;
        readonly endTime: number;
        readonly text: string;
      }[];
      readonly errors: readonly { readonly line: number; readonly message: string }[];
    };
  }
  const parser: { readonly WebVTTParser: typeof WebVTTParser };
  export default parser;
}
