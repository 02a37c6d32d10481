import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyScene } from '#core/swim-file/swim-schema';
import { keepLook } from '../../../renderer/open-swim/camera-commands';
import { addEvent, moveEvent, placeEventAt, removeEvent } from '../../../renderer/open-swim/event-commands';
import { setFollowed } from '../../../renderer/open-swim/follow-commands';
import { copyPosture, hideLandmark, setPosturePoint } from '../../../renderer/open-swim/posture-commands';
import { setScene } from '../../../renderer/open-swim/scene-commands';
import { createSwimDocument } from '../../../renderer/open-swim/swim-document';
import { aMark, aSwim } from '../a-swim';

describe('the swim document', () => {
  it('takes a step back and again, and names it', () => {
    const document = createSwimDocument(aSwim());
    const before = document.swim();
    document.run(moveEvent(aMark('top-1', 'kick-top', 20), 23));
    expect(document.store.getState().undoName).toBe('move kick top');
    const after = document.swim();
    expect(document.undo()).toMatchObject({ name: 'move kick top', frame: 20 });
    expect(document.swim()).toEqual(before);
    expect(document.redo()).toMatchObject({ frame: 23 });
    expect(document.swim()).toEqual(after);
  });

  it('keeps what was found of the camera beside the steps, so that undo takes back what the coach did', () => {
    const document = createSwimDocument(aSwim());
    document.run(moveEvent(aMark('top-1', 'kick-top', 20), 23));
    const run = { frames: [0, 50], rows: [], moved: [], turned: null };
    expect(document.amend(keepLook(run))).toBe(true);
    expect(document.store.getState().undoName).toBe('move kick top');
    document.undo();
    expect(document.swim().events[0]?.frame).toBe(20);
    expect(document.swim().cameraPath).toEqual([run]);
    document.redo();
    expect([document.swim().events[0]?.frame, document.swim().cameraPath]).toEqual([23, [run]]);
    // never in mid-drag, where it would be lost with it
    document.begin('move kick top', 23);
    expect(document.amend(keepLook({ ...run, frames: [0, 9] }))).toBe(false);
    document.cancel();
    expect(document.swim().cameraPath).toEqual([run]);
  });

  it('takes in a stretch that was followed again beside others, as one step, without touching a marked point', () => {
    const posture = { frame: 12, points: { toe: { x: 1, y: 2 } }, hidden: [] };
    const document = createSwimDocument(aSwim({ postures: [posture] }));
    const run = (frame: number, x: number) => ({
      landmark: 'toe' as const,
      frame,
      points: [[x, 5, 0.9]] as [number, number, number][],
    });
    const camera = (first: number, last: number, by: number) => ({
      frames: [first, last],
      rows: [100],
      turned: null,
      moved: [
        [
          [0, 0],
          [by, 0],
        ],
      ] as [number, number][][],
    });
    const [left, right] = [
      { first: 10, last: 20 },
      { first: 20, last: 30 },
    ];
    document.run(
      setFollowed([left, right], [run(15, 1), run(25, 2)], [camera(10, 20, 3), camera(20, 30, 4)]),
    );
    const before = document.swim();
    document.run(setFollowed([right], [run(25, 7)], [camera(20, 30, 8)]));
    const { followed, cameraPath, postures } = document.swim();
    expect(followed.map(({ points }) => points[0]?.[0])).toEqual([1, 7]);
    expect(cameraPath.map(({ moved }) => moved[0]?.[1]?.[0])).toEqual([3, 8]);
    expect(postures).toBe(before.postures);
    document.undo();
    expect(document.swim()).toEqual(before);
  });

  it('keeps a drag as one step, counted from where it began', () => {
    const document = createSwimDocument(aSwim());
    document.begin('move kick top', 20);
    for (const frame of [21, 22, 25, 24]) document.during(placeEventAt('top-1', frame), frame);
    expect(document.store.getState().inGesture).toBe(true);
    document.commit();
    expect(document.swim().events[0]?.frame).toBe(24);
    expect(document.undo()?.frame).toBe(20);
    expect(document.swim().events[0]?.frame).toBe(20);
    expect(document.undo()).toBeNull();
    expect(document.redo()?.frame).toBe(24);
  });

  it('leaves no trace of a cancelled drag', () => {
    const document = createSwimDocument(aSwim());
    const before = document.swim();
    document.begin('move kick top');
    document.during(placeEventAt('top-1', 40));
    document.cancel();
    expect(document.swim()).toBe(before);
    expect(document.store.getState().undoName).toBeNull();
  });

  it('makes no step of a drag that ends where it began', () => {
    const document = createSwimDocument(aSwim());
    document.begin('move kick top');
    document.during(placeEventAt('top-1', 21));
    document.during(placeEventAt('top-1', 20));
    document.commit();
    expect(document.undo()).toBeNull();
  });

  it('drops what could be done again once something new is done', () => {
    const document = createSwimDocument(aSwim());
    document.run(removeEvent(aMark('top-1', 'kick-top', 20)));
    document.undo();
    document.run(addEvent(aMark('entry-1', 'entry', 5)));
    expect(document.redo()).toBeNull();
  });

  it('comes back to the start by undo and to the end by redo, whatever was done', () => {
    const command = fc.oneof(
      fc.integer({ min: 0, max: 99 }).map((frame) => addEvent(aMark(`e${frame}`, 'entry', frame))),
      fc.integer({ min: 0, max: 99 }).map((frame) => moveEvent(aMark('top-1', 'kick-top', 0), frame)),
      fc.constant(removeEvent(aMark('bottom-1', 'kick-bottom', 0))),
      fc.integer({ min: 0, max: 99 }).map((frame) => setPosturePoint(frame, 'hip', { x: frame, y: 2 })),
      fc.integer({ min: 0, max: 99 }).map((frame) => hideLandmark(frame, 'hip')),
      fc
        .integer({ min: 0, max: 99 })
        .map((frame) => copyPosture({ frame: 0, points: { ear: { x: 1, y: 2 } }, hidden: ['toe'] }, frame)),
      fc.constant(setScene('level', { a: { x: 0, y: 1 }, b: { x: 9, y: 1 } })),
    );
    fc.assert(
      fc.property(fc.array(command, { maxLength: 25 }), (commands) => {
        const document = createSwimDocument(aSwim());
        const start = document.swim();
        let steps = 0;
        for (const each of commands) if (document.run(each)) steps += 1;
        const end = document.swim();
        for (let step = 0; step < steps; step++) expect(document.undo()).not.toBeNull();
        expect(document.swim()).toEqual(start);
        expect(document.undo()).toBeNull();
        for (let step = 0; step < steps; step++) document.redo();
        expect(document.swim()).toEqual(end);
      }),
      { numRuns: 60 },
    );
  });
});

describe('scene commands', () => {
  it('set one item and leave the others as they are', () => {
    const document = createSwimDocument(aSwim());
    const level = { a: { x: 0, y: 1 }, b: { x: 9, y: 1 } };
    const surface = { a: { x: 0, y: 5 }, b: { x: 9, y: 6 } };
    document.run(setScene('level', level));
    document.run(setScene('surface', surface));
    document.run(setScene('travel', 'left'));
    expect(document.swim().scene).toEqual({ ...emptyScene, travel: 'left', level, surface });
    document.run(setScene('level', null));
    expect(document.swim().scene.level).toBeNull();
    expect(document.store.getState().undoName).toBe('remove the level line');
  });
});

describe('posture commands', () => {
  it('keep postures in order of frames', () => {
    const document = createSwimDocument(aSwim());
    for (const frame of [30, 10, 20]) document.run(setPosturePoint(frame, 'hip', { x: 1, y: 1 }));
    expect(document.swim().postures.map((each) => each.frame)).toEqual([10, 20, 30]);
  });

  it('take a landmark off the hidden list when it is laid, and off the body line when it is hidden', () => {
    const document = createSwimDocument(aSwim());
    document.run(hideLandmark(5, 'toe'));
    expect(document.swim().postures[0]).toEqual({ frame: 5, points: {}, hidden: ['toe'] });
    document.run(setPosturePoint(5, 'toe', { x: 3, y: 4 }));
    expect(document.swim().postures[0]).toEqual({ frame: 5, points: { toe: { x: 3, y: 4 } }, hidden: [] });
    document.run(hideLandmark(5, 'toe'));
    expect(document.swim().postures[0]).toEqual({ frame: 5, points: {}, hidden: ['toe'] });
  });

  it('copy a body line forward without touching what is laid there', () => {
    const document = createSwimDocument(aSwim());
    document.run(setPosturePoint(8, 'hip', { x: 100, y: 100 }));
    document.run(
      copyPosture({ frame: 2, points: { hip: { x: 1, y: 1 }, knee: { x: 2, y: 2 } }, hidden: ['toe'] }, 8),
    );
    expect(document.swim().postures.at(-1)).toEqual({
      frame: 8,
      points: { hip: { x: 100, y: 100 }, knee: { x: 2, y: 2 } },
      hidden: ['toe'],
    });
  });
});
