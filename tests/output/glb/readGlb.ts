import { type Document, WebIO } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import { MeshoptDecoder } from 'meshoptimizer';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';

/** Reads a file by the formats' own libraries, as it is written: positions in whole steps. */
export async function readRawGlb(bytes: Uint8Array): Promise<Document> {
  await MeshoptDecoder.ready;
  return new WebIO()
    .registerExtensions([KHRMeshQuantization, EXTMeshoptCompression])
    .registerDependencies({ 'meshopt.decoder': MeshoptDecoder })
    .readBinary(bytes);
}

/** Reads a file with positions and their shifts in metres. */
export async function readGlb(bytes: Uint8Array): Promise<Document> {
  const document = await readRawGlb(bytes);
  for (const node of document.getRoot().listNodes()) {
    const [scale, move] = [node.getScale(), node.getTranslation()];
    for (const primitive of node.getMesh()?.listPrimitives() ?? []) {
      const position = defined(primitive.getAttribute('POSITION'));
      position.setArray(
        Float32Array.from(
          defined(position.getArray()) as Int16Array,
          (value, i) => value * nth(scale, i % 3) + nth(move, i % 3),
        ),
      );
      for (const target of primitive.listTargets()) {
        const shift = defined(target.getAttribute('POSITION'));
        shift.setArray(
          Float32Array.from(defined(shift.getArray()) as Int16Array, (value, i) => value * nth(scale, i % 3)),
        );
      }
    }
  }
  return document;
}
