import type { ModelKind } from '../../output/model/coverModel.ts';

/** The files that a model is taken away in. */
export const MODEL_KINDS = [
  {
    id: 'packed',
    title: 'GLB, packed',
    ending: 'glb',
    type: 'model/gltf-binary',
    for: 'With the film of the making. For most viewers.',
  },
  {
    id: 'plain',
    title: 'GLB, not packed',
    ending: 'glb',
    type: 'model/gltf-binary',
    for: 'The same and larger, for programs that cannot unpack it.',
  },
  {
    id: 'usdz',
    title: 'USDZ',
    ending: 'usdz',
    type: 'model/vnd.usdz+zip',
    for: 'The closed cover at rest, for telephones that read no GLB.',
  },
] as const satisfies readonly { readonly id: ModelKind; readonly [told: string]: string }[];
