import type { Bench } from 'tinybench';
import { calibrationMs } from './calibration.ts';

/**
 * Prints one row per task of a finished bench: median and 99th percentile in ms, samples taken, and the median as a
 * share of the calibration loop, which is measured here and stated under the table.
 */
export function printTable(bench: Bench): void {
  const calibration = calibrationMs();
  const rows: Record<string, object> = {};
  for (const task of bench.tasks) {
    const result = task.result;
    if (result.state !== 'completed') {
      console.error(`"${task.name}" did not complete: ${'error' in result ? result.error : result.state}`);
      process.exitCode = 1;
      continue;
    }
    const { p50, p99, samplesCount } = result.latency;
    rows[task.name] = {
      'median ms': p50.toPrecision(3),
      'p99 ms': p99.toPrecision(3),
      samples: samplesCount,
      'median / loop': (p50 / calibration).toPrecision(3),
    };
  }
  console.table(rows);
  console.log(`calibration loop ${calibration.toFixed(1)} ms`);
}
