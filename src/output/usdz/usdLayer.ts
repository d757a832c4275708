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

/**
 * Writes a scene as a layer of USD in text (OpenUSD, USDA 1.0; UsdGeom; UsdPreviewSurface Specification): y up, a unit is
 * a metre. The lowest point is moved to the ground, and the middle of the rest above the origin, as viewers set a model down
 * by its origin.
 */
export function usdLayer({ remark, parts, materials }: UsdScene): string {
  return `#usda 1.0
(
    defaultPrim = "Cover"
    doc = ${JSON.stringify(remark)}
    metersPerUnit = 1
    upAxis = "Y"
)

def Xform "Cover" (
    kind = "component"
)
{
    double3 xformOp:translate = ${tuple(toGround(parts))}
    uniform token[] xformOpOrder = ["xformOp:translate"]
${parts.map(partText).join('')}
    def Scope "Materials"
    {
${materials.map(materialText).join('')}    }
}
`;
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

const partText = ({ name, meshes }: UsdPart): string => `
    def Xform "${identifier(name)}"
    {
${meshes.map(meshText).join('')}    }
`;

const meshText = ({ name, material, points, normals, places, indices }: UsdMesh): string => `
        def Mesh "${identifier(name)}" (
            prepend apiSchemas = ["MaterialBindingAPI"]
        )
        {
            int[] faceVertexCounts = [${Array<number>(indices.length / 3)
              .fill(3)
              .join(', ')}]
            int[] faceVertexIndices = [${indices.join(', ')}]
            point3f[] points = [${tuples(points, 3)}]
            normal3f[] normals = [${tuples(normals, 3)}] (
                interpolation = "vertex"
            )
            texCoord2f[] primvars:st = [${tuples(places, 2)}] (
                interpolation = "vertex"
            )
            uniform token subdivisionScheme = "none"
            rel material:binding = </Cover/Materials/${identifier(material)}>
        }
`;

function materialText({ name, colour, roughness, metalness, tone, relief }: UsdMaterial): string {
  const own = `/Cover/Materials/${identifier(name)}`;
  const light = tuple([1, 3, 5].map((at) => linear(Number.parseInt(colour.slice(at, at + 2), 16))));
  const toneText =
    tone === null
      ? `color3f inputs:diffuseColor = ${light}`
      : `color3f inputs:diffuseColor.connect = <${own}/Tone.outputs:rgb>`;
  const reliefText =
    relief === null ? '' : `\n                normal3f inputs:normal.connect = <${own}/Relief.outputs:rgb>`;
  return `
        def Material "${identifier(name)}"
        {
            token outputs:surface.connect = <${own}/Surface.outputs:surface>

            def Shader "Surface"
            {
                uniform token info:id = "UsdPreviewSurface"
                ${toneText}${reliefText}
                float inputs:roughness = ${roughness}
                float inputs:metallic = ${metalness}
                token outputs:surface
            }
${tone === null ? '' : pictureText('Tone', own, tone, 'token inputs:sourceColorSpace = "sRGB"')}${
  relief === null
    ? ''
    : pictureText(
        'Relief',
        own,
        relief,
        'token inputs:sourceColorSpace = "raw"\n                float4 inputs:scale = (2, 2, 2, 1)\n                float4 inputs:bias = (-1, -1, -1, 0)',
      )
}${tone === null && relief === null ? '' : readerText}        }
`;
}

const pictureText = (name: string, own: string, file: string, how: string): string => `
            def Shader "${name}"
            {
                uniform token info:id = "UsdUVTexture"
                asset inputs:file = @${file}@
                float2 inputs:st.connect = <${own}/Places.outputs:result>
                token inputs:wrapS = "repeat"
                token inputs:wrapT = "repeat"
                ${how}
                float3 outputs:rgb
            }
`;

const readerText = `
            def Shader "Places"
            {
                uniform token info:id = "UsdPrimvarReader_float2"
                string inputs:varname = "st"
                float2 outputs:result
            }
`;
