import { validateBytes } from 'gltf-validator';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { lettersOf } from '../../../src/artwork/faces/lettersOf.ts';
import { coverColours } from '../../../src/core/finish/coverColours.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { partReliefs } from '../../../src/core/tooling/partRelief.ts';
import { type FoldedGlb, foldedGlb } from '../../../src/output/glb/foldedGlb.ts';
import { sequenceTakes } from '../../../src/output/glb/sequenceTakes.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { readGlb } from './readGlb.ts';

const DESIGNS = [
  { kind: 'border', area: 'front', lines: 2, corners: 'notched' },
  { kind: 'title', area: 'front', text: 'CH', face: 'uncial', height_mm: 30 },
  { kind: 'title', area: 'spine', text: 'Harbour', reading: 'down', height_mm: 8 },
  { kind: 'border', area: 'back', corners: 'rounded' },
  { kind: 'title', area: 'frontPocket', text: 'A', height_mm: 14 },
  { kind: 'title', area: 'backPocket', text: 'B', face: 'singleLine', height_mm: 14 },
];

/** The model of the choir book, tooled. */
async function tooledGlb(designs: readonly object[]): Promise<FoldedGlb> {
  const design = coverDesign(soundJob({ ...EXAMPLE_JOBS[1].document, tooling: { designs } }));
  const { designs: parsed, depth_mm } = design.job.tooling;
  return foldedGlb(sequenceTakes(design, 'nominal', 2), {
    name: 'Tooled',
    colours: coverColours(design.job),
    reliefs: partReliefs(design, await lettersOf(parsed)),
    reliefDepth: depth_mm,
  });
}

describe('a GLB of a tooled cover', () => {
  let whole: FoldedGlb;
  beforeAll(async () => {
    whole = await tooledGlb(DESIGNS);
  });

  test('is valid', async () => {
    const { issues } = await validateBytes(whole.bytes);
    expect(issues.numErrors).toBe(0);
    // The pictures are as large as what is tooled. The renderer makes its own tangents: those of the pose at rest would be
    // wrong in every other one, and few renderers move tangents.
    const told = [
      'IMAGE_NPOT_DIMENSIONS',
      'MESH_PRIMITIVE_GENERATED_TANGENT_SPACE',
      // The validator knows no such packing; places are there for faces without a picture too.
      'UNSUPPORTED_EXTENSION',
      'UNUSED_OBJECT',
    ];
    expect([...new Set(issues.messages.map(({ code }) => code))].sort()).toEqual(told);
  });

  test('is larger than a plain one by less than 0.5 MB of pictures', async () => {
    const [plain, tooled] = [await tooledGlb([]), whole];
    const pictures = (await readGlb(tooled.bytes))
      .getRoot()
      .listTextures()
      .filter((texture) => texture.getName().startsWith('tooled'));
    expect(pictures.length).toBe(6);
    expect(tooled.bytes.length - plain.bytes.length).toBeLessThan(500_000);
  });

  test('has pictures of its normals and tone on the grain side of the tooled parts alone', async () => {
    const { bytes } = await tooledGlb([{ kind: 'border', area: 'front' }]);
    const root = (await readGlb(bytes)).getRoot();
    const names = root.listTextures().map((texture) => texture.getName());
    expect(names.filter((name) => name.startsWith('tooled'))).toEqual([
      'tooled outside normals',
      'tooled outside tone',
    ]);
    const placed = root.listMeshes().flatMap((mesh) =>
      mesh.listPrimitives().flatMap((primitive) => {
        const isPlaced = primitive.getAttribute('TEXCOORD_1') !== null;
        const hasPicture = defined(primitive.getMaterial()).getNormalTexture() !== null;
        expect(isPlaced).toBe(hasPicture);
        return isPlaced ? [`${mesh.getName()}: ${defined(primitive.getMaterial()).getName()}`] : [];
      }),
    );
    expect(placed).toEqual(['outside: tooled outside']);
  });

  test('is untouched round the edge of each picture, which a renderer goes on with', async () => {
    const { bytes } = whole;
    for (const texture of (await readGlb(bytes)).getRoot().listTextures()) {
      if (!texture.getName().startsWith('tooled')) continue;
      const { width, height, data } = PNG.sync.read(Buffer.from(defined(texture.getImage())));
      const wanted = texture.getName().endsWith('tone') ? [255, 255, 255] : [128, 128, 255];
      for (let k = 0; k < width * height; k++) {
        const [i, j] = [k % width, Math.floor(k / width)];
        if (i > 3 && j > 3 && i < width - 4 && j < height - 4) continue;
        if (wanted.some((value, c) => data[4 * k + c] !== value))
          expect.fail(`${texture.getName()} is pressed at ${i}, ${j}`);
      }
    }
  });
});
