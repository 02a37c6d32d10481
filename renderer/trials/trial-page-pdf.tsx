import { Circle, Document, G, Line, Page, pdf, Rect, StyleSheet, Svg, Text, View } from '@react-pdf/renderer';
import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { isDoubtful } from '#core/measures/doubtful';
import { levelOf, poolOf } from '#core/practice/trial-row';
import { trialWarnings, trialWarningWords } from '#core/practice/trial-warning';
import { dayWords } from '#core/swim-file/card-words';
import { readingLabel } from '../sets/drill-facts';
import type { TrialOnPaper } from './trial-on-paper';
import { doubtOn } from '../plots/doubt-marks';
import { contrastWords } from './trial-contrast-table';
import { type PlotData, plotsOf } from './trial-plots';
import { factorWords, levelWords, poolWords, trialTitle, valueWords } from './trial-words';
import { trialsWords } from '#core/words/trials';

const style = StyleSheet.create({
  page: { padding: 32, fontFamily: 'Helvetica', fontSize: 8.5, color: '#000', lineHeight: 1.3 },
  title: { fontFamily: 'Helvetica-Bold', fontSize: 18, lineHeight: 1.2, marginBottom: 4 },
  head: { fontFamily: 'Helvetica-Bold', fontSize: 10, lineHeight: 1.2, marginTop: 10, marginBottom: 3 },
  quiet: { color: '#333' },
  row: { flexDirection: 'row', borderTop: trialsWords('n05ptSolid000'), paddingVertical: 2 },
  headRow: { flexDirection: 'row', paddingVertical: 2 },
  cell: { flex: 1, paddingRight: 6 },
  wide: { flex: 2.2, paddingRight: 6 },
  widest: { flex: 3, paddingRight: 6 },
  bold: { fontFamily: 'Helvetica-Bold' },
  plots: { flexDirection: 'row', flexWrap: 'wrap' },
  foot: { position: 'absolute', bottom: 18, left: 32, right: 32, fontSize: 7.5, color: '#333' },
});

/** What the standard PDF fonts have no sign for is written with one they have. */
function plain(words: string): string {
  return words
    .replaceAll('−', '–')
    .replaceAll('→', 'to')
    .replace(/[●○△▽✓] ?/g, '');
}

/** Most repeats and pictures that a page holds; the CSV has them all. */
const mostRows = 14;
const mostContrasts = 12;
const mostPlots = 3;
const roomyLines = 20;

/** A trial on one A4 page, lying: the differences, the repeats, and speed against posture. */
export function trialPagePdf(paper: TrialOnPaper): Promise<Blob> {
  return pdf(<TrialPaper {...paper} />).toBlob();
}

function TrialPaper({ trial, rows, contrasts, squad, own }: TrialOnPaper) {
  const warnings = [
    ...new Set([
      ...trialWarnings(rows, trial.factor).map(trialWarningWords),
      ...contrasts.flatMap((each) =>
        each.status === 'contrast' ? each.warnings.map(trialWarningWords) : [],
      ),
    ]),
  ];
  const shown = contrasts.slice(0, mostContrasts);
  const shownRows = rows.slice(0, mostRows);
  const pools = [...new Set(shown.map(({ pool }) => pool))];
  // a page that is full of lines has no room left for pictures
  const crowded = shown.length + pools.length + shownRows.length + warnings.length > roomyLines;
  const plots = crowded ? [] : plotsOf(trial, rows).slice(0, mostPlots);
  const level = (name: string): string => levelWords(trial.factor, name, own);
  return (
    <Document title={trialTitle(trial.title)} creator="Submark" producer="Submark">
      <Page size="A4" orientation="landscape" style={style.page}>
        <Text style={style.title}>{plain(trialTitle(trial.title))}</Text>
        <Text style={style.quiet}>
          {plain(
            trial.invented
              ? trialsWords('comparedRepeatsInvented', {
                  factor: factorWords(trial.factor),
                  rows: rows.length,
                })
              : trialsWords('comparedRepeats', { factor: factorWords(trial.factor), rows: rows.length }),
          )}
        </Text>
        {trial.note !== '' && <Text>{plain(trial.note)}</Text>}
        {warnings.map((words) => (
          <Text key={words}>• {plain(words)}</Text>
        ))}
        <Text style={style.head}>{trialsWords('differencesWelch95')}</Text>
        {contrasts.length === 0 && <Text>{trialsWords('nothingCanComparedYet')}</Text>}
        {pools.map((pool) => {
          const row = rows.find((each) => poolOf(each, trial.factor) === pool);
          return (
            <View key={pool}>
              <Text style={style.quiet}>{plain(row ? poolWords(row, squad, own) : '')}</Text>
              {shown
                .filter((each) => each.pool === pool)
                .map((each) => {
                  const first = level(each.first.level);
                  const second = level(each.second.level);
                  const words = contrastWords(each, first, second);
                  return (
                    <View
                      key={`${each.readingId} ${each.unit} ${each.first.level} ${each.second.level}`}
                      style={style.row}
                      wrap={false}
                    >
                      <Text style={[style.wide, style.bold]}>{readingLabel(each.readingId)}</Text>
                      <Text style={style.wide}>{plain(`${first} → ${second}`)}</Text>
                      <Text style={style.wide}>{plain(words.difference)}</Text>
                      <Text style={[style.cell, style.bold]}>{plain(words.verdictWords)}</Text>
                      <Text style={style.widest}>{plain(words.settle)}</Text>
                    </View>
                  );
                })}
            </View>
          );
        })}
        {contrasts.length > shown.length && (
          <Text>{trialsWords('moreDifferencesScreen', { contrasts: contrasts.length - shown.length })}</Text>
        )}
        <Text style={style.head}>{trialsWords('repeatsOrderSwum')}</Text>
        <View style={style.headRow}>
          <Text style={style.cell}>{trialsWords('day')}</Text>
          <Text style={style.cell}>{trialsWords('condition')}</Text>
          <Text style={style.cell}>{trialsWords('kickCycles')}</Text>
          {trial.readings.slice(0, 7).map((id) => (
            <Text key={id} style={style.cell}>
              {readingLabel(id)}
            </Text>
          ))}
        </View>
        {shownRows.map((row, i) => {
          const at = levelOf(row, trial.factor);
          return (
            <View key={row.swimId} style={style.row} wrap={false}>
              <Text style={style.cell}>
                {i + 1}. {dayWords(row.day)}
              </Text>
              <Text style={style.cell}>{at === null ? trialsWords('notSaid') : plain(level(at))}</Text>
              <Text style={style.cell}>{row.kickCycles ?? trialsWords('notMarked')}</Text>
              {trial.readings.slice(0, 7).map((id) => {
                const found = row.values.get(id);
                return (
                  <Text key={id} style={style.cell}>
                    {found ? plain(valueWords(id, found)) : '–'}
                  </Text>
                );
              })}
            </View>
          );
        })}
        {rows.length > shownRows.length && (
          <Text>{trialsWords('moreCsv', { rows: rows.length - shownRows.length })}</Text>
        )}
        <View style={style.plots} wrap={false}>
          {plots.map((plot) => (
            <SmallPlot
              key={plot.key}
              plot={plot}
              levels={[...new Set(plot.points.map((each) => each.level))]}
              words={(name) => plain(level(name))}
            />
          ))}
        </View>
        <Text style={style.foot} fixed>
          {trialsWords('submarkTrialClear')}
        </Text>
      </Page>
    </Document>
  );
}

function SmallPlot({
  plot,
  levels,
  words,
}: {
  readonly plot: PlotData;
  readonly levels: readonly (string | null)[];
  /** A level as the coach says it. */
  readonly words: (level: string) => string;
}) {
  const width = 245;
  const height = 120;
  const ends = (of: 'x' | 'y'): [number, number] => {
    const [low = 0, high = 1] = extent(
      plot.points.flatMap((point) => [point[of].value - point[of].half, point[of].value + point[of].half]),
    );
    return low === high ? [low - 1, high + 1] : [low, high];
  };
  const x = scaleLinear(ends('x'), [34, width - 12]).nice();
  const y = scaleLinear(ends('y'), [height - 18, 10]).nice();
  return (
    <View style={{ marginRight: 12, marginTop: 8 }} wrap={false}>
      <Text style={style.bold}>
        {readingLabel(plot.y)} ({plot.points[0]?.y.unit}
        {trialsWords('against', { toLocaleLowerCase: readingLabel(plot.x).toLocaleLowerCase() })}
        {plot.points[0]?.x.unit})
      </Text>
      <Svg width={width} height={height}>
        <Line x1={34} x2={34} y1={10} y2={height - 18} stroke="#000" strokeWidth={0.7} />
        <Line x1={34} x2={width - 12} y1={height - 18} y2={height - 18} stroke="#000" strokeWidth={0.7} />
        {x.ticks(4).map((tick) => (
          <Text key={`x${tick}`} x={x(tick) - 6} y={height - 6} style={{ fontSize: 7 }}>
            {plain(x.tickFormat(4)(tick))}
          </Text>
        ))}
        {y.ticks(3).map((tick) => (
          <Text key={`y${tick}`} x={4} y={y(tick) + 2} style={{ fontSize: 7 }}>
            {plain(y.tickFormat(3)(tick))}
          </Text>
        ))}
        {plot.points.map((point) => {
          const cx = x(point.x.value);
          const cy = y(point.y.value);
          const at = levels.indexOf(point.level);
          const { doubt } = doubtOn(isDoubtful(point.x) || isDoubtful(point.y));
          return (
            <G key={point.swimId}>
              <Line
                x1={x(point.x.value - point.x.half)}
                x2={x(point.x.value + point.x.half)}
                y1={cy}
                y2={cy}
                stroke="#555"
                strokeWidth={0.6}
              />
              <Line
                x1={cx}
                x2={cx}
                y1={y(point.y.value - point.y.half)}
                y2={y(point.y.value + point.y.half)}
                stroke="#555"
                strokeWidth={0.6}
              />
              {at % 2 === 0 ? (
                <Circle
                  cx={cx}
                  cy={cy}
                  r={3}
                  fill={at === 0 ? '#000' : '#fff'}
                  stroke="#000"
                  strokeWidth={0.8}
                />
              ) : (
                <Rect
                  x={cx - 3}
                  y={cy - 3}
                  width={6}
                  height={6}
                  fill={at === 1 ? '#fff' : '#000'}
                  stroke="#000"
                  strokeWidth={0.8}
                />
              )}
              {doubt !== '' && (
                <Text x={cx + 5} y={cy - 4} style={{ fontSize: 6.5 }}>
                  {doubt}
                </Text>
              )}
            </G>
          );
        })}
      </Svg>
      <Text style={style.quiet}>
        {levels
          .map(
            (name, i) =>
              `${[trialsWords('blackDisc'), trialsWords('whiteSquare'), trialsWords('whiteDisc'), trialsWords('blackSquare')][i % 4]}: ${name === null ? trialsWords('notSaid') : words(name)}`,
          )
          .join(', ')}
      </Text>
    </View>
  );
}
