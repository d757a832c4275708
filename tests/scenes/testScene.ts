import type { Lens, MarkedPaper, Standpoint } from '../../src/core/index.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Vec3 } from '../../src/core/math/vec3.ts';
import type { TestBook } from './bookSolids.ts';

/** A page of the measuring sheet on the ground. */
export interface LaidPage {
  readonly paper: MarkedPaper;
  /** From 0. */
  readonly page: number;
  /** Place of its middle, mm, and its turn counterclockwise, radians. */
  readonly at: Vec2;
  readonly angle: number;
  /** How far its ends across and along curl up, mm. */
  readonly curl: Vec2;
}

/** Something flat that lies over the pages. */
export interface Scrap {
  readonly at: Vec2;
  readonly angle: number;
  readonly width: number;
  readonly height: number;
  readonly colour: Vec3;
}

export interface LaidBook {
  readonly book: TestBook;
  readonly pose: 'lying' | 'standing';
  /** Where the middle of what touches the ground is, mm, and which way the fore-edge points, radians. */
  readonly at: Vec2;
  readonly angle: number;
}

/** What is to be photographed. Lengths are mm in the axes of the sheet: x right, y toward the head, z up. */
export interface TestScene {
  readonly seed: number;
  readonly ground: 'wood' | 'cloth' | 'table' | 'screen';
  readonly groundColour: Vec3;
  readonly pages: readonly LaidPage[];
  /** By what factors the pages are printed too large. */
  readonly print: { readonly across: number; readonly along: number };
  readonly scraps: readonly Scrap[];
  readonly book: LaidBook | null;
  readonly light: {
    /** Toward the lamp. */
    readonly sun: Vec3;
    /** Radius of the lamp as seen from the book, radians: the softness of its shadows. */
    readonly softness: number;
    /** Share of the light that comes from all sides. */
    readonly ambient: number;
    /** Loss of light over 1 m away from the lamp's side, as a share. */
    readonly falloff: number;
  };
}

/** The camera, and what its pictures suffer. */
export interface TestCamera {
  readonly width: number;
  readonly height: number;
  readonly lens: Lens;
  readonly pose: Standpoint;
  /** Standard deviation of the blur, pixels. */
  readonly blur: number;
  /** Electrons of a white pixel: few are noisy. */
  readonly wellDepth: number;
  /** Factor from reflected light to the picture's white. */
  readonly exposure: number;
  /** Quality of the JPEG file, 1 to 100. */
  readonly quality: number;
}
