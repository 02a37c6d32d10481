import { createStore, type StoreApi } from 'zustand/vanilla';
import type { EventKind } from '#core/marks/event-kind';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/point';
import type { WhichStrokes } from '#core/measures/events/overlaid-cycles';
import type { Interval } from '#core/measures/reading';
import type { StageView } from './stage-view';
import type { SceneLineItem } from './scene-commands';

export type ToolId =
  | 'look'
  | 'point'
  | 'body-line'
  | 'level'
  | 'surface'
  | 'scale'
  | 'still'
  | DraftPointsItem;

/** What is drawn point by point. */
export type DraftPointsItem = 'plane' | 'straight';

export type Selection =
  | { readonly kind: 'none' }
  | { readonly kind: 'event'; readonly id: string }
  | { readonly kind: 'landmark'; readonly frame: number; readonly landmark: LandmarkName }
  | { readonly kind: 'scene'; readonly item: SceneLineItem; readonly end: 'a' | 'b' }
  | { readonly kind: 'straight'; readonly line: number; readonly point: number };

/** A mark that can't be placed before the coach has said one thing more, or one that says something else now. */
export interface OpenQuestion {
  readonly asks: 'hand' | 'breath' | 'metres';
  readonly kind: EventKind;
  readonly frame: number;
  /** The mark that is there already and is asked about again; null for one still to be placed. */
  readonly markId: string | null;
}

/** A scene line being drawn; `open` while its second end still follows the pointer. */
export interface DraftLine {
  readonly item: SceneLineItem;
  readonly a: Point;
  readonly b: Point;
  readonly open: boolean;
}

export const nothingSelected: Selection = { kind: 'none' };

/** Everything of the bench that is not the swim: never saved, never undone. */
export interface ViewState {
  /** The frame asked for. */
  readonly frame: number;
  /** The frame whose picture is on the stage; differs from `frame` only while that picture is being decoded. */
  readonly shownFrame: number | null;
  /** The last frame whose picture could not be had at all; null while none was. */
  readonly lostFrame: number | null;
  /** Which way the coach walks; the frame source decodes ahead that way. */
  readonly towards: -1 | 0 | 1;
  readonly playing: boolean;
  /** Real seconds shown per second of playing: 1 is true speed. */
  readonly pace: number;
  readonly selection: Selection;
  readonly tool: ToolId;
  /** Landmark the guided pass asks for next; null when it is done or not under way. */
  readonly nextLandmark: LandmarkName | null;
  /** Picture to stage; null means the whole picture fitted. */
  readonly stage: StageView | null;
  /** Real seconds shown on the score; null means the whole clip. */
  readonly scoreSpan: { readonly from: number; readonly to: number } | null;
  readonly scoreAxis: 'seconds' | 'stroke';
  /** What lies under the stage: the score along the clip, all strokes over one another, or the plots. */
  readonly lower: 'score' | 'overlaid' | 'plots';
  /** Which strokes lie over one another. */
  readonly overlaidOf: WhichStrokes;
  readonly question: OpenQuestion | null;
  readonly draftLine: DraftLine | null;
  /** Points of the rectangle or straight line that is being drawn. */
  readonly draftPoints: readonly Point[];
  /** Which of the things that stand still is being marked. */
  readonly stillThing: number;
  /** The form for the camera's distance is up. */
  readonly asksCamera: boolean;
  /** Pointer over the picture; null when it is elsewhere. */
  readonly pointer: Point | null;
  /** Something is being dragged on the stage: the magnifier is up. */
  readonly dragging: boolean;
  /** The keyboard's own pointer on the picture; null when it is put away. */
  readonly crosshair: Point | null;
  /** Kind of event whose pad is pointed out, because a reading misses it. */
  readonly guidedKind: EventKind | null;
  /** Step of the guided pass through one stroke; null when none is under way. */
  readonly passStep: number | null;
  /** Id of the mark each step of the pass placed; null where it was left out. */
  readonly passMarks: readonly (string | null)[];
  /** Frames played over and over; null plays to the end. */
  readonly loop: { readonly first: number; readonly last: number } | null;
  /** The direction of travel is pointed out, because a reading misses it. */
  readonly asksTravel: boolean;
  /** Reading whose marks are lit. */
  readonly litReading: string | null;
  /** Every reading by group under the short list. */
  readonly allReadings: boolean;
  /** What the printed ± answers: how sure the marks are of this swim, or how much the swimmer varies. */
  readonly intervals: Interval['question'];
  readonly showAngles: boolean;
  /** Level, surface, length and all else of the scene is drawn. */
  readonly showScene: boolean;
  /** Nothing lies over the picture, as long as the key or button is held. */
  readonly bare: boolean;
}

export type ViewStore = StoreApi<ViewState>;

export function createViewStore(start: Partial<ViewState> = {}): ViewStore {
  return createStore<ViewState>(() => ({
    frame: 0,
    shownFrame: null,
    lostFrame: null,
    towards: 0,
    playing: false,
    pace: 0.25,
    selection: nothingSelected,
    tool: 'point',
    nextLandmark: null,
    stage: null,
    scoreSpan: null,
    scoreAxis: 'seconds',
    lower: 'score',
    overlaidOf: 'all',
    question: null,
    draftLine: null,
    draftPoints: [],
    stillThing: 0,
    asksCamera: false,
    pointer: null,
    dragging: false,
    crosshair: null,
    guidedKind: null,
    passStep: null,
    passMarks: [],
    loop: null,
    asksTravel: false,
    litReading: null,
    allReadings: false,
    intervals: 'this-swim',
    showAngles: true,
    showScene: true,
    bare: false,
    ...start,
  }));
}
