import { type CoverDesign, coverSection, type Vec2 } from '../../../../core/index.ts';
import { SectionPicture } from '../../../sheet/SectionPicture.tsx';
import { useLengths } from '../../../state/BenchContext.tsx';

/** Radius of the arc that shows the angle, as a share of the board. */
const ARC = 0.45;

/**
 * The book going in, cut across the spine: the open cover with the back board in its pocket, and the front board bent back
 * until its edge stands over the mouth of the other pocket.
 */
export function LoadPicture({ design }: { readonly design: CoverDesign }) {
  const lengths = useLengths();
  const flat = turned(coverSection(design, 'thick', Math.PI));
  const { loadingAngle } = design.fits.thick.pocket;
  const [board, ...others] = flat.boards;
  const hinge = board![3]!;
  const bent = board!.map((point) => turnedAbout(point, hinge, loadingAngle));
  const [flatTip, tip] = [board![2]!, bent[2]!];
  const along = (share: number, [x, y]: Vec2): Vec2 => [
    hinge[0] + share * (x - hinge[0]),
    hinge[1] + share * (y - hinge[1]),
  ];
  const [from, to] = [along(ARC, flatTip), along(ARC, tip)];
  const radius = ARC * Math.hypot(tip[0] - hinge[0], tip[1] - hinge[1]);
  const label = turnedAbout(along(ARC - 0.14, flatTip), hinge, loadingAngle / 2);
  const text = radius * 0.25;
  return (
    <div className="section-drawing">
      <SectionPicture
        section={{ ...flat, boards: [bent, ...others] }}
        label={`The front board bent back ${lengths.angle(loadingAngle)} past flat, to go into its pocket`}
        frame={[...flat.outside, ...bent, ...flat.pages.flat()]}
      >
        <path className="before" d={outline(board!)} />
        <path className="before" d={`M${svg(tip)}L${tip[0]} ${-flatTip[1]}`} />
        <path className="turn" d={`M${svg(from)}A${radius} ${radius} 0 0 0 ${svg(to)}`} />
        <text x={label[0]} y={-label[1]} fontSize={text}>
          {lengths.degrees((loadingAngle * 180) / Math.PI)}
        </text>
      </SectionPicture>
    </div>
  );
}

const svg = ([x, y]: Vec2): string => `${x} ${-y}`;
const outline = (points: readonly Vec2[]): string => `M${points.map(svg).join('L')}Z`;

/** A section with the cover at the bottom and the front at the left: a quarter turn. */
function turned(section: ReturnType<typeof coverSection>): ReturnType<typeof coverSection> {
  const turn = ([x, y]: Vec2): Vec2 => [-y, x];
  const all = (lines: readonly (readonly Vec2[])[]): Vec2[][] => lines.map((line) => line.map(turn));
  return {
    ...section,
    outside: section.outside.map(turn),
    lining: section.lining?.map(turn) ?? null,
    boards: all(section.boards),
    pages: all(section.pages),
    pockets: all(section.pockets),
    seams: section.seams.map(([from, to]) => [turn(from), turn(to)] as const),
  };
}

/** A point turned counterclockwise about another. */
function turnedAbout([x, y]: Vec2, [u, v]: Vec2, angle: number): Vec2 {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [u + cos * (x - u) - sin * (y - v), v + sin * (x - u) + cos * (y - v)];
}
