import { linear } from '../model/tilePicture.ts';

/** One surface of a part, in metres. */
export interface UsdMesh {
  readonly name: string;
  readonly material: string;
  readonly points: Float32Array;
  readonly normals: Float32Array;
  /** Two per point, in sides of the material's picture, upward from its lower left corner. */
  readonly places: Float32Array;
  readonly indices: Uint32Array;
}

export interface UsdPart {
  readonly name: string;
  readonly meshes: readonly UsdMesh[];
}

export interface UsdMaterial {
  readonly name: string;
  /** `#rrggbb` in sRGB, where there is no picture. */
  readonly colour: string;
  readonly roughness: number;
  readonly metalness: number;
  /** Files of the package: its colour, in sRGB, and its normals. */
  readonly tone: string | null;
  readonly relief: string | null;
}

export interface UsdScene {
  readonly remark: string;
  readonly parts: readonly UsdPart[];
  readonly materials: readonly UsdMaterial[];
}

/** Lines of a layer; deeper ones are indented. */
type Lines = readonly string[];

const indented = (lines: Lines): string[] => lines.map((line) => (line === '' ? '' : `    ${line}`));

/** A prim with its properties and its children. */
const prim = (kind: string, name: string, body: Lines, told: Lines = []): string[] => [
  ...(told.length === 0
    ? [`def ${kind} "${identifier(name)}"`]
    : [`def ${kind} "${identifier(name)}" (`, ...indented(told), ')']),
  '{',
  ...indented(body),
  '}',
];

const token = (name: string, value: string): string => `token ${name} = "${value}"`;

/**
 * Writes a scene as a layer of USD in text (OpenUSD, USDA 1.0; UsdGeom; UsdPreviewSurface Specification): y up, a unit is
 * a metre. The lowest point is moved to the ground, and the middle of the rest above the origin, as viewers set a model down
 * by its origin.
 */
export function usdLayer({ remark, parts, materials }: UsdScene): string {
  const told = ['defaultPrim = "Cover"', `doc = ${JSON.stringify(remark)}`, 'metersPerUnit = 1', 'upAxis = "Y"'];
  const body = [
    `double3 xformOp:translate = ${tuple(toGround(parts))}`,
    'uniform token[] xformOpOrder = ["xformOp:translate"]',
    ...parts.flatMap(({ name, meshes }) => prim('Xform', name, meshes.flatMap(meshLines))),
    ...prim('Scope', 'Materials', materials.flatMap(materialLines)),
  ];
  const cover = prim('Xform', 'Cover', body, ['kind = "component"']);
  return ['#usda 1.0', '(', ...indented(told), ')', '', ...cover, ''].join('\n');
}

/** A name that USD takes: letters, digits and low lines. */
const identifier = (name: string): string => name.replace(/\W/g, '_');

/** To a thousandth of a millimetre, or of a unit. */
const figure = (value: number): string => String(Math.round(value * 1e6) / 1e6);

const tuple = (values: readonly number[]): string => `(${values.map(figure).join(', ')})`;

function tuples(values: Float32Array, size: number): string {
  const found: string[] = [];
  for (let i = 0; i < values.length; i += size) found.push(tuple([...values.subarray(i, i + size)]));
  return found.join(', ');
}

function bounds(parts: readonly UsdPart[]): { low: number[]; high: number[] } {
  const [low, high] = [
    Array<number>(3).fill(Number.POSITIVE_INFINITY),
    Array<number>(3).fill(Number.NEGATIVE_INFINITY),
  ];
  for (const { meshes } of parts)
    for (const { points } of meshes)
      points.forEach((value, i) => {
        low[i % 3] = Math.min(low[i % 3]!, value);
        high[i % 3] = Math.max(high[i % 3]!, value);
      });
  return { low, high };
}

function toGround(parts: readonly UsdPart[]): number[] {
  const { low, high } = bounds(parts);
  const middle = (k: number): number => -(low[k]! + high[k]!) / 2;
  return [middle(0), -low[1]!, middle(2)];
}

const pathOf = (material: string): string => `/Cover/Materials/${identifier(material)}`;

const list = (type: string, name: string, values: string): string => `${type}[] ${name} = [${values}]`;

function meshLines({ name, material, points, normals, places, indices }: UsdMesh): string[] {
  const byPoint = (line: string): string[] => [`${line} (`, ...indented(['interpolation = "vertex"']), ')'];
  const corners = Array<number>(indices.length / 3).fill(3);
  const body = [
    list('int', 'faceVertexCounts', corners.join(', ')),
    list('int', 'faceVertexIndices', indices.join(', ')),
    list('point3f', 'points', tuples(points, 3)),
    ...byPoint(list('normal3f', 'normals', tuples(normals, 3))),
    ...byPoint(list('texCoord2f', 'primvars:st', tuples(places, 2))),
    `uniform ${token('subdivisionScheme', 'none')}`,
    `rel material:binding = <${pathOf(material)}>`,
  ];
  return prim('Mesh', name, body, ['prepend apiSchemas = ["MaterialBindingAPI"]']);
}

function materialLines({ name, colour, roughness, metalness, tone, relief }: UsdMaterial): string[] {
  const own = pathOf(name);
  const light = tuple([1, 3, 5].map((at) => linear(Number.parseInt(colour.slice(at, at + 2), 16))));
  const isPictured = tone !== null || relief !== null;
  return prim('Material', name, [
    `token outputs:surface.connect = <${own}/Surface.outputs:surface>`,
    ...shader('Surface', 'UsdPreviewSurface', [
      tone === null
        ? `color3f inputs:diffuseColor = ${light}`
        : `color3f inputs:diffuseColor.connect = <${own}/Tone.outputs:rgb>`,
      ...(relief === null ? [] : [`normal3f inputs:normal.connect = <${own}/Relief.outputs:rgb>`]),
      `float inputs:roughness = ${roughness}`,
      `float inputs:metallic = ${metalness}`,
      'token outputs:surface',
    ]),
    ...(tone === null ? [] : picture('Tone', own, tone, [token('inputs:sourceColorSpace', 'sRGB')])),
    ...(relief === null ? [] : picture('Relief', own, relief, NORMALS)),
    ...(isPictured
      ? shader('Places', 'UsdPrimvarReader_float2', ['string inputs:varname = "st"', 'float2 outputs:result'])
      : []),
  ]);
}

/** Bytes 0 to 255 are -1 to 1 in each direction. */
const NORMALS: Lines = [
  token('inputs:sourceColorSpace', 'raw'),
  `float4 inputs:scale = ${tuple([2, 2, 2, 1])}`,
  `float4 inputs:bias = ${tuple([-1, -1, -1, 0])}`,
];

const shader = (name: string, id: string, body: Lines): string[] =>
  prim('Shader', name, [`uniform ${token('info:id', id)}`, ...body]);

const picture = (name: string, own: string, file: string, how: Lines): string[] =>
  shader(name, 'UsdUVTexture', [
    `asset inputs:file = @${file}@`,
    `float2 inputs:st.connect = <${own}/Places.outputs:result>`,
    token('inputs:wrapS', 'repeat'),
    token('inputs:wrapT', 'repeat'),
    ...how,
    'float3 outputs:rgb',
  ]);
