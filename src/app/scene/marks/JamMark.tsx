import { useEffect, useMemo } from 'react';
import { CanvasTexture, SpriteMaterial, SRGBColorSpace } from 'three';
import type { SeenJam } from '../../../core/index.ts';
import { CHALK } from '../material/palette.ts';

/** Side of the drawn ring, px, and its size in the picture as a share of the picture's height at a distance of 1. */
const SIDE = 128;
const SIZE = 0.06;

/** A ring round the spot at which the making comes to a stop, seen through whatever stands before it. */
export function JamMark({ jam }: { readonly jam: SeenJam }) {
  const material = useMemo(
    () => new SpriteMaterial({ map: ring(), depthTest: false, sizeAttenuation: false, toneMapped: false }),
    [],
  );
  useEffect(
    () => () => {
      material.map?.dispose();
      material.dispose();
    },
    [material],
  );
  return <sprite name="jam" position={[...jam.spot]} scale={[SIZE, SIZE, 1]} material={material} renderOrder={10} />;
}

function ring(): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = SIDE;
  canvas.height = SIDE;
  const paper = canvas.getContext('2d')!;
  for (const [width, colour] of [
    [20, CHALK.overrunWash],
    [10, CHALK.overrunInk],
  ] as const) {
    paper.lineWidth = width;
    paper.strokeStyle = colour;
    paper.beginPath();
    paper.arc(SIDE / 2, SIDE / 2, SIDE / 2 - 12, 0, 2 * Math.PI);
    paper.stroke();
  }
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  return texture;
}
