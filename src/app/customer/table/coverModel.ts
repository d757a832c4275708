import { BufferAttribute, BufferGeometry, Group, Mesh, MeshStandardMaterial } from 'three';
import {
  type CoverDesign,
  colourOf,
  coverColours,
  type Face,
  foldedCover,
  leastWrap,
  type MeshData,
  madeDesign,
} from '../../../core/index.ts';
import { benchMatrix, boundsOnBench } from '../../scene/geometry/assembly.ts';

const METRES_PER_MM = 0.001;

/** Of leather and paper, without a picture of the room to mirror. Judged by eye. */
const ROUGH = 0.75;

/** The closed cover on its book in its true size, metres, lying on the plane y = 0 about the origin. */
export function coverModel(design: CoverDesign): Group {
  const made = madeDesign(design);
  const cover = foldedCover(made, { kind: 'opening', angle: 0 }, leastWrap(made));
  const colours = coverColours(made.job);
  const onBench = new Group();
  onBench.matrixAutoUpdate = false;
  onBench.matrix.copy(benchMatrix(cover.benchTurn));
  for (const mesh of cover.parts) onBench.add(partOf(mesh, (face) => colourOf(colours, mesh.part, face)));
  const { min, max } = boundsOnBench(cover);
  const centred = new Group().add(onBench);
  centred.position.set(-(min.x + max.x) / 2, -min.y, -(min.z + max.z) / 2);
  const model = new Group().add(centred);
  model.scale.setScalar(METRES_PER_MM);
  return model;
}

function partOf(mesh: MeshData, colour: (face: Face) => string): Mesh {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  geometry.setIndex(new BufferAttribute(mesh.indices, 1));
  const materials = mesh.faces.map(({ face, start, count }, i) => {
    geometry.addGroup(start, count, i);
    return new MeshStandardMaterial({ color: colour(face), roughness: ROUGH, metalness: face === 'metal' ? 1 : 0 });
  });
  return new Mesh(geometry, materials);
}
