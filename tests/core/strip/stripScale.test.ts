import { expect, it } from 'vitest';
import { stripScale } from '../../../src/core/strip/stripScale.ts';

it('a strip 2 mm thick, 30 mm wide, of 40 MPa has EI = 800 N mm2 and EA = 2,400 N', () => {
  // E w t^3 / 12 = 40 x 30 x 8 / 12; with D = 20 mm EI/D^2 = 2 N, EI/D = 40 N mm, EA D^2/EI = 1,200.
  expect(stripScale(20, 2, 30, 40)).toEqual({ length: 20, force: 2, moment: 40, stretchStiffness: 1200 });
});
