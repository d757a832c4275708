/** Said in every file meant for a laser. Common practice, no source. */
export const LASER_CAUTION: readonly string[] = [
  'Laser: never cut PVC or anything that may hold it; it gives off chlorine.',
  'Chrome-tanned leather on a laser is disputed; vegetable-tanned leather gives smoke that must be drawn off.',
  'Follow the maker of the machine and the local rules. Cut a test square first and measure it.',
];
