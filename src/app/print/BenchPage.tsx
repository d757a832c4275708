import { type CoverDesign, coverSection, type Printer, patternDrawing } from '../../core/index.ts';
import { versionMark } from '../../output/versionMark.ts';
import { CutRows } from '../panel/CutRows.tsx';
import { Headline } from '../panel/Headline.tsx';
import { bookSentence, leatherSentence, seamSentence } from '../panel/jobSentences.tsx';
import Hatches from '../sheet/Hatches.tsx';
import { SectionPicture } from '../sheet/SectionPicture.tsx';
import { printedPicture } from '../stage/usePrintedPictures.ts';
import { useBench } from '../state/BenchContext.tsx';
import { rulerTicks } from '../strip/rulerTicks.ts';
import { StripFigure } from '../strip/StripFigure.tsx';
import { outsideWords, stripLabels } from '../strip/stripLabels.ts';
import { stacked, stripLayout } from '../strip/stripLayout.ts';
import { rangeTracks } from '../strip/track.ts';
import './benchPage.css';

/** Width of the drawings, px: within the margins of A4 and of Letter. */
const WIDTH = 690;
/** Height of a line of a label, px. */
const LINE = 14;

/** The open job on one page of A4 or Letter: picture, fit, sizes, both strips. */
export function BenchPage() {
  const { design, report, lengths } = useBench(({ design, report, lengths }) => ({ design, report, lengths }));
  const { job } = design;
  const picture = printedPicture(design);
  return (
    <article className="bench-page only-printed">
      <Hatches />
      <header>
        <h1>{job.name}</h1>
        <p>
          Version {versionMark(job)}, {new Date().toLocaleDateString('en-GB', { dateStyle: 'long' })}
        </p>
      </header>
      <div className="bench-page-cover">
        {picture === null ? (
          <figure className="section-drawing">
            <SectionPicture section={coverSection(design, 'thick', 0)} label="Section across the spine" />
            <figcaption>Section across the spine, to scale, at the thick end of the leather.</figcaption>
          </figure>
        ) : (
          <img src={picture} alt="The cover on the book" />
        )}
        <div>
          <Headline verdict={report.verdict} state={report.state} headline={report.headline} />
          {report.doubt.leastSure !== '' && <p>Least sure: {report.doubt.leastSure}.</p>}
        </div>
      </div>
      <div className="bench-page-sizes">
        <dl>
          <dt>Book</dt>
          <dd>{bookSentence(job, lengths)}</dd>
          <dt>Leather</dt>
          <dd>{leatherSentence(job, lengths)}</dd>
          <dt>Seam and pockets</dt>
          <dd>{seamSentence(job, lengths)}</dd>
        </dl>
        <table>
          <caption>Cut sizes, width × height</caption>
          <CutRows drawing={patternDrawing(design)} print={lengths} />
        </table>
      </div>
      <PrintedStrip axis="width" title="The wrap laid out" design={design} lengths={lengths} />
      <PrintedStrip axis="height" title="Head to tail" design={design} lengths={lengths} />
    </article>
  );
}

interface PrintedStripProps {
  readonly design: CoverDesign;
  readonly lengths: Printer;
  readonly axis: 'width' | 'height';
  readonly title: string;
}

/** The cover laid out along one axis, over the width of the page; the height lies with the head at the left. */
function PrintedStrip({ axis, title, design, lengths }: PrintedStripProps) {
  const tracks = rangeTracks(design, axis, lengths);
  const [first, second] = tracks;
  const { segments, span } = first!;
  const labels = stripLabels(segments, second?.segments ?? null, lengths).map(stacked);
  const layout = stripLayout(first!, labels, tracks.length, WIDTH, span);
  return (
    <section>
      <h2>
        {title} <span>{outsideWords(design, axis, lengths)}</span>
      </h2>
      <div className="bench-page-strip">
        <StripFigure tracks={tracks} layout={layout} ticks={rulerTicks(span, lengths.units)}>
          {layout.labels.map(({ id, lines, centre, top }) => (
            <text
              key={id}
              className="bench-page-label"
              y={top === 0 ? layout.labelHeight - LINE * lines.length - 6 : top + 2}
            >
              {lines.map((line, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two lines may say the same
                <tspan key={i} x={centre} dy={LINE} data-figure={/\d/.test(line) || undefined}>
                  {line}
                </tspan>
              ))}
            </text>
          ))}
        </StripFigure>
      </div>
    </section>
  );
}
