import { bodyChain, type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { withoutPlace } from '#core/measures/without-place';
import { Dimension } from './dimension';
import { readingsWords } from '#core/words/readings';

type At = readonly [number, number];

/** A drawn swimmer going right, bent enough for every angle to show; made up, not a model to copy. */
const pose: Readonly<Record<LandmarkName, At>> = {
  fingertip: [246, 48],
  wrist: [226, 50],
  elbow: [204, 60],
  shoulder: [178, 60],
  ear: [194, 44],
  hip: [122, 36],
  knee: [80, 60],
  ankle: [44, 44],
  toe: [24, 60],
};

/** Joint angles: the point it is at and its two neighbours. */
const joints: Readonly<Record<string, readonly [LandmarkName, LandmarkName, LandmarkName]>> = {
  'elbow-angle': ['shoulder', 'elbow', 'wrist'],
  'shoulder-angle': ['hip', 'shoulder', 'elbow'],
  'hip-angle': ['shoulder', 'hip', 'knee'],
  'knee-angle': ['hip', 'knee', 'ankle'],
  'ankle-angle': ['knee', 'ankle', 'toe'],
};

function arc(first: At, at: At, second: At, radius = 17): string {
  const angle = (to: At): number => Math.atan2(to[1] - at[1], to[0] - at[0]);
  const [a, b] = [angle(first), angle(second)];
  const turn = (((b - a) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const on = (t: number): string => `${at[0] + radius * Math.cos(t)},${at[1] + radius * Math.sin(t)}`;
  return turn > Math.PI
    ? `M${on(b)}A${radius},${radius} 0 0 1 ${on(a)}`
    : `M${on(a)}A${radius},${radius} 0 0 1 ${on(b)}`;
}

/** The foot of the perpendicular from a point on the line through two others. */
function onto(point: At, a: At, b: At): At {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const share = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / (dx * dx + dy * dy);
  return [a[0] + share * dx, a[1] + share * dy];
}

const line = (a: At, b: At): string => `M${a[0]},${a[1]}L${b[0]},${b[1]}`;

/** The body line of a posture, with the angle or length that the reading is. */
export function BodyDrawing({ id }: { readonly id: string }) {
  const bare = withoutPlace(id);
  const surface = bare === 'depth-hip' || bare === 'knee-to-surface';
  return (
    <>
      <path className="drawn-body" d={`M${bodyChain.map((name) => pose[name].join(',')).join('L')}`} />
      {landmarkNames.map((name) => (
        <circle key={name} cx={pose[name][0]} cy={pose[name][1]} r={2.6} className="drawn-point" />
      ))}
      {surface && (
        <path className="drawn-water" d="M8,12q12,-5 24,0t24,0t24,0t24,0t24,0t24,0t24,0t24,0t24,0t24,0" />
      )}
      <Asked id={bare} />
      <text x={206} y={90} className="drawn-name">
        {readingsWords('travel')}
      </text>
    </>
  );
}

function Asked({ id }: { readonly id: string }) {
  const joint = joints[id];
  if (joint) {
    const [a, at, b] = joint;
    return <path className="drawn-asked" d={arc(pose[a], pose[at], pose[b])} />;
  }
  switch (id) {
    case 'trunk-pitch':
      return (
        <>
          <path className="drawn-help" d={line(pose.hip, [pose.hip[0] + 62, pose.hip[1]])} />
          <path className="drawn-asked" d={arc([200, pose.hip[1]], pose.hip, pose.shoulder, 40)} />
        </>
      );
    case 'head-offset': {
      const foot = onto(pose.ear, pose.wrist, pose.shoulder);
      return (
        <>
          <path className="drawn-help" d={line(pose.wrist, pose.shoulder)} />
          <Dimension from={foot} to={pose.ear} />
        </>
      );
    }
    case 'hip-height':
      return (
        <>
          <path className="drawn-help" d={line(pose.shoulder, pose.ankle)} />
          <Dimension from={onto(pose.hip, pose.shoulder, pose.ankle)} to={pose.hip} />
        </>
      );
    case 'frontal-thickness':
      return (
        <>
          <path className="drawn-help" d="M14,36H256M14,60H256" />
          <Dimension from={[14, 36]} to={[14, 60]} />
        </>
      );
    case 'straightness':
      return (
        <>
          <path className="drawn-help" d={line(pose.fingertip, pose.toe)} />
          {(['wrist', 'elbow', 'shoulder', 'hip', 'knee', 'ankle'] as const).map((name) => (
            <path
              key={name}
              className="drawn-asked"
              d={line(pose[name], onto(pose[name], pose.fingertip, pose.toe))}
            />
          ))}
        </>
      );
    case 'depth-hip':
      return <Dimension from={[pose.hip[0], 12]} to={pose.hip} words={readingsWords('depth')} />;
    case 'knee-to-surface':
      return <Dimension from={[pose.knee[0], 12]} to={pose.knee} />;
    case 'feet-direction-top':
    case 'feet-direction-bottom': {
      const upright: At = [pose.ankle[0], pose.ankle[1] + (id.endsWith('top') ? -30 : 40)];
      return (
        <>
          <path className="drawn-help" d={line(pose.ankle, upright)} />
          <path className="drawn-asked" d={arc(upright, pose.ankle, pose.toe)} />
        </>
      );
    }
    default:
      return null;
  }
}
