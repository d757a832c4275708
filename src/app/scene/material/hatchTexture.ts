import type { Texture } from 'three';
import { tileTexture } from './tile.ts';

/** Ways of hatching a cut face or a strip, told apart without colour. */
export type Hatch = 'rising' | 'falling' | 'crossed' | 'dots' | 'leaves' | 'dashes';

/** Ink of a line of `width` (share of the pitch) at `phase`, 1 on the line and 0 off it, softened. */
function ink(phase: number, width: number): number {
  const off = Math.abs((((phase % 1) + 1) % 1) - 0.5);
  return Math.max(0, Math.min(1, (off - (0.5 - width / 2)) / 0.06 + 0.5));
}

const PATTERNS: Record<Hatch, (u: number, v: number) => number> = {
  rising: (u, v) => ink(u - v, 0.22),
  falling: (u, v) => ink(u + v, 0.22),
  crossed: (u, v) => Math.max(ink(u - v, 0.2), ink(u + v, 0.2)),
  dots: (u, v) => Math.max(0, Math.min(1, (0.26 - Math.hypot(u - 0.5, v - 0.5)) / 0.06)),
  leaves: (_, v) => 0.55 * ink(v, 0.2),
  dashes: (u, v) => ink(2 * v, 0.2) * ((v < 0.5 ? u : u + 0.5) % 1 < 0.62 ? 1 : 0),
};

/** Hatching with the given pitch, dark ink on white, to be multiplied by a tone. */
export const hatchTexture = (hatch: Hatch, pitch_mm: number): Texture =>
  tileTexture({ kind: 'tone', size: 64, side_mm: pitch_mm, at: (u, v) => 1 - 0.72 * PATTERNS[hatch](u, v) });
