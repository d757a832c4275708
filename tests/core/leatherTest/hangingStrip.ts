/** Steps along the strip. */
const STEPS = 400;

/**
 * Droop over length, and curvature at the held end times length, of a strip with w L^3 / EI = k, found another way than the tool does:
 * from the held end, whose curvature is halved in on until the tip's is 0.
 */
export function hangingStrip(k: number): { droop: number; curvature: number } {
  let [low, high] = [0, k];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (fromHeldEnd(k, middle).turning < 0) low = middle;
    else high = middle;
  }
  const curvature = (low + high) / 2;
  return { droop: fromHeldEnd(k, curvature).droop, curvature };
}

/** Curvature at the tip, and droop: theta'' = -k (1 - s) cos(theta), by the midpoint method. */
function fromHeldEnd(k: number, curvature: number): { turning: number; droop: number } {
  const h = 1 / STEPS;
  let [angle, turning, droop] = [0, curvature, 0];
  for (let i = 0; i < STEPS; i++) {
    const half = angle + (h / 2) * turning;
    const turningHalf = turning - (h / 2) * k * (1 - i * h) * Math.cos(angle);
    turning -= h * k * (1 - (i + 0.5) * h) * Math.cos(half);
    angle += h * turningHalf;
    droop += h * Math.sin(half);
    if (turning < 0) return { turning, droop };
  }
  return { turning, droop };
}
