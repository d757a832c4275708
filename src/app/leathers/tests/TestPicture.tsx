import type { ReactNode } from 'react';
import type { StripTest } from '../../../core/index.ts';

/** What is set up for a test, and where it is read; seen from the side. */
export function TestPicture({ test }: { readonly test: StripTest }) {
  return (
    <svg className="test-picture" viewBox="0 0 200 96" aria-hidden="true">
      {PICTURES[test]}
    </svg>
  );
}

/** A dimension with a tick at each end. */
const Read = ({ d }: { readonly d: string }) => <path className="test-read" d={d} />;

const PICTURES: Readonly<Record<StripTest, ReactNode>> = {
  // At the left round the edge of a block, at the right folded under a weight.
  fold: (
    <>
      <path className="test-thing" d="M12 88V44H64V88Z" />
      <path className="test-strip" d="M12 41H60A7 7 0 0 1 67 48V84" />
      <path className="test-mark" d="M60 34V46M60 51H74" />
      <Read d="M63 31Q78 32 78 48M60.500 28.500L62.500 33.500M75.500 48.500H80.500" />
      <path className="test-thing" d="M140 58H188V36H140Z" />
      <path className="test-strip" d="M186 63H122A5.500 5.500 0 0 0 122 74H186" />
      <path className="test-thing" d="M140 60H188M104 77H192" />
      <Read d="M112 60V77M109.500 60H114.500M109.500 77H114.500" />
    </>
  ),
  // The strip over the edge of a table, held by a board and a weight.
  droop: (
    <>
      <path className="test-thing" d="M8 34H84V44H8ZM18 44V92M72 44V92M14 24H70V30H14ZM30 24V10H54V24" />
      <path className="test-strip" d="M8 32H84C122 33 150 46 164 78" />
      <path className="test-guide" d="M84 34H182" />
      <Read d="M176 34V79M173.500 34H178.500M173.500 79H178.500" />
      <Read d="M84 22C124 23 156 36 174 66M84 19.500V24.500" />
    </>
  ),
  // Two strips, before and after, and their marks.
  change: (
    <>
      <path className="test-face" d="M14 14H186V36H14Z" />
      <path className="test-mark" d="M30 25H38M34 21V29M162 25H170M166 21V29" />
      <Read d="M34 44H166M34 41.500V46.500M166 41.500V46.500" />
      <path className="test-face" d="M16.500 60H183.500V81H16.500Z" />
      <path
        className="test-mark"
        d="M32.500 70.500H40.500M36.500 66.500V74.500M159.500 70.500H167.500M163.500 66.500V74.500"
      />
      <Read d="M36.500 89H163.500M36.500 86.500V91.500M163.500 86.500V91.500" />
    </>
  ),
  // From above: pressed, and let go; the angle between the legs.
  crease: (
    <>
      <path className="test-strip" d="M78 40H24A4 4 0 0 0 24 48H78" />
      <path className="test-thing" d="M16 54H84M28 34H84V16H28ZM16 37H84" />
      <path className="test-strip" d="M186 22L124 56A4 4 0 0 0 125.500 63H190" />
      <Read d="M166 36A50 50 0 0 1 172 60" />
    </>
  ),
};
