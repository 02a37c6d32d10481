declare module 'webvtt-parser' {
  export class WebVTTParser {
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
}
