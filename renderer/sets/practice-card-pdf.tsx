import { Document, Page, pdf, StyleSheet, Text, View } from '@react-pdf/renderer';
import { type CautionCode, cautions } from '#core/practice/caution';
import { drillById } from '#core/practice/drill-library';
import type { Drill } from '#core/practice/drill-schema';
import { itemCautions } from '#core/practice/item-cautions';
import { itemPhrase } from '#core/practice/item-phrase';
import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import { assumedPace, practiceTime } from '#core/practice/practice-time';
import { practiceTotals } from '#core/practice/practice-totals';
import { patternPhrase } from '#core/practice/stroke-pattern';
import { unfoldItem } from '#core/practice/unfold-item';
import type { Squad } from '#core/swim-file/squad-schema';
import { dayWords } from '#core/swim-file/card-words';
import { durationWords, metresWords, titleOf } from './sets-words';
import { setsWords } from '#core/words/sets';

const style = StyleSheet.create({
  page: { padding: 40, fontFamily: 'Helvetica', fontSize: 11, color: '#000', lineHeight: 1.35 },
  title: { fontFamily: 'Helvetica-Bold', fontSize: 20, lineHeight: 1.2, marginBottom: 6 },
  quiet: { fontSize: 9.5, lineHeight: 1.3, color: '#333' },
  item: { flexDirection: 'row', borderTop: setsWords('n1ptSolid000'), paddingVertical: 7 },
  number: { width: 26, fontFamily: 'Helvetica-Bold', fontSize: 15, lineHeight: 1.2 },
  body: { flex: 1 },
  phrase: { fontFamily: 'Helvetica-Bold', fontSize: 13, lineHeight: 1.25 },
  ticks: { flexDirection: 'row', flexWrap: 'wrap', marginTop: 4 },
  tick: {
    borderWidth: 1,
    borderColor: '#000',
    borderStyle: 'solid',
    minWidth: 34,
    height: 22,
    marginRight: 4,
    marginBottom: 4,
    padding: 2,
  },
  tickWords: { fontSize: 7.5, lineHeight: 1.2, color: '#333' },
  totals: { borderTop: setsWords('n1ptSolid000'), paddingTop: 8, marginTop: 2 },
  cautions: { border: setsWords('n15ptSolid000'), padding: 8, marginTop: 12 },
  cautionsHead: { fontFamily: 'Helvetica-Bold', marginBottom: 3 },
  foot: { position: 'absolute', bottom: 22, left: 40, right: 40, fontSize: 8, color: '#333' },
});

/** The practice card as a PDF of A4 pages: items with a box a repeat for the pencil, totals, cautions. */
export function practiceCardPdf(practice: Practice, squad: Squad, own: readonly Drill[]): Promise<Blob> {
  return pdf(<PracticeCard practice={practice} squad={squad} own={own} />).toBlob();
}

interface Props {
  readonly practice: Practice;
  readonly squad: Squad;
  readonly own: readonly Drill[];
}

function PracticeCard({ practice, squad, own }: Props) {
  const drillOf = (item: PracticeItem): Drill | null => drillById(item.drillId ?? '', own);
  const codes = [
    ...new Set(
      practice.items.flatMap((item): readonly CautionCode[] => itemCautions(item, drillOf(item)).cautions),
    ),
  ];
  const names = squad.swimmers.filter(({ id }) => practice.swimmerIds.includes(id)).map(({ name }) => name);
  return (
    <Document title={titleOf(practice)} creator="Submark" producer="Submark">
      <Page size="A4" style={style.page}>
        <Text style={style.title}>{titleOf(practice)}</Text>
        <Text style={style.quiet}>
          {practice.invented
            ? setsWords('inventedSamples', {
                list: [
                  dayWords(practice.date),
                  setsWords('mPool', { poolMetres: practice.poolMetres }),
                  names.join(', '),
                ]
                  .filter(Boolean)
                  .join(' · '),
              })
            : `${[
                dayWords(practice.date),
                setsWords('mPool', { poolMetres: practice.poolMetres }),
                names.join(', '),
              ]
                .filter(Boolean)
                .join(' · ')}`}
        </Text>
        {practice.note !== '' && <Text style={{ marginTop: 4 }}>{practice.note}</Text>}
        <View style={{ height: 8 }} />
        {practice.items.map((item, place) => (
          <ItemOnCard key={item.id} item={item} drill={drillOf(item)} place={place} />
        ))}
        <Text style={style.totals}>{totalsLine(practice)}</Text>
        {codes.length > 0 && (
          <View style={style.cautions} wrap={false}>
            <Text style={style.cautionsHead}>{setsWords('mind')}</Text>
            {codes.map((code) => (
              <Text key={code}>• {cautions[code].words}</Text>
            ))}
          </View>
        )}
        <Text
          style={style.foot}
          fixed
          render={({ pageNumber, totalPages }) =>
            setsWords('submarkPracticeCard', { pageNumber, totalPages })
          }
        />
      </Page>
    </Document>
  );
}

function ItemOnCard({
  item,
  drill,
  place,
}: {
  readonly item: PracticeItem;
  readonly drill: Drill | null;
  readonly place: number;
}) {
  const planned = unfoldItem(item);
  return (
    <View style={style.item} wrap={false}>
      <Text style={style.number}>{place + 1}</Text>
      <View style={style.body}>
        <Text style={style.phrase}>{itemPhrase(item, drill)}</Text>
        {item.kickBetween && (
          <Text>
            {item.kickBetween.aids.length > 0
              ? setsWords('betweenMKick', {
                  metres: item.kickBetween.metres,
                  aids: item.kickBetween.aids.join(' and '),
                })
              : setsWords('betweenMKickMetres', { metres: item.kickBetween.metres })}
          </Text>
        )}
        {drill?.how ? <Text>{drill.how}</Text> : null}
        {drill && drill.watch.length > 0 ? (
          <Text style={style.quiet}>{setsWords('watch', { watch: drill.watch.join(' ') })}</Text>
        ) : null}
        {item.note !== '' && <Text style={style.quiet}>{item.note}</Text>}
        <View style={style.ticks}>
          {planned.slice(0, 24).map(({ repeat, distanceMetres, count, pattern }) => (
            <View key={repeat} style={style.tick}>
              <Text style={style.tickWords}>
                {[
                  item.ladder?.of === 'lengths' ? `${distanceMetres} m` : '',
                  item.ladder?.of === 'pattern' && pattern ? patternPhrase(pattern.runs) : '',
                  count !== null ? `${count}` : '',
                ]
                  .filter(Boolean)
                  .join(' · ')}
              </Text>
            </View>
          ))}
        </View>
      </View>
    </View>
  );
}

function totalsLine(practice: Practice): string {
  const totals = practiceTotals(practice, null, 'planned');
  const time = practiceTime(practice, practice.pace ?? assumedPace);
  return [
    metresWords(totals.metres),
    totals.aidedMetres > 0
      ? totals.matched
        ? setsWords('aidsWithoutMatched', {
            metres: metresWords(totals.aidedMetres),
            metres2: metresWords(totals.unaidedMetres),
          })
        : setsWords('aidsWithoutWithout', {
            metres: metresWords(totals.aidedMetres),
            metres2: metresWords(totals.unaidedMetres),
            metres3: metresWords(totals.shortfallMetres),
          })
      : setsWords('noAids'),
    setsWords('oneArmStrokes', { right: totals.arms.right, left: totals.arms.left }),
    setsWords('about', { duration: durationWords(time.seconds) }),
  ].join(' · ');
}
