import { expect, test } from 'vitest';
import { settingsFor, stripSettings } from '../../../src/core/strip/stripSettings.ts';

test('a strip up to the usual length is solved by the settings as they are', () => {
  expect(settingsFor(stripSettings, stripSettings.usualLength)).toBe(stripSettings);
});

test('a strip twice as long is balanced to a quarter of the force, with an eighth of the first penalty, to the same gap', () => {
  const { penalty, minPivot, firstShift, residual } = stripSettings;
  expect(settingsFor(stripSettings, 2 * stripSettings.usualLength)).toEqual({
    ...stripSettings,
    penalty: penalty / 8,
    minPivot: minPivot / 8,
    firstShift: firstShift / 8,
    residual: residual / 4,
  });
});
